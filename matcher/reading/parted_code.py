"""Numbers with a blank between letters and a mixed piece: `OX 312X34`, `TE 434B22`, `DH39 HGD472S`.

Their letters are often the maker's initials. Where such a number ends, or whether one starts at all, isn't
always clear: then its pieces are spent all the same, for no piece of a number is a rating.
"""

import re
from functools import lru_cache

from matcher.reading import brand
from matcher.reading.code import is_code, is_series
from matcher.reading.items import Items
from matcher.reading.quantities import BARE_SPEED
from matcher.reading.things import things
from matcher.reading.vocabulary import heads

_MIXED = re.compile(
    r"\d{2,5}(?P<letters>[A-Z]{1,3})\d{1,5}[A-Z]{0,2}(?:[-/][A-Z0-9]{1,6}){0,3}", re.IGNORECASE
)
_LETTERED = re.compile(
    r"[A-Z]{1,4}\d{2,5}[A-Z0-9]{0,5}|\d{2,3}[A-Z]{2,4}\d{2,4}[A-Z]?|\d{3,4}[ABDEGJLNQSTXYZ]|\d{2,3}[A-Z]{2,4}"
)
_RATED = re.compile(
    r"(?:1[012]\d|2[0-4]\d|277|4[146]\d|575)[VX]"  # `115V60`, `208X230`
    r"|\d+(?:HZ|HP|PH|RPM|SPD?|MFD|UF|VAC|AC|KW|MM|IN|SP|PC|AMP|LB|OZ|DAY|JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC)"
    r"|\d{1,2}X\d{1,2}(?!\d)"  # a size
    r"|(?:4[28]|56|66|14[35]|18[24]|21[35]|25[46])[A-Z]{1,3}(?:[-/]|\d{4})",  # `56C-2`, `48Y1075`
    re.IGNORECASE,
)
_LABELLED = re.compile(
    r"(?:SER|SN|REV|DATE|LOT|HP|HZ|PH|RPM|VAC?|FR|CAP|AMB|CL|INS|IP|IEC|IM|B|S|SF|FLA|LRA)\d+\w*"
)
_NO_LETTERS = frozenset({"label", "before", "by", "unit", "num"})
_NUMBER_WORDS = frozenset({"no", "#", "number"})
_REACH = 12
"""Items before a number among which its maker may stand: `Oxterby 1/2 HP blower motor, OX 312X34`."""


@lru_cache(20_000)
def is_mixed(text: str) -> bool:
    """Say whether figures, letters and figures that touch are a piece of a number: `312X34`, `434B22`."""
    return _MIXED.fullmatch(text) is not None and _RATED.match(text) is None


@lru_cache(20_000)
def is_size(text: str) -> bool:
    """`312X34` may be an extent as well as a number."""
    found = _MIXED.fullmatch(text)
    return found is not None and found["letters"] in ("X", "x")


@lru_cache(20_000)
def is_lettered(text: str) -> bool:
    """Say whether letters and figures that touch can go on with a number: `HGD472S`, `472S`."""
    if _LABELLED.fullmatch(text) or _RATED.match(text):
        return False
    if _LETTERED.fullmatch(text) is None:
        return False
    letters = text.lstrip("0123456789")
    return (
        is_code(text)
        if text[0].isalpha()
        else len(letters) == 1 or not letters.isalpha() or letters.lower() not in heads()
    )


@lru_cache(20_000)
def are_initials(letters: str, name: str) -> bool:
    """Say whether the letters of a number stand in this order in a maker's name, the first one first.

    >>> are_initials("TE", "Tessmoor"), are_initials("TE", "Oxterby"), are_initials("LT", "Lowick-Tarn")
    (True, False, True)
    """
    rest = iter(name.lower())
    return name[:1].lower() == letters[0].lower() and all(letter in rest for letter in letters.lower())


def opens(items: Items, start: int, first: int, text: str) -> bool | None:
    """Say whether the letters before item `start` open a number; None where it isn't clear.

    `text` is what stands at the item, from token `first` on.
    """
    letters = _letters_before(items, start, first)
    if not letters or not _NO_LETTERS.isdisjoint(items.roles[start - 1]):
        return False
    if letters.islower():
        return is_mixed(text) and text == text.lower() and _is_makers(items, start - 1, letters)
    if is_mixed(text):
        if _is_makers(items, start - 1, letters):
            return True
        if not is_series(letters) or (len(letters) > 2 and not _follows_name(items, start - 1)):
            return False
        return None if is_size(text) and not _is_announced(items, start - 2) else True
    if "-" in text or not (is_code(text) if text[0].isalpha() else _is_long(text) and items.roles[start - 1]):
        return False
    if text[0].isdigit():
        return _is_makers(items, start - 1, letters)
    return is_series(letters) and (_is_makers(items, start - 1, letters) or _parts_name(items, start - 1))


def _letters_before(items: Items, start: int, first: int) -> str:
    """Return two to four letters of one case, a blank before token `first`; empty for anything else."""
    letters = items.scan.raw[first - 1]
    if not 1 < len(letters) < 5 or not first or items.scan.gaps[first - 1] != " ":
        return ""
    plain = letters.isalpha() and (letters.isupper() or letters.islower())
    own = items.first[start - 1] == items.last[start - 1] and not items.is_glued(start - 2)
    return letters if plain and own else ""


def _is_long(text: str) -> bool:
    """`TE 4342`: figures that are no speed."""
    return text.isdigit() and len(text) > 3 and int(text) not in BARE_SPEED


def _is_makers(items: Items, k: int, letters: str) -> bool:
    """Say whether the letters at item `k` are the initials of a maker that is named before them."""
    initial = letters[0].lower()
    for j in range(k - 1, max(-1, k - _REACH), -1):
        if items.words[j][:1] != initial or not _is_maker(items, j):
            continue
        name, end = items.raw(j), j
        while end + 1 < k and items.raw(end + 1)[:1].isupper() and end - j < 3:
            end += 1
            name += items.raw(end)
        if are_initials(letters, name):
            return True
    return False


def _is_maker(items: Items, j: int) -> bool:
    """Say whether item `j` can be a maker's name, with a capital or without."""
    raw = items.raw(j)
    if len(raw) <= 3:
        return False
    return brand.is_name(items, j) or (
        raw.islower() and raw.isalpha() and not items.roles[j] and raw not in brand.ordinary()
    )


def _parts_name(items: Items, k: int) -> bool:
    """`Oxterby QX H413A19`: two capitals behind a name in small letters open its number."""
    known = brand.ordinary() | things("company")
    return (
        len(items.raw(k)) == 2
        and items.word(k) not in known
        and _follows_name(items, k)
        and not items.raw(k - 1).isupper()
    )


def _is_announced(items: Items, k: int) -> bool:
    """`number on tag: OX 312X34`: say whether the words up to item `k` lead to a number."""
    near = range(max(0, k - 3), k + 1)
    return any("onplate" in items.roles[j] or items.words[j] in _NUMBER_WORDS for j in near)


def _follows_name(items: Items, k: int) -> bool:
    return k > 0 and len(items.raw(k - 1)) > 3 and brand.is_name(items, k - 1)
