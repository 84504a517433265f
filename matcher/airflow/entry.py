"""Measured values at the door: one that can't be is refused with the reason."""

import math

from matcher.errors import BadValue


def measured(what: str, value: float, *, low: float, high: float, unit: str, above: bool = False) -> float:
    """Return a measured value that is possible; `above` leaves the lower limit itself out.

    Raises BadValue with one line that names the value, the limits, and what to do.
    """
    too_low = value <= low if above else value < low
    if not math.isfinite(value) or too_low or value > high:
        span = f"above {low:g} and at most {high:g}" if above else f"from {low:g} to {high:g}"
        raise BadValue(
            f"{what}: {value:g} {unit} can't be; it must be {span} {unit}, so measure it again".strip()
        )
    return float(value)
