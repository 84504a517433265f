"""A text as a row of items (phrases, numbers, signs), in clauses and segments, and the claims on it.

A clause ends at a comma, bracket or free-standing dash, a segment at a full stop, semicolon, bar or
line end: a number belongs to its own segment. Words that turn away from the motor at hand ("replaces
a ...", "not ...") mute what follows in their clause; words of doubt ("maybe", "?") mute all of it.
A bracket keeps its muting to itself, and "but" or "this one is" ends any.
"""

from collections.abc import Mapping

from matcher.numeral import Numeral, numeral
from matcher.reading.adverts import passed_over
from matcher.reading.aside import ask, ends_in_label, figure_follows, goes_on, heed, is_printed, set_apart
from matcher.reading.claim import Claim
from matcher.reading.figures import EIGHTHS, FIRST_OF_NUMBER, GOES_ON, gather
from matcher.reading.scan import Scan, scan, unjoin
from matcher.reading.spelled import spelled
from matcher.reading.vocabulary import TURNS, Entries, Kind, Roles, entries, heads, longest

NO_ROLES: Roles = {}
NUMBER: Roles = {"num": ""}
LEADS_ON: Roles = {"fill": "-"}
# `sentence`: apart, to the end of the sentence; `other`: about another motor, as long.
_LASTING = frozenset({"sentence", "other"})
# A capacitor that the motor needs is a fact about it, whoever supplies it.
_NEEDED = frozenset({"capacitor_uf", "capacitor_vac"})
_NOWHERE = (-1, "")
_ABBREVIATED = 4
"""Letters that a unit has at most before the point of an abbreviation."""
# Twice as many as any handler looks behind the last item or before the first one.
_PADDING = 32
_NO_ITEMS: list[Roles] = [NO_ROLES] * _PADDING
_NO_WORDS = [""] * _PADDING
SEGMENT_ENDS = frozenset("\n|;.!?")
CLAUSE_ENDS = frozenset(",+→") | TURNS
_FRESH = TURNS | {"*"}
"""Signs and words behind which no denial goes on."""
_BRACKETS = frozenset("()[]")
_EXCLAIMED = ["!", ")"]
"""`the furnace plate (not the motor!) says`: the sentence goes on."""
_PLAIN, _FIGURES, _COMMA, _STOP = Kind.PLAIN, Kind.FIGURES, Kind.COMMA, Kind.STOP


class Items:
    """The items of one text; all lists run in step.

    `roles[i]` what item i may be, `first[i]`, `last[i]` its tokens, `clause[i]`, `segment[i]` where it
    stands, `muted[i]` how it speaks of something else (empty: it doesn't), `used[i]` whether it is
    spent.
    """

    __slots__ = (
        "active", "asked", "claims", "clause", "count", "doubted", "first", "head", "last", "measured",
        "muted", "numbers", "outside", "plate", "raws", "roles", "scan", "segment", "source", "turned",
        "used", "words",
    )  # fmt: skip

    def __init__(self, text: str, source: str, *, plate: bool = False) -> None:
        self.scan: Scan = unjoin(scan(text, plate=True), heads()) if plate else scan(text)
        self.source = source
        self.plate = plate
        self.head = 0
        """How many items count like a title: all of one, the first line of a text without one."""
        self.roles: list[Roles] = []
        self.first: list[int] = []
        self.last: list[int] = []
        self.clause: list[int] = []
        self.segment: list[int] = []
        self.muted: list[str] = []
        self.doubted: set[int] = set()
        self.asked: set[int] = set()
        self.measured: set[tuple[int, str]] = set()
        """Clauses, and the fields that somebody measured there: what is printed counts, not that."""
        self.turned: list[int] = []
        """The items that correct or deny a figure."""
        self.outside = _NOWHERE
        """The segment of an open bracket, and how what stands before it is muted."""
        self.active: list[int] = []
        self.numbers: dict[int, Numeral] = {}
        self.claims: list[Claim] = []
        self._lay_out(entries())
        self.count = len(self.first)
        self.used: list[bool] = [False] * self.count
        self._pad()

    def _pad(self) -> None:
        """Let one ask for what stands beside the first and the last item: nothing does."""
        words, raw = self.scan.words, self.scan.raw
        self.words = [words[token] for token in self.first]
        if len(words) > self.count:
            for i, (one, two) in enumerate(zip(self.first, self.last, strict=True)):
                if one != two:
                    self.words[i] = " ".join(words[one : two + 1])
        self.words += _NO_WORDS
        self.raws = [raw[token] for token in self.first]
        self.raws += _NO_WORDS
        self.roles += _NO_ITEMS

    def __len__(self) -> int:
        return self.count

    def _lay_out(self, known: Entries) -> None:
        """Group the tokens into items, longest phrase first, and count clauses and segments."""
        words = self.scan.words
        token, end = 0, len(words)
        clause = segment = 0
        muted = ""
        all_roles, first, last = self.roles, self.first, self.last
        clauses, segments, all_muted = self.clause, self.segment, self.muted
        while token < end:
            entry = known[words[token]]
            after = token + 1
            roles: Roles = entry.roles
            if entry.longer and after < end and words[after] in entry.longer:
                entry, length = longest(entry, words, token)
                roles, after = entry.roles, token + length
            if roles:
                if entry.heeded:
                    roles, after = passed_over(words, roles, token, after)
                    muted = self._take_notice(roles, after, clause, segment, muted)
                self.active.append(len(first))
                if "num" in roles:
                    figures, after = spelled(roles["num"], words, after)
                    after = self._number(figures, token, after)
            elif (kind := entry.kind) is _FIGURES:
                roles, after = NUMBER, self._number(words[token], token, after)
            elif kind is _COMMA and not muted:
                clause += 1
            elif kind is _STOP and not (after < end and words[token : after + 1] == _EXCLAIMED):
                clause, segment, muted = clause + 1, segment + 1, ""
            elif kind is not _PLAIN:
                roles, clause, segment, muted = self._sign(words[token], token, (clause, segment, muted))
            all_roles.append(roles)
            first.append(token)
            token = after
            last.append(token - 1)
            clauses.append(clause)
            segments.append(segment)
            all_muted.append(muted)

    def _number(self, figures: str, token: int, after: int) -> int:
        """Keep the figures from a token up to `after`; return where all that belongs to them ends."""
        words = self.scan.words
        following = words[after] if after < len(words) else "\n"
        glued = token and self.scan.tight[token - 1]
        if glued and words[token - 1] == "x" and following in EIGHTHS:
            glued = words[after + 1 : after + 2] in (["hp"], ["h"])  # `3/8X2 1/4`
        if not glued and (following in GOES_ON or following[0] in FIRST_OF_NUMBER):
            figures, length = gather(words, token, figures, after - token)
            after = token + length
        self.numbers[len(self.first)] = numeral(figures)
        return after

    def _take_notice(self, roles: Roles, after: int, clause: int, segment: int, muted: str) -> str:
        """Heed words that say what the rest is about; return how the rest of the clause is muted."""
        if "apart" in roles:
            return set_apart(self, segment, clause if roles["apart"] == "clause" else None)
        if "corrects" in roles or "takeback" in roles:
            self.turned.append(len(self.roles))
        if "mute" in roles:
            if "fill" in roles and ends_in_label(self):
                return muted  # `INS: upgraded to F`
            return roles["mute"]
        if "here" in roles:
            return ""
        if "not" in roles and figure_follows(self.scan.words, after):
            self.turned.append(len(self.roles))
            return "sticky"
        if "origin" in roles and figure_follows(self.scan.words, after):
            return "clause"
        heed(self, roles, after, clause)
        return muted

    def _sign(self, sign: str, token: int, place: tuple[int, int, str]) -> tuple[Roles, int, int, str]:
        """Return the roles of a sign and the clause, segment and muting that it leads to."""
        clause, segment, muted = place
        if (sign in SEGMENT_ENDS or sign[:2] == "..") and self._ends(sign, token):
            if sign == "?":
                ask(self, clause)
            return NO_ROLES, clause + 1, segment + 1, ""
        if sign[0] == ".":
            return LEADS_ON, clause, segment, muted
        if sign in _BRACKETS:
            before = self.outside[1] if self.outside[0] == segment else ""
            if sign in "([":
                self.outside = segment, muted
            elif muted not in _LASTING:
                self.outside, muted = _NOWHERE, before
            return NO_ROLES, clause + 1, segment, muted
        if (
            sign in CLAUSE_ENDS
            or (sign in "-/" and self._free_dash(token))
            or (sign == "*" and self._is_bullet(token))
        ):
            sticks = muted == "sticky" and sign not in _FRESH and goes_on(self, token + 1)
            if not sticks and muted not in _LASTING:
                muted = self.outside[1] if self.outside[0] == segment else ""
            return NO_ROLES, clause + 1, segment, muted
        return NO_ROLES, clause, segment, muted

    def _ends(self, word: str, token: int) -> bool:
        """Say whether a sign ends a segment; a point inside an address doesn't."""
        if word[0] != ".":
            return self.scan.words[token : token + 2] != _EXCLAIMED
        label = self.roles[-1] if self.roles else NO_ROLES
        of_figure = len(self.roles) > 1 and "num" in self.roles[-2] and not self.plate
        labels = ("unit" in label or "frame" in label) and not of_figure
        if labels:
            before = self.scan.raw[token - 1]
            short = word != "." or len(before) <= _ABBREVIATED or before.isupper()
            if short and figure_follows(self.scan.words, token + 1):
                return False  # `V. 115  A. 4.8`
        if word != ".":  # a row of points leads on when it touches what follows, or stands free
            return self.scan.gaps[token] != "" and (len(word) < 4 or self.scan.gaps[token - 1] == "")
        return (
            bool(self.scan.gaps[token])
            or token + 1 == len(self.scan.words)
            or not (self.scan.words[token + 1][0].isalnum() or self.scan.words[token + 1] == "/")
            or self.scan.raw[token + 1][0].isupper()
        )

    def _is_bullet(self, token: int) -> bool:
        return self.scan.gaps[token] != "" or (token > 0 and self.scan.gaps[token - 1] != "")

    def _free_dash(self, token: int) -> bool:
        return self.scan.gaps[token] != "" and token > 0 and self.scan.gaps[token - 1] != ""

    def reorder(self, order: list[int], segments: Mapping[int, int]) -> None:
        """Put the items into another order; those in `segments` get that segment and clause."""
        self.numbers = {new: self.numbers[old] for new, old in enumerate(order) if old in self.numbers}
        for row in (self.clause, self.segment):
            row[:] = [segments.get(old, row[old]) for old in order]
        self.roles = [self.roles[old] for old in order]
        self.muted = [self.muted[old] for old in order]
        self.first = [self.first[old] for old in order]
        self.last = [self.last[old] for old in order]
        self.active = [new for new, roles in enumerate(self.roles) if roles]
        self._pad()

    def word(self, i: int) -> str:
        """Return the folded words of an item, blank between them; empty where there is none."""
        return self.words[i]

    def raw(self, i: int) -> str:
        """Return the first token of an item as written; empty where there is none."""
        return self.raws[i]

    def is_glued(self, i: int) -> bool:
        """Say whether an item touches the next one (a hyphen counts as touching)."""
        return 0 <= i < self.count - 1 and self.scan.tight[self.last[i]]

    def span(self, i: int, j: int) -> tuple[int, int]:
        """Return the character span from the start of item `i` to the end of item `j`."""
        scan, last = self.scan, self.last[j]
        return scan.starts[self.first[i]], scan.starts[last] + len(scan.raw[last])

    def has(self, i: int, kind: str) -> bool:
        """Say whether item `i` exists and may be of a kind."""
        return kind in self.roles[i]

    def said(self, i: int, kind: str) -> str | None:
        """Return what item `i` says as a kind, or None."""
        return self.roles[i].get(kind)

    def claim(
        self,
        field: str,
        value: object,
        i: int,
        j: int | None = None,
        strength: int = 1,
        *,
        though_muted: bool = False,
    ) -> None:
        """Claim a value for a field by the items `i` to `j`, unless they speak of something else.

        `though_muted` claims even then: the words hold whatever the sentence turns away from.
        """
        muted = self.muted[i]
        if muted and not though_muted and not (field in _NEEDED and muted in ("needs", "sentence")):
            return
        first, last = (i, i) if j is None else (i, j) if i <= j else (j, i)
        clause = self.clause[i]
        if self.measured and (clause, field) in self.measured and not is_printed(self, i):
            return
        doubt = ""
        if clause in self.doubted:
            doubt = "words"
        elif self.asked and (i in self.asked or j in self.asked):
            doubt = "?"
        self.claims.append(Claim(field, value, self.source, self.span(first, last), clause, strength, doubt))

    def skip(self, i: int, step: int, limit: int = 3) -> int:
        """Walk from `i` by `step` over words that only lead on (`:`, `is`, `of`); return where it ends."""
        for _ in range(limit):
            if not self.has(i, "fill") or self.raw(i) == "A":
                break
            i += step
        return i
