"""When a row of `data/sheet_steps.tsv` stands on a sheet: one named question about the job a row."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from matcher.checks.module import moves_over
from matcher.checks.shaft import lacks_flat, may_strike
from matcher.judging.pair import Pair
from matcher.judging.presume import is_electronic, prepare
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.verdict import Judgement


@dataclass(frozen=True, slots=True)
class Swap:
    """One swap: the old motor, the chosen one, the place, and the judgement."""

    old: Motor
    new: Offer
    site: Site
    judgement: Judgement
    pair: Pair
    """Both motors as the checks see them."""

    @classmethod
    def of(cls, wanted: Wanted, chosen: Record, judgement: Judgement) -> "Swap":
        """Return the swap of a failed motor for the one that was chosen."""
        return cls(wanted.motor, chosen.facts, wanted.site, judgement, prepare(wanted, chosen))

    def needs(self, what: str) -> bool:
        """Tell whether a finding says that the swap needs this thing."""
        return any(what in finding.needs for finding in self.judgement.findings)

    def ecm(self) -> bool:
        """Tell whether either motor is electronically commutated."""
        return any(map(is_electronic, (self.old, self.new)))

    def held_by(self, *kinds: str) -> bool:
        """Tell whether the old motor is held in one of these ways."""
        return any(kind in kinds for kind in self.old.mounting or ())

    def has_blade(self) -> bool:
        """Tell whether it drives a fan blade and not a wheel: outdoors and not held by a band."""
        return bool(self.site.outdoors) and not self.held_by("band", "rigid_base", "cradle")

    def on_base(self) -> bool:
        """Tell whether it stands on feet and drives what it drives by a pulley or coupling."""
        return self.held_by("rigid_base", "face") and not self.held_by("band")

    def has_taps(self) -> bool:
        """Tell whether the old motor has, or may have, several speed wires to note down."""
        several = (self.old.speeds or 1) > 1 or "speeds" in self.pair.contradicted_old
        return several or self.site.taps_in_use is not None

    def may_leave_taps(self) -> bool:
        """Tell whether a speed wire of the new motor may stay unused.

        How many the old motor has doesn't say how many are in use: an unused one carries voltage, so only
        what is known spares the step.
        """
        speeds, used = self.new.speeds, self.site.taps_in_use
        if is_electronic(self.new) or _polyphase(self) or speeds == 1:
            return False
        return speeds is None or used is None or speeds > used


def takes_capacitor(motor: Motor) -> bool:
    """Tell whether a motor has a run capacitor, as its plate or its kind says."""
    return motor.capacitor_uf is not None or motor.motor_type == "psc"


def _polyphase(swap: Swap) -> bool:
    return swap.new.motor_type == "polyphase" or swap.new.phase == 3


CONDITIONS: Mapping[str, Callable[[Swap], bool]] = {
    "always": lambda _: True,
    "ecm": Swap.ecm,
    "capacitor": lambda swap: takes_capacitor(swap.new),
    "any_capacitor": lambda swap: takes_capacitor(swap.new) or takes_capacitor(swap.old),
    "no_capacitor": lambda swap: (
        swap.old.capacitor_uf is not None
        and not takes_capacitor(swap.new)
        and swap.new.motor_type is not None
    ),
    "explosion_proof": lambda swap: bool(swap.old.explosion_proof),
    "auto_for_manual": lambda swap: swap.old.protector == "manual" and swap.new.protector == "auto",
    "outdoors": lambda swap: bool(swap.site.outdoors),
    "indoors": lambda swap: not swap.site.outdoors,
    "long_shaft": lambda swap: may_strike(swap.old, swap.new),
    "file_flat": lambda swap: lacks_flat(swap.old, swap.new),
    "splice": lambda swap: (
        swap.needs("harness") or not (swap.new.plug_pins or swap.ecm() or _polyphase(swap))
    ),
    "hub": lambda swap: not swap.on_base(),
    "wheel": lambda swap: not swap.has_blade() and not swap.on_base(),
    "blade": lambda swap: swap.has_blade(),
    "base": Swap.on_base,
    "torque": lambda swap: not swap.on_base(),
    "clocking": lambda swap: not swap.on_base(),
    "band_old": lambda swap: swap.held_by("band"),
    "band_again": lambda swap: swap.held_by("band") and not swap.needs("band_kit"),
    "band_kit": lambda swap: swap.needs("band_kit"),
    "studs_old": lambda swap: swap.held_by("studs"),
    "lugs_old": lambda swap: swap.held_by("lugs"),
    "cradle_old": lambda swap: swap.held_by("cradle"),
    "isolators": lambda swap: swap.held_by("band", "lugs", "cradle"),
    "double_shaft": lambda swap: swap.old.shaft_ends == 2,
    "plugs": lambda swap: bool(swap.old.plug_pins or swap.new.plug_pins) or swap.ecm(),
    "leads_old": lambda swap: not swap.old.plug_pins and not is_electronic(swap.old) and not _polyphase(swap),
    "taps": lambda swap: swap.has_taps() and not _polyphase(swap),
    "module_moves": lambda swap: moves_over(swap.pair),
    "without_module": lambda swap: swap.new.module == "without",
    "old_link": lambda swap: "/" in (swap.old.volts or ""),
    "voltage_link": lambda swap: "/" in (swap.new.volts or ""),
    "turn": lambda swap: not _polyphase(swap) or swap.old.turn is not None,
    "set_turn": lambda swap: swap.new.turn == "either" and not _polyphase(swap),
    "spare_end": lambda swap: swap.new.shaft_ends == 2 and swap.old.shaft_ends != 2,
    "polyphase": _polyphase,
    "drain": lambda swap: bool(swap.site.outdoors) and swap.new.enclosure in ("TEAO", "TENV", "TEFC"),
    "unused_taps": Swap.may_leave_taps,
    "airflow_calibration": Swap.ecm,
}
"""Every name that the table may use."""


def holds(when: str, swap: Swap) -> bool:
    """Tell whether all conditions joined by `+` hold. Raises KeyError for a name that isn't one."""
    return all(CONDITIONS[name](swap) for name in when.split("+"))
