"""Textbook electrics of small motors: speeds, currents, unbalance, and the code's table currents.

>>> synchronous_speed(60, 6), round(full_load_amps(746 / 0.7, 115, power_factor=0.8), 2)
(1200.0, 11.58)
"""

import itertools
from collections.abc import Mapping, Sequence
from functools import cache
from math import sqrt

from matcher import tables
from matcher.errors import BadValue

CONTINUOUS = 1.25
"""NEC 430.22: conductors of a single continuous-duty motor carry 125 % of its full-load current."""
WORST_UNBALANCE = 5.0
"""Per cent; above it a polyphase motor must not run (NEMA MG 1 14.36)."""


def synchronous_speed(hertz: float, poles: int) -> float:
    """Return the synchronous speed 120 f / p in 1/min."""
    return 120 * hertz / poles


def slip(rpm: float, hertz: float, poles: int) -> float:
    """Return the slip (0 .. 1) of a rated speed in 1/min."""
    return 1 - rpm / synchronous_speed(hertz, poles)


def full_load_amps(watts: float, volts: float, *, power_factor: float, phase: int = 1) -> float:
    """Return the current in A of an input power in W: P / (V pf), on three phases P / (sqrt(3) V pf)."""
    return watts / (volts * power_factor * (sqrt(3) if phase == 3 else 1))


def circuit_amps_needed(full_load: float) -> float:
    """Return the circuit in A that a motor's full-load current wants (NEC 430.22)."""
    return CONTINUOUS * full_load


def table_amps(phase: int, hp: float, volts: float) -> float:
    """Return the code's full-load current in A (NEC 430.248, 430.250); not what a fan motor's plate says.

    Raises `BadValue` where the tables have no such motor.
    """
    found = _table_amps().get((phase, round(hp, 4), volts))
    if found is None:
        raise BadValue(f"NEC 430.248 and 430.250 have no {hp:g} hp motor of {phase} phase at {volts:g} V")
    return found


@cache
def _table_amps() -> Mapping[object, float]:
    name = "full_load_amps"

    def key(row: tables.Row) -> object:
        return int(row["phase"]), round(tables.number(row, "hp", name), 4), tables.number(row, "volts", name)

    return tables.mapping(name, key, lambda row: tables.number(row, "amps", name))


def unbalance(volts: Sequence[float]) -> float:
    """Return the voltage unbalance in per cent: the largest distance from the mean (NEMA MG 1 14.36.2).

    >>> round(unbalance([460, 467, 450]), 2)
    1.96
    """
    mean = sum(volts) / len(volts)
    return 100 * max(abs(volt - mean) for volt in volts) / mean


def unbalance_factor(percent: float) -> float:
    """Return the share of rated power left at an unbalance in per cent (NEMA MG 1 Fig. 14-1, +-0.02).

    Straight between the points of `data/unbalance.tsv`. Raises `BadValue` outside 0 .. 5 %.
    """
    if not 0 <= percent <= WORST_UNBALANCE:
        raise BadValue(f"an unbalance of {percent:g} % is outside 0 to 5 %: the motor must not run")
    points = [(float(row["percent"]), float(row["factor"])) for row in tables.rows("unbalance")]
    for (low, left), (high, right) in itertools.pairwise(points):
        if percent <= high:
            return left + (right - left) * (percent - low) / (high - low)
    return points[-1][1]
