"""Trade quantities at the border: factors from pint, once; lengths and powers as people write them.

Inside the program every quantity is a plain number whose unit stands in its field's name. A factor is
asked from pint the first time and remembered, so that converting is a multiplication.
"""

from functools import cache
from typing import TYPE_CHECKING

from matcher.errors import BadValue

if TYPE_CHECKING:
    import pint

WATTS_PER_HP = 745.7
"""One horsepower as the trade's plates round it (550 ft lbf/s = 745.69987 W)."""
_CLOSE = 0.004  # inch; a decimal this near to a fraction is shown as the fraction
_BOTTOMS = (1, 2, 4, 8, 16, 32)
_POWER_BOTTOMS = (2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 70, 75, 80, 100)


@cache
def _registry() -> "pint.UnitRegistry[float]":
    """Make the one registry; it takes a quarter of a second, so not at import."""
    import pint

    return pint.UnitRegistry()


@cache
def factor(unit: str, into: str) -> float:
    """Return what one `unit` is in `into`; raises `BadValue` for units that can't be converted."""
    import pint

    try:
        return float(_registry().Quantity(1, unit).to(into).magnitude)
    except (pint.PintError, AttributeError, ValueError) as error:
        raise BadValue(f"can't turn {unit!r} into {into!r}; use units of one kind") from error


def mm_to_in(millimetres: float) -> float:
    """Return inches."""
    return millimetres * factor("mm", "inch")


def in_to_mm(inches: float) -> float:
    """Return millimetres."""
    return inches * factor("inch", "mm")


def fahrenheit_to_celsius(degrees: float) -> float:
    """Return degrees C; an offset scale, so not a factor."""
    return (degrees - 32.0) * 5.0 / 9.0
