"""Numbers without a label: the first code that is about the motor is its part number."""

import re
from functools import lru_cache
from itertools import pairwise

from matcher.reading import brand, frame, number_end, parted_code
from matcher.reading.code import (
    is_ball_bearing,
    is_code,
    is_misread_word,
    is_second_piece,
    is_series,
    mended,
    reach,
    written,
)
from matcher.reading.identity import claim_number, item_of, take
from matcher.reading.items import Items
from matcher.reading.spaced_code import RATED, last_piece
from matcher.reading.things import things

_STEPS = 3
_BEHIND_NAMES = frozenset({"num", "label", "motor"})
_ARTICLES = frozenset({"the", "a", "an"})
_VERBS = {"with": "beside_another", **dict.fromkeys(("to", "in", "into", "of"), "within_another")}
_FILE = re.compile(r"E\d{5,6}")
"""The number under which a testing house keeps its file."""
_SEALS = frozenset({"ZZ", "Z", "RS", "DDU", "LLU"})
_NUMBER_WORDS = frozenset({"#", "no", "number"})
_ITS_OWN = frozenset({"maker's", "manufacturer's", "mfr's"})
_MISREAD = re.compile(
    r"(?=.*\d.*\d)(?=.*[OIlSZ])[\dOIl](?:[\dOIlSZ]{2,4}|[\dOIlSZ]{0,4}[./][\dOIlSZ./]{1,5})"
)


def loose_codes(items: Items) -> None:
    """Find codes without a label; the first that is about the motor is its part number."""
    for i in items.numbers:
        if items.used[i] or not _may_be_code(items, i):
            continue
        first, last = reach(items, items.first[i])
        text = mended(items, first, last)
        if items.plate and (_FILE.fullmatch(text) or _MISREAD.fullmatch(text) or _is_frame(items, i, text)):
            continue  # `1O7S`: a figure that nothing could put right; `FR. S56`
        if is_ball_bearing(text) or _bearing_pair(items, i):
            _bearing(items, i, text)
        else:
            _code(items, i, first, last)


def _bearing(items: Items, i: int, text: str) -> None:
    if not text.replace("/", "").isdigit() or _of_bearings(items, i):
        items.claim("bearing", "ball", i)
        items.used[i] = True


def _code(items: Items, i: int, first: int, last: int) -> None:
    """Take the tokens `first` to `last` around number `i` as a code or a misread name, if they are one."""
    text = mended(items, first, last)
    if is_misread_word(text):
        return
    start = i
    while start and items.first[start] > first:
        start -= 1
    end = item_of(items, i, last)
    opened = _opens_by_series(items, start, first, text) or parted_code.opens(items, start, first, text)
    if opened is None:
        _spend(items, start - 1, end)
        return
    if opened:
        start, first, last = start - 1, first - 1, last_piece(items, last)
        end = item_of(items, i, last)
    elif brand.is_misread(text) and _leads_on(items, end + 1):
        take(items, start, end)
        brand.claim_misread(items, start, end)
        return
    elif not _is_number(items, start, text):
        return
    if number_end.end_of(items, first, last, labelled=False) == number_end.UNCLEAR:
        _spend(items, start, item_of(items, i, reach(items, last + 1)[1]))
        return
    take(items, start, end)
    _loose(items, written(items, first, last), start, end)


def _spend(items: Items, start: int, end: int) -> None:
    """Spend a number of which it isn't clear where it ends; the maker before it is known all the same."""
    take(items, start, end)
    if not items.muted[start] and _owner(items, start, end) == "motor":
        brand.before(items, start)


def _opens_by_series(items: Items, start: int, first: int, text: str) -> bool:
    """`Klausbrink VM 63-180`: capitals a blank before the figures, behind a maker's name."""
    if not first or items.scan.gaps[first - 1] != " ":
        return False
    behind_motor = items.plate and (
        items.has(start - 2, "motor") or items.word(start - 2).endswith(_NAMES_OF_MOTORS)
    )
    if not (is_second_piece(text) or (behind_motor and _SIZE.fullmatch(text))):
        return False
    if behind_motor and is_series(items.scan.raw[first - 1]):
        return True  # `3~ MOT FE 90S-6`, `SPALTPOLMOTOR GV 4-25`
    series = is_series(items.scan.raw[first - 1]) or _is_labelled_series(items, first - 1, text)
    return series and _after_name(items, start - 1)


def _is_number(items: Items, start: int, text: str) -> bool:
    if is_code(text):
        return True
    if not (is_digits(text) or is_named(text)):
        return False
    if items.word(start - 1) == "," and _LETTERED.fullmatch(text):
        start -= 1  # `FALLOWREACH, FR-M16`
    return _after_name(items, start, bare=text.isdigit())


def _is_labelled_series(items: Items, token: int, text: str) -> bool:
    """`KL 92-4`: letters that label a rating elsewhere open a number before figures with a hyphen."""
    raw = items.scan.raw[token]
    lettered = raw not in RATED or not text.replace("-", "").isdigit()
    return "-" in text and raw.isalpha() and raw.isupper() and 1 < len(raw) < 4 and lettered


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
        or (token > 0 and _may_open(items, token))
        or "-" in items.numbers[i].signs
        or items.words[i - 1] in _NUMBER_WORDS
        or 6000 <= items.numbers[i].atoms[0] < 6400
    )


def _may_open(items: Items, token: int) -> bool:
    """Say whether capitals that can open a number stand before a token."""
    before = items.scan.raw[token - 1]
    long = len(items.scan.raw[token]) > 3
    return is_series(before) or (long and len(before) < 5 and before.isupper())


def _is_frame(items: Items, i: int, text: str) -> bool:
    """Say whether a letter and a frame's number stand behind the label of a frame."""
    j = items.skip(i - 2, -1)
    j -= items.word(j) == "."
    return "frame" in items.roles[j] and frame.is_prefixed(text)


_NAMES_OF_MOTORS = ("motor", "motore", "moteur", "mot")
_SIZE = re.compile(r"\d{1,3}-\d{1,3}[A-Z]?")
_NAMED = re.compile(
    r"[A-Z]{1,5}-?[A-Z]{0,3}\d+[A-Z0-9]*(?:[-/.][A-Z0-9]+)*|\d{1,5}[A-Z]{0,2}-[A-Z][A-Z0-9-]*|\d{1,5}[A-Z]{1,2}-\d[A-Z0-9-]*|\d{2}-\d{3}|\d{5,7}"
)
_LETTERED = re.compile(r"[A-Z]{2,4}-[A-Z]{1,3}\d{1,4}[A-Z]?")
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
    if items.raw(i + 1) in _SEALS or (items.raw(i + 2) in _SEALS and items.word(i + 1) == "2"):
        return True  # `6202 2Z`, `DE 6205 ZZ`
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
    if j < k - 1 and items.word(j) == ",":
        j -= 1  # `Trunfold, number TF 7712`
    named = brand.is_name(items, j) or items.word(j)[-5:] == "motor"  # `Gebläsemotor VG 71-4`
    return j >= 0 and named and len(items.raw(j)) > 3


def _loose(items: Items, text: str, start: int, end: int) -> None:
    owner = _owner(items, start, end)
    if owner == "other":
        return
    if owner == "module":
        claim_number(items, "module_number", text, start, end)
        brand.before(items, start, 1)
        return
    items.claim("part_number", text, start, end)
    if not items.muted[start]:
        brand.before(items, start)
        if not items.plate:
            _outrank(items)


def _outrank(items: Items) -> None:
    """`Dunwick DK-33, Halcott part no. 0131-77`: the number behind another name is the other one's."""
    own = items.claims[-1]
    if own.field != "brand":
        return
    for number, name in pairwise(items.claims):
        if (number.field, number.strength, name.field, name.strength) == ("part_number", 2, "brand", 1):
            label = items.scan.text[name.span[1] : number.span[0]].lower()
            if str(name.value).lower() != str(own.value).lower() and "mod" not in label:
                number.field = "other_numbers"


def _is_of_another(items: Items, start: int) -> bool:
    """`fits the TW-5107`, `goes with Quennor QN-88`, `sits in a TW-5107`: the number is another thing's."""
    whose = items.word(start - 2)
    if items.word(start - 1) in ("no", "number", "nr") and whose[-2:] == "'s" and whose not in _ITS_OWN:
        return True  # `Wendlebury's no. 0131-WF-220`
    k = start - 1 - (items.word(start - 1) in _ARTICLES)
    if items.word(k) in ("for", "fits", "matches"):
        return True
    while start - k < _STEPS and brand.is_name(items, k):
        k -= 1
    k -= items.word(k) in _ARTICLES
    words, token = items.scan.words, items.last[k]
    verbs = _VERBS.get(words[token]) if k >= 0 else None
    return verbs is not None and token > 0 and words[token - 1] in things(verbs)


def _owner(items: Items, start: int, end: int) -> str:
    """Return what the words around a loose code are about."""
    if items.has(end + 1, "module") and not (items.has(end + 3, "num") or items.has(end + 4, "num")):
        return "module"
    if _is_of_another(items, start):
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
