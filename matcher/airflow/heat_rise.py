"""Airflow from the temperature rise across a heat source of known output.

CFM = Btu/h / (1.08 x density ratio x rise): trade formula, standard air; see `air.py` for the constants.
"""

import math

from matcher.airflow.air import BTU_H_PER_WATT, SENSIBLE_HEAT_FACTOR, density_ratio
from matcher.airflow.entry import measured

USUAL_EFFICIENCY = 0.8
"""Steady-state efficiency of a furnace whose own isn't known; common practice."""


def electric_heat_btu_h(
    *, watts: float | None = None, volts: float | None = None, amps: float | None = None, phase: int = 1
) -> float:
    """Return the heat of an electric heater in Btu/h, from measured watts or from volts and amps.

    Heating elements are resistive, so watts are volts x amps (x square root of 3 on three phases).
    Raises BadValue for impossible values; ValueError when neither pair is given.
    """
    if watts is None:
        if volts is None or amps is None:
            raise ValueError("electric heat takes watts, or volts and amps")
        volts = measured("the heater's volts", volts, low=0, high=1000, unit="V", above=True)
        amps = measured("the heater's amps", amps, low=0, high=1000, unit="A", above=True)
        watts = volts * amps * (math.sqrt(3) if phase == 3 else 1.0)
    return measured("the heater's watts", watts, low=0, high=500_000, unit="W", above=True) * BTU_H_PER_WATT


def furnace_heat_btu_h(
    *, output: float | None = None, input_rate: float | None = None, efficiency: float = USUAL_EFFICIENCY
) -> float:
    """Return a furnace's heat to the air in Btu/h.

    It is the rated output, or the input rate times the steady-state efficiency.
    """
    if output is None:
        if input_rate is None:
            raise ValueError("a furnace takes its output, or its input rate and efficiency")
        share = measured("the efficiency", efficiency, low=0, high=1, unit="", above=True)
        output = measured("the input rate", input_rate, low=0, high=2e6, unit="Btu/h", above=True) * share
    return measured("the output", output, low=0, high=2e6, unit="Btu/h", above=True)


def airflow_cfm(heat_btu_h: float, rise_f: float, altitude_ft: float = 0.0) -> float:
    """Return the airflow in CFM from heat in Btu/h and the rise in degrees F.

    Example: 40,000 Btu/h over 50 F at sea level is 740.7 CFM.
    """
    heat = measured("the heat", heat_btu_h, low=0, high=2e6, unit="Btu/h", above=True)
    rise = measured("the heat rise", rise_f, low=0, high=200, unit="F", above=True)
    return heat / (SENSIBLE_HEAT_FACTOR * density_ratio(altitude_ft) * rise)
