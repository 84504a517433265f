"""Speeds of a variable-speed motor said in words: `300 rpm up to 1100 rpm`, `min 400 rpm max 1350 rpm`."""

from matcher.reading.items import Items
from matcher.reading.quantities import NOTHING, READERS, Given

_JOINTS = frozenset({"or", "and", "&", ",", "-", "/"})
_LEAST, _MOST = frozenset({"min", "minimum", "low"}), frozenset({"max", "maximum", "high"})
_NAMES_RANGE = frozenset({"range", "variable", "var", "adjustable", "programmable"})
_SLOWEST, _FASTEST = 100, 3600
_WIDE = 1.5
"""How many times the lowest speed the highest one is at least; less is a tolerance."""


def speed(items: Items, i: int, j: int, given: Given) -> Given:
    """A range said in words: `300 rpm up to 1100 rpm`, `300/1250 RPM MIN/MAX`."""
    if _up_to(items, i, j, given) or _least_and_most(items, i, j, given) or _in_bracket(items, i, j, given):
        return NOTHING
    if "rpm" in given and items.word(j + 1 if j > i else i + 1) in (
        "min/max",
        "min / max",
        "min",
        "variable",
    ):
        return _as_range(given)
    return given


def _up_to(items: Items, i: int, j: int, given: Given) -> bool:
    """`300 rpm up to 1100 rpm`: a range."""
    if items.word(j + 1) not in ("to", "up to") or not items.has(j + 2, "num"):
        return False
    low, top = given.get("rpm"), (READERS["rpm"](items.numbers[j + 2]) or given).get("rpm")
    if not isinstance(low, tuple) or not isinstance(top, tuple) or low == top:
        return False
    items.used[j + 2] = True
    items.claim("rpm_range", (min(low[0], top[0]), max(low[0], top[0])), i, j)
    return True


def _least_and_most(items: Items, i: int, j: int, given: Given) -> bool:
    """`min 400 rpm max 1350 rpm`, `max. 1800 rpm, min. 300 rpm`, `1200 rpm max, 300 min`: a range."""
    end = max(i, j)
    k = next((k for k in range(end + 1, end + 6) if items.has(k, "num")), None)
    speed = given.get("rpm")
    if k is None or items.segment[k] != items.segment[i] or not isinstance(speed, tuple):
        return False
    around = {*map(items.word, range(i - 2, i)), *map(items.word, range(end + 1, k + 1))}
    behind = {*around, *map(items.word, range(k + 1, k + 3))}
    other = (READERS["rpm"](items.numbers[k]) or given).get("rpm")
    if not isinstance(other, tuple) or len(speed) + len(other) != 2 or speed == other:
        return False
    if not around & (_LEAST | _MOST) or not (behind & _LEAST and behind & _MOST):
        return False
    items.used[k] = True
    items.claim("rpm_range", (min(speed + other), max(speed + other)), i, k)
    return True


def _in_bracket(items: Items, i: int, j: int, given: Given) -> bool:
    """`RPM 1050 (300-1300)`: the range stands in a bracket behind the speed that it is set to."""
    opens = max(i, j) + 1
    k = opens + 1 + (items.word(opens + 1) in _NAMES_RANGE)
    if items.word(opens) != "(" or not items.has(k, "num") or items.word(k + 1) != ")":
        return False
    number, speed = items.numbers[k], given.get("rpm")
    if number.signs != "-" or not number.whole or not isinstance(speed, tuple) or len(speed) != 1:
        return False
    low, top = map(int, number.atoms)
    if not _SLOWEST <= low <= speed[0] <= top <= _FASTEST or top < _WIDE * low:
        return False
    items.used[k] = True
    items.claim("rpm_range", (low, top), i, k)
    return True


def _as_range(given: Given) -> Given:
    speeds = given["rpm"]
    if isinstance(speeds, tuple) and len(speeds) == 2:
        return {"rpm_range": (speeds[1], speeds[0])}
    return given


def taps(items: Items, i: int, j: int, given: Given) -> Given:
    """`tap 1 2 3 4 or 5`: numbered taps, of which the last one counts them; `tap 1` counts none."""
    if items.word(j)[-1:] == "(" and items.word(i + 1) != ")":
        return NOTHING  # `multi-speed (3 phase)`
    if j > i or given.get("speeds") != 1 or items.word(j)[:3] != "tap":
        return given
    last, k = 1, i
    while True:
        k += 2 if items.word(k + 1) in _JOINTS else 1
        following = items.numbers[k].atoms if items.has(k, "num") else ()
        if not following or following[0] != last + 1:
            return {"speeds": last} if last > 1 else NOTHING
        items.used[k] = True
        last = int(following[-1])
