"""Energy a year, old motor against new, from their input power; what is assumed stands beside it.

kWh = watts x hours / 1000. Input power is measured, or amps x volts x power factor (x square root of 3 on
three phases) of both plates. One plate against one measurement would compare full load with part load.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from matcher.judging.presume import is_electronic
from matcher.motor import Motor, Offer, Site
from matcher.tables import number, rows
from matcher.trade.plate_at import plate_amps_at
from matcher.trade.supply import systems


@dataclass(frozen=True, slots=True)
class Energy:
    """One year of both motors; money in the currency of the price."""

    old_watts: float
    new_watts: float
    hours: float
    price_kwh: float
    is_measured: bool
    """Both inputs were measured; else both are worked out from the plates."""

    @property
    def saved_kwh(self) -> float:
        """Energy that the new motor saves in a year; negative when it takes more."""
        return (self.old_watts - self.new_watts) * self.hours / 1000

    @property
    def saved(self) -> float:
        """Money that the new motor saves in a year; negative when it costs more."""
        return self.saved_kwh * self.price_kwh


@dataclass(frozen=True, slots=True)
class Inputs:
    """Both motors' input in watts with what was assumed, or what is missing."""

    old: float | None
    new: float | None
    is_measured: bool
    assumed: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()


def inputs(values: Mapping[str, float], proof_watts: float | None, swap: tuple[Motor, Offer, Site]) -> Inputs:
    """Return both inputs on one footing: both measured, else both from their plates."""
    old, new, site = swap
    measured_old, measured_new = values.get("old_watts"), values.get("new_watts", proof_watts)
    if measured_old is not None and measured_new is not None:
        return Inputs(measured_old, measured_new, is_measured=True)
    sides = [_plate_watts("old", old, old, site), _plate_watts("new", new, old, site)]
    missing = tuple(words for watts, words in sides if watts is None)
    if missing:
        return Inputs(None, None, is_measured=False, missing=missing)
    assumed = tuple(words for _, words in sides)
    if any(map(is_electronic, (old, new))):
        assumed += ("An electronic motor seldom runs at full load: measure its watts for a true figure.",)
    if measured_old is not None or measured_new is not None:
        assumed += ("Only one motor's watts were measured, so both are taken from their plates.",)
    return Inputs(sides[0][0], sides[1][0], is_measured=False, assumed=assumed)


def _plate_watts(which: str, motor: Motor, old: Motor, site: Site) -> tuple[float | None, str]:
    """Return a motor's input at full load from its plate and how it was reckoned, or what is missing."""
    volts, amps = _volts(old, site), plate_amps_at(motor, old, site)
    factor = _factors().get(motor.motor_type or ("polyphase" if motor.phase == 3 else ""))
    lacking = [
        name
        for name, value in (("what kind it is", factor), ("its amps", amps), ("the supply's volts", volts))
        if value is None
    ]
    if factor is None or amps is None or volts is None:
        return None, f"The {which} motor's input isn't known; missing: {', '.join(lacking)}."
    phases = math.sqrt(3) if motor.phase == 3 or motor.motor_type == "polyphase" else 1.0
    watts = volts * amps * factor * phases
    three = " x 1.73" if phases > 1 else ""
    return watts, (
        f"The {which} motor's input is taken as {volts:g} V x {amps:g} A x {factor:g}{three} = "
        f"{watts:.0f} W: plate amps at full load, power factor assumed."
    )


def _volts(old: Motor, site: Site) -> float | None:
    supplied = systems(old, site)
    return supplied[0].nominal if len({system.nominal for system in supplied}) == 1 else None


@cache
def _factors() -> dict[str, float]:
    return {row["motor_type"]: number(row, "factor") for row in rows("power_factors")}
