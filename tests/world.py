"""A world in which the priors are true: motors drawn from them, listings that hide facts, parts that fail.

A listing was found by searching for the old motor's facts, so what it says matches in nine of ten cases. What
it leaves out matches with the chance that the priors give to that check. Where it carries the old motor's maker
and number, what it leaves out equals the old one's with the chance of `same_maker_and_number`, else one of those
facts differs. Whether the part works is drawn by its condition.
"""

import random
from collections.abc import Mapping
from dataclasses import dataclass

from motors import terms

from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.verdict import judge

SEARCHED = 0.9
"""Chance that what a listing says matches, as the buyer searched for it."""
FITS = ("fits", "fits_with_work")
_PLATES = (("115", 120), ("208-230", 240), ("277", 277))
_OTHERS: Mapping[str, Mapping[str, object]] = {
    "voltage": {"volts": "460"},
    "shaft": {"shaft_diameter_in": 0.75},
    "mounting": {"mounting": ("yoke",), "body_diameter_in": 3.3},
    "length": {"body_length_in": 8.0},
    "speed": {"rpm": (1625,)},
    "drive": {"motor_type": "ecm_airflow", "control_signal": "serial"},
    "module": {"program_number": "P-9"},
}
"""What a fact is when it doesn't match."""
_ALSO = {"rotation": ("turn", "seen_from"), "power": ("power_hp",)}


@dataclass(frozen=True)
class Candidate:
    """What the listing says, and what is true."""

    record: Record
    fits: bool
    """The whole truth, judged by the rules, fits."""
    works: bool


def old_motor(rng: random.Random) -> Wanted:
    """Draw an old motor and its place, all of it known."""
    volts, supply = rng.choice(_PLATES)
    facts: dict[str, object] = {
        "brand": "Velmarrow",
        "part_number": f"VM-{rng.randint(100, 999)}",
        "volts": volts,
        "phase": 1,
        "hertz": "60",
        "power_hp": rng.choice((0.25, 0.5, 0.75)),
        "turn": rng.choice(("cw", "ccw")),
        "seen_from": "lead_end",
        "shaft_diameter_in": 0.5,
        "shaft_ends": 1,
        "mounting": rng.choice((("band",), ("lugs",))),
        "body_diameter_in": 5.6,
        "body_length_in": 5.0,
        "enclosure": "OAO",
        "bearing": "ball",
    }
    electronic = rng.random() < 0.25 and volts != "277"
    if electronic:
        facts |= {"motor_type": "ecm_torque", "control_signal": "taps_24v", "plug_pins": (16,)}
        facts |= {"rpm_range": (600, 1075), "program_number": "P-1"}
    else:
        facts |= {"motor_type": "psc", "rpm": (1075,), "speeds": 1, "leads": True}
    site = Site(
        supply_volts=supply,
        supply_phase=1,
        supply_hertz=60,
        in_airstream=True,
        room_length_in=7.0 if rng.random() < 0.4 else None,
        module_health="bad" if electronic else None,
        motor_health="bad" if electronic else None,
    )
    return Wanted(motor=Motor(**facts), site=site)


def _open_to_chance(wanted: Wanted) -> list[str]:
    electronic = wanted.motor.motor_type == "ecm_torque"
    names = ["voltage", "rotation", "shaft", "mounting", "power"]
    names += ["drive", "module"] if electronic else ["speed"]
    return names + (["length"] if wanted.site.room_length_in else [])


def _differing(name: str, old: Motor) -> dict[str, object]:
    if name == "rotation":
        return {"turn": "ccw" if old.turn == "cw" else "cw"}
    if name == "power":
        return {"power_hp": (old.power_hp or 0.5) / 2}
    return dict(_OTHERS[name])


def candidate(rng: random.Random, wanted: Wanted, settings: Settings, number: int) -> Candidate:
    """Draw the truth about one candidate, and the listing that says a part of it."""
    old, names = wanted.motor, _open_to_chance(wanted)
    hiding = rng.choice((0.1, 0.25, 0.4))
    hidden = [name for name in names if rng.random() < hiding]
    same = rng.random() < 0.2
    # The rules take the program of an equal number as equal, without a doubt; it is none here either.
    presumed = [name for name in hidden if name != "module"] if same else []
    drawn = [name for name in names if not (same and name in hidden)]
    differ = [name for name in drawn if not _matches(rng, name, name in hidden, settings)]
    if presumed and rng.random() >= settings.priors["same_maker_and_number"]:
        differ.append(rng.choice(presumed))
    truth = old.model_dump(exclude_none=True, exclude={"part_number"}) | {"module": "with"}
    if old.motor_type == "psc":
        truth.pop("module")
    if same:
        truth["part_number"] = old.part_number
    for name in differ:
        truth |= _differing(name, old)
    left_out = {field for name in hidden for field in (*_ALSO.get(name, ()), *_OTHERS.get(name, ()))}
    said = {name: value for name, value in truth.items() if name not in left_out}
    money = terms(rng) | {"price": round(rng.lognormvariate(4.4, 0.4), 2), "currency": "USD"}
    money.pop("item", None)
    condition = money.get("condition", "not_said")
    works = rng.random() < settings.condition_chances[str(condition)]
    whole = judge(wanted, Record("", Offer(**truth)), settings)
    record = Record(f"lot-{number}", Offer(**said, **money))
    return Candidate(record, whole.verdict in FITS, works)


def _matches(rng: random.Random, name: str, hidden: bool, settings: Settings) -> bool:
    return rng.random() < (settings.priors[name] if hidden else SEARCHED)
