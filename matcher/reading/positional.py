"""Plates typed in one line without labels: `1/2 208-230 1075 ccwle 48Y 5.6 1/2x6`.

Only where nothing else can be meant: power, then supply, and behind them two of speed, turn and frame.
"""

from matcher.reading.frame import FRAME_NUMBERS
from matcher.reading.items import Items
from matcher.reading.quantities import BARE_SPEED, READERS

SUPPLIES = frozenset({110, 115, 120, 200, 208, 220, 230, 240, 265, 277, 380, 400, 415, 440, 460, 480})
_POWERS = (0.01, 5.0)
_BODIES = (3.0, 7.0)  # inch
_WITNESSES = 2


def in_a_row(items: Items) -> None:
    """Claim power, supply and body of a line that gives them by their place alone."""
    start = 0
    for i in range(len(items) + 1):
        if i == len(items) or items.word(i) == "\n":
            _line(items, start, i)
            start = i + 1


def _line(items: Items, start: int, end: int) -> None:
    supply = start + 2 if items.said(start + 1, "unit") == "hp" else start + 1
    if not (_is_power(items, start, supply) and _is_supply(items, supply)):
        return
    rest = range(supply + 1, end)
    if sum((_has_speed(items, rest), _has_turn(items, rest), _has_frame(items, rest))) < _WITNESSES:
        return
    if supply == start + 1:
        items.used[start] = True
        items.claim("power_hp", round(items.numbers[start].value or 0.0, 4), start)
    if not items.has(supply + 1, "unit") or items.said(supply + 1, "unit") != "v":
        items.used[supply] = True
        given = READERS["v"](items.numbers[supply]) or {}
        items.claim("volts", given["volts"], supply)
    _body(items, rest)
    _shaft(items, rest)


def _is_power(items: Items, i: int, supply: int) -> bool:
    """A fraction alone, or any figure before `hp`."""
    number = items.numbers.get(i)
    if number is None or number.value is None or not _POWERS[0] <= number.value <= _POWERS[1]:
        return False
    return supply == i + 2 or "/" in number.signs or number.text[-1] in "½¼¾⅛⅜⅝⅞⅓⅔⅕⅙"


def _is_supply(items: Items, i: int) -> bool:
    number = items.numbers.get(i)
    if number is None or not number.atoms or not SUPPLIES.issuperset(number.atoms):
        return False
    return items.said(i + 1, "unit") in (None, "v") and "after" not in items.roles[i + 1]


def _has_speed(items: Items, rest: range) -> bool:
    return any(i in items.numbers and items.numbers[i].value in BARE_SPEED for i in rest)


def _has_turn(items: Items, rest: range) -> bool:
    return any("turn" in items.roles[i] or "turnview" in items.roles[i] for i in rest)


def _has_frame(items: Items, rest: range) -> bool:
    return any(
        i in items.numbers and items.numbers[i].text in FRAME_NUMBERS and items.is_glued(i) for i in rest
    )


def _body(items: Items, rest: range) -> None:
    """A bare decimal of a body's size: its diameter."""
    for i in rest:
        number = items.numbers.get(i)
        if number is None or number.value is None or number.text.count(".") != 1 or items.is_glued(i):
            continue
        bare = not items.has(i + 1, "unit") and not items.has(i + 1, "after") and not items.has(i + 1, "by")
        if bare and not items.has(i - 1, "by") and _BODIES[0] <= number.value <= _BODIES[1]:
            items.used[i] = True
            items.claim("body_diameter_in", number.value, i)
            return


def _shaft(items: Items, rest: range) -> None:
    """`1/2x6`, `5x1/2`: the thinner figure is the diameter."""
    for i in rest:
        one, two = items.numbers.get(i), items.numbers.get(i + 2)
        if one is None or two is None or not items.has(i + 1, "by") or one.value is None or two.value is None:
            continue
        thin, long = sorted((i, i + 2), key=lambda k: items.numbers[k].value or 0.0)
        diameter, length = items.numbers[thin].value or 0.0, items.numbers[long].value or 0.0
        if 0.2 <= diameter <= 0.9 and 1.0 <= length <= 9.0 and not items.has(i + 3, "unit"):
            items.used[i] = items.used[i + 2] = True
            items.claim("shaft_diameter_in", round(diameter, 4), thin)
            items.claim("shaft_length_in", round(length, 4), long)
            return
