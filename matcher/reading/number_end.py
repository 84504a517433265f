"""Where a number ends that has a blank in it, or may have: `CAT. 5X 331 VOLTS 115`, `DB 33 115`.

Two numbers that are cut to the same stump would pass for one, so a number without a clear end is left out.
"""

import re

from matcher.reading.code import reach, written
from matcher.reading.items import Items
from matcher.reading.parted_code import is_lettered, is_mixed
from matcher.reading.positional import SUPPLIES
from matcher.reading.quantities import BARE_SPEED
from matcher.reading.vocabulary import heads

UNCLEAR = -1
"""Where a number has no clear end."""
_LETTER = re.compile(r"[B-DG-UX-Zx]")
_SPEEDS = re.compile(r"[2-6]SP")  # `WH 4812 2SP`
_ENDS = frozenset("\n,.;|)(")
_SUPPLIES = SUPPLIES | {575}
_FAIR = {
    "rpm": (300, 3600),
    "hz": (50, 60),
    "hp": (0, 20),
    "a": (0, 99),
    "A": (0, 99),
    "ph": (1, 3),
    "sf": (1, 2),
}
_SHORT = 6
_LEAST = 100
_PIECES = 3


def end_of(items: Items, first: int, last: int, *, labelled: bool) -> int:
    """Return the last token of the number from `first` to `last` with what belongs to it behind a blank.

    `UNCLEAR` where something stands there that may belong to it. Behind a label what follows the letters and
    figures of a short number goes on with it: `MOD. DH39 HGD472S`, `CAT. 5X 331 VOLTS 115`.
    """
    for _ in range(_PIECES):
        number = written(items, first, last)
        if " " in number and _goes_on(items, last):
            return UNCLEAR
        end = _piece_behind(items, last) if len(number) <= _SHORT or " " in number else last
        if end == last or "-" in number:
            return last
        belongs = _belongs(items, number, written(items, last + 1, end), end)
        if belongs is None or (belongs and not labelled):
            return UNCLEAR
        if not belongs:
            return last
        last = end
    return UNCLEAR


def _goes_on(items: Items, last: int) -> bool:
    """`OX 4812 B 1/2 HP`, `OX 312 X 34`: one letter between a number and a figure may be its last one."""
    scan = items.scan
    return (
        scan.gaps[last : last + 2] == [" ", " "]
        and last + 2 < len(scan.words)
        and _LETTER.fullmatch(scan.raw[last + 1]) is not None
        and scan.words[last + 2][0].isdigit()
    )


def _piece_behind(items: Items, last: int) -> int:
    """Return the last token of what stands a blank behind token `last` and has a figure in it."""
    scan = items.scan
    if last + 1 >= len(scan.words) or scan.gaps[last] != " " or not scan.raw[last + 1][0].isalnum():
        return last
    end = reach(items, last + 1)[1]
    return end if any(map(str.isdigit, written(items, last + 1, end))) else last


def _belongs(items: Items, number: str, piece: str, end: int) -> bool | None:
    """Say whether a piece behind a blank belongs to a number; None where it isn't clear."""
    if piece.isdigit():
        return _figures_belong(items, number, int(piece), end) if len(piece) > 2 or items.plate else False
    if is_mixed(piece) or is_lettered(piece):
        return True
    if " " in number and _SPEEDS.fullmatch(piece):
        return True if end + 1 == len(items.scan.words) or items.scan.words[end + 1] in _ENDS else None
    return False


def _figures_belong(items: Items, number: str, value: int, end: int) -> bool | None:
    """Say whether figures alone belong to a number: not where they are a rating."""
    words = items.scan.words
    known = heads().get(words[end + 1]) if end + 1 < len(words) else None
    roles = known.roles if known else {}
    unit = roles.get("unit") or roles.get("after")
    rating = "v" if value in _SUPPLIES else "rpm" if value in BARE_SPEED else ""
    if unit and not (items.plate and _is_label(items, unit, value, end + 1)):
        return False
    if rating and rating != unit:
        if " " not in number and not unit:
            return False
        return True if any(items.said(i, "unit") == rating for i in items.active) else None
    if value < _LEAST and not unit:
        return None if value > 9 else False  # `K33 56`, `DB 33 4`
    return items.plate or not roles or bool(unit)  # `Model AX 450 in stock`


def _is_label(items: Items, unit: str, value: int, token: int) -> bool:
    """`331 VOLTS 115`: a unit is the label of what follows where the figure before it can't be one."""
    if not _is_fair(unit, value):
        return True
    words = [*items.scan.words[token + 1 : token + 4], "\n", "\n", "\n"]
    if not words[0].isdigit() or not _is_fair(unit, int(words[0])):
        return False
    other = _unit(words[1])
    return not other or words[2].isdigit() or not _is_fair(other, int(words[0]))


def _unit(word: str) -> str:
    """Return the quantity of a unit's word; empty for any other."""
    known = heads().get(word)
    roles = known.roles if known else {}
    return roles.get("unit") or roles.get("after") or ""


def _is_fair(unit: str, value: int) -> bool:
    """Say whether a quantity can have a value."""
    if unit == "v":
        return value in _SUPPLIES
    low, high = _FAIR.get(unit, (0, 10**6))
    return low <= value <= high
