"""What reaches the motor: the supply system, its band of volts, its hertz.

What the site says goes before the old plate; the plate stands in where the site is silent.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from matcher import tables
from matcher.limit import at_most
from matcher.motor import Motor, Site
from matcher.trade.rated import ratings

FREQUENCY_TOLERANCE = 0.05
"""NEMA MG 1 12.44: +-5 % of the rated frequency at rated voltage."""
UNLISTED_BAND = 0.05
"""A number of volts that names no system brings itself +-5 % (common practice)."""


@dataclass(frozen=True, slots=True)
class System:
    """A supply system: its nominal voltage and the band that reaches a motor, in V."""

    nominal: float
    low: float
    high: float


def near_hertz(supply: float, rated: float) -> bool:
    """Say whether a supply lies within 5 % of a rated frequency, both in Hz (NEMA MG 1 12.44)."""
    return at_most(abs(supply - rated), FREQUENCY_TOLERANCE * rated)


def said_hertz(old: Motor, site: Site) -> tuple[float, ...]:
    """Return the hertz that the site or else the old plate says: one, both of "50/60", or none."""
    if site.supply_hertz is not None:
        return (site.supply_hertz,)
    if old.hertz is not None:
        return plate_hertz(old.hertz)
    return ()


@cache
def plate_hertz(hertz: str) -> tuple[float, ...]:
    """Return the rated frequencies of a plate in Hz, ascending."""
    return tuple(float(part) for part in hertz.split("/"))


@lru_cache(maxsize=4096)
def system(volts: float, hertz: float) -> System:
    """Return the system that a number of volts names at a frequency (ANSI C84.1; IEC 60038 at 50 Hz)."""
    grid = next((grid for grid in (60, 50) if near_hertz(hertz, grid)), 0)
    named = _systems().get((grid, volts))
    return named or System(volts, (1 - UNLISTED_BAND) * volts, (1 + UNLISTED_BAND) * volts)


def systems(old: Motor, site: Site) -> tuple[System, ...]:
    """Return every system that may reach the old motor; several where plate or hertz leave it open.

    Empty when nothing is known of the supply's volts. A measured voltage is a band of one point.
    """
    if site.measured_volts is not None:
        return (System(site.measured_volts, site.measured_volts, site.measured_volts),)
    hertz = said_hertz(old, site) or (50.0, 60.0)
    if site.supply_volts is not None:
        return _distinct((site.supply_volts,), hertz)
    return () if old.volts is None else _plate_systems(old.volts, hertz)


@lru_cache(maxsize=4096)
def _plate_systems(volts: str, hertz: tuple[float, ...]) -> tuple[System, ...]:
    return _distinct(tuple(end for rating in ratings(volts) for end in rating.ends), hertz)


def _distinct(volts: tuple[float, ...], hertz: tuple[float, ...]) -> tuple[System, ...]:
    return tuple(dict.fromkeys(system(number, frequency) for number in volts for frequency in hertz))


@cache
def _systems() -> Mapping[object, System]:
    def key(row: tables.Row) -> object:
        return int(tables.number(row, "hertz")), tables.number(row, "called")

    def value(row: tables.Row) -> System:
        nominal, low, high = (tables.number(row, name) for name in ("nominal", "low", "high"))
        return System(nominal, low, high)

    return tables.mapping("systems", key, value)
