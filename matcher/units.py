"""Trade quantities at the border: factors from pint, once; lengths and powers as people write them.

Inside the program every quantity is a plain number whose unit stands in its field's name. A factor is
asked from pint the first time and remembered, so that converting is a multiplication.
"""

from fractions import Fraction
from functools import cache
from math import isfinite
from typing import TYPE_CHECKING

from matcher.errors import BadValue
from matcher.numeral import numeral

if TYPE_CHECKING:
    import pint

WATTS_PER_HP = 745.7
"""One horsepower as the trade's plates round it (550 ft lbf/s = 745.69987 W)."""
_CLOSE = 0.004  # inch; a decimal this near to a fraction is shown as the fraction
_SAME_POWER = 0.004  # share; 0.3333 hp is 1/3 hp
_BOTTOMS = (1, 2, 4, 8, 16, 32)
_POWER_BOTTOMS = (2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100)
_LENGTHS = {
    '"': "inch",
    "''": "inch",
    "in": "inch",
    "in.": "inch",
    "inch": "inch",
    "inches": "inch",
    "": "inch",
} | {
    "mm": "mm",
    "cm": "cm",
    "m": "meter",
    "ft": "foot",
    "'": "foot",
}


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


def celsius_to_fahrenheit(degrees: float) -> float:
    """Return degrees F."""
    return degrees * 9.0 / 5.0 + 32.0


def show_length(inches: float, *, millimetres: bool = False) -> str:
    """Say a length as people do: `5 5/8 in`, `0.31 in` where no fraction fits, `12.7 mm` on demand."""
    if millimetres:
        return f"{round(in_to_mm(inches), 1):g} mm"
    for bottom in _BOTTOMS:
        top = round(inches * bottom)
        if top and abs(inches - top / bottom) <= _CLOSE:
            return f"{_mixed(Fraction(top, bottom))} in"
    return f"{round(inches, 3):g} in"


def show_power(horsepower: float, *, watts: bool = False) -> str:
    """Say a power: `1/3 hp`, `1 1/2 hp`, `0.0215 hp`; `16 W` on demand."""
    if watts:
        return f"{horsepower * WATTS_PER_HP:.3g} W"
    for bottom in (1, *_POWER_BOTTOMS):
        top = round(horsepower * bottom)
        usual = top == 1 or bottom <= 4
        if top and usual and abs(horsepower - top / bottom) <= _SAME_POWER * horsepower:
            return f"{_mixed(Fraction(top, bottom))} hp"
    return f"{horsepower:.4g} hp"


def _mixed(fraction: Fraction) -> str:
    whole, rest = divmod(fraction.numerator, fraction.denominator)
    if not rest:
        return str(whole)
    return f"{whole} {rest}/{fraction.denominator}" if whole else f"{rest}/{fraction.denominator}"


def parse_length(text: str) -> float:
    """Read a length in inches from `5 5/8`, `5-5/8 in`, `.4995"`, `12.7 mm`; raises `BadValue`."""
    figures, unit = _parted(text)
    if unit not in _LENGTHS:
        raise BadValue(f"{text!r} is no length; write 5 5/8 in, 0.5 or 12.7 mm")
    name = _LENGTHS[unit]
    return _number(figures, text) * (1.0 if name == "inch" else factor(name, "inch"))


def parse_power(text: str) -> float:
    """Read a power in hp from `1/3`, `1-1/2 hp`, `0.37 kW`, `370 W`; raises `BadValue`."""
    figures, unit = _parted(text)
    scale = {"hp": 1.0, "": 1.0, "kw": 1000.0 / WATTS_PER_HP, "w": 1.0 / WATTS_PER_HP}.get(unit)
    if scale is None:
        raise BadValue(f"{text!r} is no power; write 1/3 hp, 0.5, 370 W or 0.37 kW")
    return _number(figures, text) * scale


def _parted(text: str) -> tuple[str, str]:
    """Part the figures from the unit behind them."""
    plain = text.strip().casefold()
    end = max((place for place, char in enumerate(plain) if char.isdigit() or char in "½¼¾⅛⅜⅝⅞"), default=-1)
    return "-".join(plain[: end + 1].split()), plain[end + 1 :].strip()


def _number(figures: str, text: str) -> float:
    """Read one number, a whole and a fraction included; raises `BadValue`."""
    value = numeral(figures).value if figures and set(figures) <= set("0123456789½¼¾⅛⅜⅝⅞.,/-") else None
    if value is None or not isfinite(value) or value <= 0:
        raise BadValue(f"{text!r} is no number above 0; write 5 5/8, 0.5 or 1/3")
    return value
