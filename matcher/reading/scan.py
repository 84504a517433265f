"""Cut a cleaned text once into words, runs of digits and single signs, each with its place.

A run of digits keeps the signs that hold its figures together: `208-230/460`, `5-5/8`, `1,5`, `.4995`;
Every repetition in the pattern starts with a character that the one before can't take, so that the
work grows with the length of the text and no faster.
"""

import re
from collections.abc import Container
from dataclasses import dataclass
from functools import cache
from itertools import accumulate

from matcher.reading.clean import clean
from matcher.reading.mend import SUSPECTS, mend_figures, mend_plate
from matcher.reading.run_together import parted
from matcher.reading.unwrap import unwrapped
from matcher.tables import rows

_PATTERN = (
    r"("
    r"{L}(?:{L}++(?:'[A-Za-z]++)?+"  # words
    r"|(?<=[A-Za-z])(?:\.[A-Za-z])+\.?(?![A-Za-z])"  # initials: h.p., S.p.A.
    r"|(?<=[wW])/[oO]?(?![\w/])"  # w/, w/o
    r"|'[A-Za-z]++|)"
    r"|{D}++(?:[.,/\-]{D}++)*"
    r"|\.(?:\.++|{D}++(?:[.,/\-]{D}++)*)?"
    r"|-(?:(?!{L})|(?<![^ \t]-))"  # a hyphen right between two words is a gap
    r"|[^ \t\-])"
)


def _pattern(letter: str, digit: str) -> re.Pattern[str]:
    return re.compile(_PATTERN.replace("{L}", letter).replace("{D}", digit), re.DOTALL)


_PLAIN = _pattern("[A-Za-z]", "[0-9]")  # most texts are plain ASCII, which is found faster
_ANY = _pattern(r"[^\W\d_]", r"[\d½¼¾⅛⅜⅝⅞⅓⅔⅕⅙]")
_BLANKS = frozenset(" \t")
_TOUCHES = frozenset(["", "-"])
_LOOSE = frozenset("\n|,;:()[]!?$€£+=&<>*")  # signs that hold nothing together
_ABBREVIATED = frozenset(
    {
        "BC",
        "OD",
        "ID",
        "LG",
        "DIA",
        "DIAMETER",
        "X",
        "BY",
        "LONG",
        "WIDE",
        "THICK",
        "ACROSS",
        "ROUND",
        "CIRCLE",
    }
    | {"FLAT", "KEY", "KEYED", "SHAFT", "WITH", "WITHOUT", "W/O", "LESS"}
)
"""What goes on behind `1/2 IN.` in capitals."""
_GOES_ON = re.compile(r"[a-z\d,;:=|()/&+-]")


class _Folded(dict[str, str]):
    """Lower-cased words without their points, remembered; never more than `LIMIT` of them."""

    LIMIT = 20_000

    def __missing__(self, word: str) -> str:
        if len(self) > self.LIMIT:
            self.clear()
        folded = word.lower()
        if len(folded) > 1 and folded[0].isalpha():
            folded = folded.replace(".", "")
        self[word] = folded
        return folded


_FOLDED = _Folded()


@dataclass(slots=True)
class Scan:
    """A text cut into words: `raw` as written, `words` folded, `gaps` what stands between, `starts` where."""

    text: str
    raw: list[str]
    words: list[str]
    gaps: list[str]
    starts: list[int]
    tight: list[bool]
    """Whether nothing but a hyphen stands between a token and the next one."""

    def end(self, token: int) -> int:
        """Return the place in the text right after a token."""
        return self.starts[token] + len(self.raw[token])

    def glued(self, token: int) -> bool:
        """Say whether nothing but a hyphen stands between a token and the next one."""
        return self.tight[token]


def scan(text: str, *, plate: bool = False) -> Scan:
    """Cut `text`; tokens and gaps together are the whole cleaned text, in order."""
    cleaned = mend_plate(clean(text)) if plate else unwrapped(clean(text))
    pieces = _cut(cleaned)
    raw = pieces[1::2]
    if not plate and not SUSPECTS.isdisjoint(raw):
        mended = mend_figures(cleaned)
        if mended != cleaned:
            pieces = _cut(mended)
            raw = pieces[1::2]
    gaps = pieces[2::2]
    starts = list(accumulate(map(len, pieces)))[::2]
    if "." in raw:
        raw, gaps, starts = _without_points(raw, gaps, starts)
    return Scan(text, raw, list(map(_FOLDED.__getitem__, raw)), gaps, starts, _tight(raw, gaps))


def _cut(cleaned: str) -> list[str]:
    """Return gaps and tokens in turn, from an empty gap to the last one; a leading blank is a token."""
    pattern = _PLAIN if cleaned.isascii() else _ANY
    if cleaned[:1] not in _BLANKS:
        return pattern.split(cleaned)
    pieces = pattern.split(f"\0{cleaned[1:]}")
    pieces[1] = cleaned[0]
    return pieces


def _tight(raw: list[str], gaps: list[str]) -> list[bool]:
    return [gap in _TOUCHES and word not in _LOOSE for word, gap in zip(raw, gaps, strict=True)]


def _without_points(
    raw: list[str], gaps: list[str], starts: list[int]
) -> tuple[list[str], list[str], list[int]]:
    """Let the points of abbreviations (`Mfr. no.`, `1/2 in. by`, `TH.PROT.`) fall into the gaps."""
    points: set[int] = set()
    k = 0
    last = len(raw) - 1
    for _ in range(raw.count(".")):
        k = raw.index(".", k)
        if 0 < k < last and not gaps[k - 1] and _abbreviates(raw[k - 1], gaps[k], raw[k + 1]):
            points.add(k)
        k += 1
    if not points:
        return raw, gaps, starts
    kept = [k for k in range(last + 1) if k not in points]
    for k in points:
        gaps[k - 1] = f"{gaps[k - 1]}.{gaps[k]}"
    return [raw[k] for k in kept], [gaps[k] for k in kept], [starts[k] for k in kept]


@cache
def _abbreviations() -> dict[str, str]:
    """Return the abbreviations with what their point means."""
    table = rows("reading/abbreviations")
    return {word: row["point"] for row in table for word in row["words"].split()}


def _abbreviates(word: str, behind: str, following: str) -> bool:
    """Say whether the point after `word` (with `behind` blanks, then `following`) belongs to it."""
    if following == "\n":
        return False
    point = _abbreviations().get(word.lower())
    if point == "inside":
        return True
    if point == "either":
        return _GOES_ON.match(following) is not None or following in _ABBREVIATED
    return not behind and word.isupper() and len(word) <= 5 and following[0].isalnum()


def unjoin(cut: Scan, known: Container[str]) -> Scan:
    """Return the cut with words parted that a scan ran together, where both halves are known."""
    raw: list[str] = []
    words: list[str] = []
    gaps: list[str] = []
    starts: list[int] = []
    for token, word in enumerate(cut.words):
        start = cut.starts[token]
        found = parted(
            word,
            known,
            figure_before=token > 0 and cut.tight[token - 1] and cut.words[token - 1][-1].isdigit(),
            figure_behind=cut.tight[token] and "".join(cut.words[token + 1 : token + 2])[:1].isdigit(),
            hyphen_behind=cut.tight[token] and cut.words[token + 1 : token + 2] == ["-"],
            opens_line=token == 0 or cut.words[token - 1] == "\n",
        )
        for piece in found:
            raw.append(cut.raw[token] if len(found) == 1 else cut.text[start : start + len(piece)])
            words.append(piece)
            gaps.append("")
            starts.append(start)
            start += len(piece)
        gaps[-1] = cut.gaps[token]
    return Scan(cut.text, raw, words, gaps, starts, _tight(raw, gaps))
