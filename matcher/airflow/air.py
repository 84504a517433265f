"""Air: its density at altitude, and the constants that tie heat, flow and pressure together."""

from matcher.airflow.entry import measured

SENSIBLE_HEAT_FACTOR = 1.08
"""Btu/h per CFM and degree F of standard air (AMCA, ASHRAE): 0.075 lb/ft3 x 60 min/h x 0.24 Btu/(lb F)."""

BTU_H_PER_WATT = 3.412
"""Btu/h that a watt gives as heat (exactly 3.412142, International Table Btu)."""

SEA_LEVEL_LAPSE_PER_FT = 6.8753e-6
PRESSURE_EXPONENT = 5.2559
"""US Standard Atmosphere 1976: p/p0 = (1 - 6.8753e-6 h)^5.2559, h in feet."""


def density_ratio(altitude_ft: float) -> float:
    """Return air density at an altitude over that at sea level, both at the same temperature.

    Indoor air is heated or cooled to room temperature wherever the house stands, so only the pressure
    falls: 0.83 at 5,000 ft (ASHRAE Fundamentals), and not the 0.86 of the free atmosphere, which is
    colder up there. Raises BadValue outside -1,500 .. 30,000 ft.
    """
    height = measured("the altitude", altitude_ft, low=-1500, high=30000, unit="ft")
    return float((1 - SEA_LEVEL_LAPSE_PER_FT * height) ** PRESSURE_EXPONENT)
