"""Airflow from velocities measured across a duct or grille."""

from collections.abc import Sequence

from matcher.airflow.entry import measured
from matcher.errors import BadValue


def traverse_cfm(velocities_fpm: Sequence[float], area_ft2: float) -> float:
    """Return the airflow in CFM: the mean of the velocities (not of pressures) times the area."""
    if not velocities_fpm:
        raise BadValue("the traverse holds no velocities; enter at least one in ft/min")
    readings = [measured("a velocity", value, low=0, high=10_000, unit="ft/min") for value in velocities_fpm]
    area = measured("the area", area_ft2, low=0, high=200, unit="ft2", above=True)
    return sum(readings) / len(readings) * area
