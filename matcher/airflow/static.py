"""Static pressure: the whole outside the unit, from its parts."""

from matcher.airflow.entry import measured

MOST_IN_WC = 5.0
"""No residential or light commercial blower makes more; a larger reading is a slipped decimal point."""


def total_external_static_in_wc(supply_in_wc: float, return_in_wc: float) -> float:
    """Return the total external static in inches of water: both sides' pressures without their signs.

    The supply side reads above the room, the return side below it; gauges and people write the return
    with or without its minus.
    """
    supply = measured("the supply static", abs(supply_in_wc), low=0, high=MOST_IN_WC, unit="in. w.c.")
    back = measured("the return static", abs(return_in_wc), low=0, high=MOST_IN_WC, unit="in. w.c.")
    return supply + back
