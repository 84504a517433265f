"""The few units that the trade's words come in, as exact factors; tests hold them against pint and NIST.

Inside the program every quantity is a plain number whose unit stands in its field's name, so these are all
that is needed at the border: lengths in inches, powers in hp, temperatures in degrees C.
"""

from collections.abc import Mapping

MM_PER_INCH = 25.4
"""Exact by definition (NIST SP 811, appendix B.8)."""
INCHES: Mapping[str, float] = {
    "in": 1.0,
    "ft": 12.0,
    "mm": 1 / MM_PER_INCH,
    "cm": 10 / MM_PER_INCH,
    "m": 1000 / MM_PER_INCH,
}
"""What one of a unit of length is in inches."""
WATTS_PER_HP = 745.7
"""One horsepower as the trade's plates round it (550 ft lbf/s = 745.69987 W)."""


def fahrenheit_to_celsius(degrees: float) -> float:
    """Return degrees C; an offset scale, so not a factor."""
    return (degrees - 32.0) * 5.0 / 9.0
