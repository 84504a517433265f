"""Airflow from velocities measured across a duct or grille."""

import math
from collections.abc import Sequence

from matcher.airflow.air import VELOCITY_FACTOR, density_ratio
from matcher.airflow.entry import measured
from matcher.errors import BadValue


def velocity_fpm(velocity_pressure_in_wc: float, altitude_ft: float = 0.0) -> float:
    """Return the velocity in ft/min behind a velocity pressure: V = 4005 sqrt(VP / density ratio).

    Source of the 4005: ACGIH ventilation manual, standard air; thinner air moves faster at the same VP.
    """
    pressure = measured("the velocity pressure", velocity_pressure_in_wc, low=0, high=10, unit="in. w.c.")
    return VELOCITY_FACTOR * math.sqrt(pressure / density_ratio(altitude_ft))


def traverse_cfm(velocities_fpm: Sequence[float], area_ft2: float) -> float:
    """Return the airflow in CFM: the mean of the velocities (not of pressures) times the area."""
    if not velocities_fpm:
        raise BadValue("the traverse holds no velocities; enter at least one in ft/min")
    readings = [measured("a velocity", value, low=0, high=10_000, unit="ft/min") for value in velocities_fpm]
    area = measured("the area", area_ft2, low=0, high=200, unit="ft2", above=True)
    return sum(readings) / len(readings) * area
