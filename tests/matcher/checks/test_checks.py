"""The folder of checks as a whole: complete, in order, and reading no fact that it does not declare."""

from random import Random
from typing import Any

import pytest

from matcher.checks import BY_NAME, CHECKS, Check
from matcher.judging.pair import RELATIONS, Pair
from matcher.motor import MOTOR_FIELDS, OFFER_FIELDS, SITE_FIELDS, Motor, Offer, Site

HARD = ["voltage", "phase", "frequency", "rotation", "shaft", "mounting", "drive", "hazard", "length"]
SOFT = ["power", "speed", "taps", "connector", "module", "current", "capacitor", "enclosure", "bearing"]
ALL = [*HARD, *SOFT, "insulation", "protector", "duty"]
VALUES: dict[str, tuple[Any, ...]] = {
    "volts": ("115", "115/230"),
    "phase": (1, 3),
    "supply_phase": (1, 3),
    "supply_volts": (120.0, 240.0),
    "measured_volts": (118.0,),
    "supply_hertz": (60.0, 50.0),
    "hertz": ("60", "50/60"),
    "amps": ((9.0, 4.5),),
    "rpm": ((1075,), (825,)),
    "rpm_range": ((300, 1300),),
    "turn": ("cw", "either"),
    "seen_from": ("lead_end", "shaft_end"),
    "shaft_ends": (1, 2),
    "mounting": (("band", "studs", "face", "cradle"), ("lugs", "rigid_base")),
    "frame": ("56C", "145T"),
    "enclosure": ("ODP", "TEAO"),
    "bearing": ("sleeve", "ball"),
    "shaft_position": ("up", "any"),
    "insulation_class": ("B", "F"),
    "duty": ("continuous", "intermittent"),
    "protector": ("manual", "auto"),
    "motor_type": ("psc", "ecm_airflow", "ecm", "polyphase"),
    "module": ("with", "without", "module_only"),
    "control_signal": ("pwm", "serial"),
    "plug_pins": ((4, 16), (5,)),
    "currency": ("USD", "EUR"),
    "module_health": ("good", "bad", "unknown"),
    "motor_health": ("good", "bad"),
    "brand": ("Plenquist",),
    "shaft_keyed": (True, False),
    "leads": (True,),
    "explosion_proof": (True, False),
    "outdoors": (True, False),
    "in_airstream": (True, False),
}


class Watched:
    """Stands for a motor or place, and notes every fact that is read."""

    def __init__(self, facts: object, seen: set[str]) -> None:
        self._facts, self._seen = facts, seen

    def __getattr__(self, name: str) -> Any:
        self._seen.add(name)
        return getattr(self._facts, name)


def facts(names: tuple[str, ...], draw: Random) -> dict[str, Any]:
    """Draw facts; some of them are missing."""
    values = {name: draw.choice([None, *VALUES.get(name, (1, 2)) * 2]) for name in names}
    return {name: value for name, value in values.items() if value is not None}


def watched(turn: int) -> tuple[Pair, dict[str, set[str]]]:
    seen: dict[str, set[str]] = {"old": set(), "new": set(), "site": set()}
    draw = Random(turn)
    parts: dict[str, Any] = {
        "old": Motor.model_construct(**facts(MOTOR_FIELDS, draw)),
        "new": Offer.model_construct(**facts(OFFER_FIELDS, draw)),
        "site": Site.model_construct(**facts(SITE_FIELDS, draw)),
    }
    sides = {name: Watched(part, seen[name]) for name, part in parts.items()}
    return Pair(**sides, same_number=turn % 5 == 0, same_brand=turn % 3 == 0), seen  # type: ignore[arg-type]


def test_all_checks_of_the_contract_are_there_hard_ones_first() -> None:
    assert [check.name for check in CHECKS] == ALL
    assert [check.name for check in CHECKS if check.hard] == HARD
    assert {check.name for check in CHECKS if check.asks} == {"power", "speed"}


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_it_declares_facts_that_exist(check: Check) -> None:
    assert set(check.reads.old) | set(check.settled.old) <= set(MOTOR_FIELDS)
    assert set(check.reads.new) | set(check.settled.new) <= set(OFFER_FIELDS)
    assert set(check.reads.site) <= set(SITE_FIELDS)
    assert set(check.reads.pair) <= set(RELATIONS)
    assert set(check.settled.old) <= set(check.reads.old)
    assert set(check.settled.new) <= set(check.reads.new)


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_it_reads_what_it_declares_and_nothing_else(check: Check) -> None:
    read: dict[str, set[str]] = {"old": set(), "new": set(), "site": set()}
    for turn in range(300):
        pair, seen = watched(turn)
        check.judge(pair)
        for side, names in seen.items():
            read[side] |= names
    assert read == {
        "old": set(check.reads.old),
        "new": set(check.reads.new),
        "site": set(check.reads.site),
    }


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_what_it_says_is_said_to_a_person(check: Check) -> None:
    for turn in range(120):
        found = check.judge(watched(turn)[0])
        if found is not None:
            assert found.check == check.name
            assert found.why[0].isupper()
            assert found.why.rstrip().endswith((".", "?"))
            assert "None" not in found.why
            assert "_" not in found.why
            assert found.source
            assert 0 <= found.loss <= 1


def test_presumed_facts_are_said_and_the_plate_is_asked_for(look) -> None:  # type: ignore[no-untyped-def]
    number = {"brand": "Plenquist", "part_number": "PL-2031K"}
    found = look("shaft", {"shaft_diameter_in": 0.5, **number}, number)
    assert found.outcome == "same"
    assert found.presumed == ("shaft_diameter_in",)
    assert found.questions[0] == "plate_photo"
    assert "Presumed, same maker and number: shaft diameter." in found.why
    found = look("phase", {"phase": 1}, {"motor_type": "psc"})
    assert "Presumed, from what else is said of it: phase." in found.why
    assert found.questions == ()


def test_checks_are_found_by_name() -> None:
    assert BY_NAME["rotation"].name == "rotation"
