"""The numbers of a motor: its own, its module's and program's, and those of others that it replaces."""

import re
from functools import lru_cache

from matcher.reading import brand, frame
from matcher.reading.code import is_ball_bearing, is_code, is_second_piece, is_series, mended, reach, written
from matcher.reading.items import NO_ROLES, Items
from matcher.reading.spaced_code import RATED, further_pieces, last_piece

_ON_PLATES = "nothing on plates"
"""`SERIAL T88-0127` on a plate; in a listing `serial` may be the way a motor is controlled."""
_NUMBER_LIKE = re.compile(r"[A-Za-z0-9]+(?:[-./ ][A-Za-z0-9]+)*")
_MISREAD = re.compile(r"(?=.*\d.*\d)(?=.*[OIlSZ])[\dOIl][\dOIlSZ]{2,4}")
_SHORTEST_OTHER = 4  # `interchange T5 and T8` tells of leads
_STEPS = 3
_NAMES = 3
_BEHIND_NAMES = frozenset({"num", "label", "motor"})
_LIKENING = frozenset({"same as", "is the same as", "identical to", "comparable to", "compare to", "comp to"})
_MAKERS = frozenset(
    {
        "company's",
        "maker's",
        "manufacturer's",
        "dealer's",
        "their",
        "furnace's",
        "customer's",
        "company",
        "oem's",
    }
)
_LIST_SIGNS = frozenset({",", "/", "&", "and", "or", "+", ";"})
_FILLS = frozenset({"#", ".", "(", "-", "no", "number", "nos", "nr", "numbers"})
_NUMBER_WORDS = frozenset({"#", "no", "number"})
_PLAIN = frozenset({"part_number", "other_numbers", "module_number", "program_number"})


def label(items: Items, i: int, field: str) -> None:
    """A label that announces a number or a name."""
    if items.used[i] or _inside_code(items, i):
        return
    strength = (
        1 if field.endswith("?") else 2
    )  # `style`, `art. no.`: a part number where nothing better stands
    field = field.removesuffix("?")
    if field == _ON_PLATES and not items.plate:
        return
    if field == "brand":
        brand.labelled(items, i)
        return
    if field == "part_number":
        if _is_of_a_part(items, i):
            return
        field = _whose(items, i)
    j = _behind_fills(items, i + 1)
    named = _behind_names(items, j) if field == "other_numbers" else j
    if field == "other_numbers" and items.has(j, "num") and items.has(j + 1, "unit"):
        j += 2  # `replaces 1/3 HP FH-CS13`
    codes = _codes(items, named, several=field == "other_numbers", named=named > j)
    if not codes or (
        items.word(i) in _LIKENING and items.word(codes[-1][2] + 1) in ("but", "except", "only")
    ):
        return
    items.used[i] = True
    for text, first, last in codes:
        _take(items, first, last)
        if field in _PLAIN and not (field == "other_numbers" and len(text) < _SHORTEST_OTHER):
            _claim_number(items, field, text, first, last, strength)
    if field == "part_number" and not items.plate:
        brand.before(items, i, 1)


def _behind_fills(items: Items, j: int) -> int:
    """Walk over `:`, `#`, `is`; not over the capitals of a number (`Model: OF 7/1140`)."""
    for _ in range(4):
        series = items.has(j + 1, "num") and items.raw(j).isupper() and not items.raw(j - 1).isupper()
        series = series and items.word(j) not in _NUMBER_WORDS  # `PROG. NO. 50-2A-11`
        if series or not (items.has(j, "fill") or items.word(j) in _FILLS):
            break
        j += 1
    return j


def _behind_names(items: Items, j: int) -> int:
    """`replaces Quennor QN-88-12`: walk over the name of the maker of another motor."""
    k = j
    while k - j < _NAMES and brand.is_name(items, k) and items.clause[k] == items.clause[j]:
        if items.is_glued(k):
            return k  # the letters of a number
        k += 1
    return k


def _whose(items: Items, i: int) -> str:
    """Say whose number a plain label (`number is`, `part no.`) announces, by the words before it."""
    if _is_modules(items, i):
        return "module_number"
    before = (items.word(i - 1), items.word(i - 2))
    return "other_numbers" if not _MAKERS.isdisjoint(before) and not items.plate else "part_number"


def _is_of_a_part(items: Items, i: int) -> bool:
    """`capacitor part KC-75-370`, `belly band part no.`: the number of a thing that is named right before."""
    names = {"cap", "plug"} & items.roles[i - 1].keys() or items.said(i - 1, "subject") == "other"
    return i > 0 and bool(names) and items.clause[i - 1] == items.clause[i] and items.first[i - 1] > 0


def _is_modules(items: Items, i: int) -> bool:
    """`Electronic module: yes, p/n LMD-19`: the label speaks of the module that its sentence has named."""
    for j in range(i - 1, max(-1, i - 6), -1):
        if items.segment[j] != items.segment[i] or "motor" in items.roles[j] or j in items.numbers:
            return False
        if "module" in items.roles[j]:
            return True
    return False


def _inside_code(items: Items, i: int) -> bool:
    """`TR-MOD-75`: a label between hyphens is none."""
    gaps, first, last = items.scan.gaps, items.first[i], items.last[i]
    if items.is_glued(i) and items.scan.words[last + 1] == "-":
        return True
    return gaps[last] == "-" or (
        first > 0 and (gaps[first - 1] == "-" or (items.scan.words[first - 1] == "-" and not gaps[first - 1]))
    )


def _claim_number(items: Items, field: str, text: str, first: int, last: int, strength: int = 2) -> None:
    """Numbers of others, of the module and of the program stay facts where the sentence turns away."""
    muted = items.muted[first]
    if field != "part_number":
        items.muted[first] = ""
    items.claim(field, text, first, last, strength)
    items.muted[first] = muted


def _codes(items: Items, j: int, *, several: bool, named: bool = False) -> list[tuple[str, int, int]]:
    """Return the codes of a list that starts at item `j`, with their first and last items.

    `named` says that a maker's name stands before the first one, as it may before the others.
    """
    codes: list[tuple[str, int, int]] = []
    while len(codes) < (12 if several else 1):
        code = _code_at(items, j)
        if code is None:
            break
        codes.append(code)
        j = _behind_comment(items, code[2] + 1) if several else code[2] + 1
        while items.word(j) in _LIST_SIGNS:
            j += 1
        j = _behind_names(items, j) if named else j
    return codes


def _behind_comment(items: Items, j: int) -> int:
    """`QN-88-12 (old), QN-88-13 (new)`: walk over a word or two in brackets."""
    if items.word(j) == "(":
        close = next((k for k in range(j + 2, j + 4) if items.word(k) == ")"), None)
        return j if close is None else close + 1
    return j


def _code_at(items: Items, j: int) -> tuple[str, int, int] | None:
    """Return the labelled code that starts at item `j`; digits alone will do behind a label."""
    if j >= len(items):
        return None
    token = items.first[j]
    last = reach(items, token)[1]
    text = written(items, token, last)
    if is_series(text) or (text.isupper() and text.isalpha() and len(text) < 4 and text not in RATED):
        last = further_pieces(items, last)
        text = written(items, token, last)
    plain = text if text.isascii() else mended(items, token, last)
    if not any(char.isdigit() for char in text) or len(text) < 2 or not _NUMBER_LIKE.fullmatch(plain):
        return None
    end_item = _item_of(items, j, last)
    if re.fullmatch(r"\d{1,2}/\d{1,2}", text):
        return None
    if (
        "-" not in text
        and items.has(j, "num")
        and end_item <= j + 1
        and (items.has(j + 1, "unit") or items.has(j + 1, "after"))
    ):
        return None
    return (text, j, end_item) if token == items.first[j] else None


def _take(items: Items, first: int, last: int) -> None:
    """Spend the items of a code; what looks like a word inside it means nothing."""
    for k in range(first, last + 1):
        items.used[k] = True
        items.roles[k] = NO_ROLES


def _item_of(items: Items, j: int, token: int) -> int:
    while j + 1 < len(items) and items.last[j] < token:
        j += 1
    return j


def loose_codes(items: Items) -> None:
    """Find codes without a label; the first that is about the motor is its part number."""
    for i in items.numbers:
        if items.used[i] or not _may_be_code(items, i):
            continue
        first, last = reach(items, items.first[i])
        text = mended(items, first, last)
        if items.plate and (_MISREAD.fullmatch(text) or _is_frame(items, i, text)):
            continue  # `1O7S`: a figure that nothing could put right; `FR. S56`
        start = i
        while start and items.first[start] > first:
            start -= 1
        if is_ball_bearing(text) or _bearing_pair(items, i):
            if not text.replace("/", "").isdigit() or _of_bearings(items, i):
                items.claim("bearing", "ball", i)
                items.used[i] = True
            continue
        if (
            first
            and is_series(items.scan.raw[first - 1])
            and _after_name(items, start - 1)
            and is_second_piece(text)
            and items.scan.gaps[first - 1] == " "
        ):
            start, first, last = start - 1, first - 1, last_piece(items, last)
        elif brand.is_misread(text) and _leads_on(items, _item_of(items, i, last) + 1):
            end = _item_of(items, i, last)
            _take(items, start, end)
            brand.claim_misread(items, start, end)
            continue
        elif not (
            is_code(text)
            or ((is_digits(text) or is_named(text)) and _after_name(items, start, bare=text.isdigit()))
        ):
            continue
        end = _item_of(items, i, last)
        _take(items, start, end)
        _loose(items, written(items, first, last), start, end)


def _leads_on(items: Items, k: int) -> bool:
    """Say whether a number, a label or `motor` stands right behind a maker's name."""
    return any(not _BEHIND_NAMES.isdisjoint(items.roles[j]) for j in range(k, k + _STEPS))


def _may_be_code(items: Items, i: int) -> bool:
    """Say whether a figure touches letters or a hyphen, or is made of groups; most figures don't."""
    token = items.first[i]
    tight = items.scan.tight
    touched = token > 0 and tight[token - 1]
    behind = items.roles[i + 1]
    if ("unit" in behind or "after" in behind) and not touched and not items.is_glued(i + 1):
        return False  # `115V`
    return (
        touched
        or tight[items.last[i]]
        or (token > 0 and is_series(items.scan.raw[token - 1]))
        or "-" in items.numbers[i].signs
        or items.words[i - 1] in _NUMBER_WORDS
        or 6000 <= items.numbers[i].atoms[0] < 6400
    )


def _is_frame(items: Items, i: int, text: str) -> bool:
    """Say whether a letter and a frame's number stand behind the label of a frame."""
    j = items.skip(i - 2, -1)
    j -= items.word(j) == "."
    return "frame" in items.roles[j] and frame.is_prefixed(text)


_NAMED = re.compile(
    r"[A-Z]{1,5}-?[A-Z]{0,3}\d+[A-Z0-9]*(?:[-/.][A-Z0-9]+)*|\d{1,5}[A-Z]{0,2}-[A-Z][A-Z0-9-]*|\d{1,5}[A-Z]{1,2}-\d[A-Z0-9-]*|\d{5,7}"
)
_SPEC = re.compile(
    r"(?:V|HP|RPM|A|HZ|PH|FLA|FR|IP|IEC|S|B|IM)-?\d|\d+-(?:SPEED|PIN|PH|POLE|WIRE|DAY|YR|FLAT)"
)


@lru_cache(20_000)
def is_named(text: str) -> bool:
    """Say whether letters and figures right behind a maker's name are its number; ratings aren't."""
    return _NAMED.fullmatch(text) is not None and not _is_spec(text) and len(text) > 3


# What a label of a rating may be joined to by a hyphen; `HZ-9`, `FR-2` behind a maker's name are numbers.
_RATINGS = {"HZ": ("50", "60"), "PH": ("1", "3"), "FR": ("42", "48", "56"), "B": ("3", "14"), "S": ("1", "3")}


def _is_spec(text: str) -> bool:
    """Say whether letters and figures are a rating: `HZ-60`, `FR48`, `3-SPEED`."""
    if not _SPEC.match(text):
        return False
    letters, hyphen, figures = text.partition("-")
    known = _RATINGS.get(letters)
    return not (hyphen and known) or figures.startswith(known)


@lru_cache(20_000)
def is_digits(text: str) -> bool:
    """`7021-9413`, `48-2207`: figures in groups, six or more; a phone's 555-0148 has three and four."""
    return (
        re.fullmatch(r"(?!\d{3}-\d{4}$)\d{2,5}-\d{3,6}(?:-\d{1,4})?", text) is not None
        and sum(c.isdigit() for c in text) >= 6
    )


def _bearing_pair(items: Items, i: int) -> bool:
    """`6205/6203`: the bearings of both ends."""
    atoms = items.numbers[i].atoms
    return len(atoms) == 2 and all(6000 <= atom < 6400 for atom in atoms) and _of_bearings(items, i)


def _of_bearings(items: Items, i: int) -> bool:
    near = range(max(0, i - 6), min(len(items), i + 4))
    return any(
        "brglabel" in items.roles[j] or "bearing" in items.roles[j]
        for j in near
        if items.segment[j] == items.segment[i]
    )


def _after_name(items: Items, k: int, *, bare: bool = False) -> bool:
    """Say whether a maker's name stands right before item `k`."""
    if bare and items.word(k - 1) not in ("#", "no", "number"):
        return False  # `Ashbrook 60799` is a town
    j = k - 1 - (not bare and items.has(k - 1, "motor"))
    while items.word(j) in ("#", "no", "number", ".", "(") and k - j < _STEPS:
        j -= 1
    return j >= 0 and brand.is_name(items, j) and len(items.raw(j)) > 3


def _loose(items: Items, text: str, start: int, end: int) -> None:
    owner = _owner(items, start, end)
    if owner == "other":
        return
    if owner == "module":
        _claim_number(items, "module_number", text, start, end)
        brand.before(items, start, 1)
        return
    items.claim("part_number", text, start, end)
    if not items.muted[start]:
        brand.before(items, start)


def _owner(items: Items, start: int, end: int) -> str:
    """Return what the words around a loose code are about."""
    if items.has(end + 1, "module") and not (items.has(end + 3, "num") or items.has(end + 4, "num")):
        return "module"
    if items.word(start - 1) in ("for", "fits") or (
        items.word(start - 1) == "the" and items.word(start - 2) in ("for", "fits")
    ):
        return "other"
    for j in range(start - 1, max(-1, start - 9), -1):
        if items.segment[j] != items.segment[start]:
            break
        if "appliance" in items.roles[j]:
            return "other"
        if "module" in items.roles[j] or ("module_label" in items.roles[j] and j > start - 7):
            return "module"
        if "motor" in items.roles[j] or items.word(j) == "motor only":
            break
    return "motor"
