"""Voltage unbalance of three phases, and what a motor may still give (NEMA MG 1 14.36).

Unbalance in per cent = 100 x largest deviation from the mean / mean, not highest less lowest.
"""

from collections.abc import Sequence
from functools import cache
from itertools import pairwise

from matcher.errors import BadValue
from matcher.tables import number, rows

DO_NOT_RUN_ABOVE = 5.0
"""Per cent; NEMA MG 1 14.36: operation above 5 % isn't recommended."""


def unbalance_percent(volts: Sequence[float]) -> float:
    """Return the unbalance of three voltages in per cent.

    Example: 460, 467 and 450 V have a mean of 459 V and deviate by at most 9 V: 1.96 %.
    Raises BadValue unless there are three positive voltages.
    """
    if len(volts) != 3 or not all(value > 0 for value in volts):
        raise BadValue("voltage unbalance takes three voltages, one of each pair of phases")
    mean = sum(volts) / 3
    return 100 * max(abs(value - mean) for value in volts) / mean


def derating(percent: float) -> float | None:
    """Return the share of its rated power that a motor may give; `None` above 5 %: don't run it."""
    points = _points()
    if percent > points[-1][0]:
        return None
    for (left, high), (right, low) in pairwise(points):
        if percent <= right:
            return high + (low - high) * (percent - left) / (right - left)
    return None


@cache
def _points() -> tuple[tuple[float, float], ...]:
    return tuple((number(row, "percent"), number(row, "factor")) for row in rows("unbalance"))
