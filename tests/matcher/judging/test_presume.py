from typing import Any

import pytest

from matcher.judging.pair import Pair
from matcher.judging.presume import BY_FRAME, BY_KIND, BY_NUMBER, by_kind, prepare
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record

NUMBER = {"brand": "Plenquist", "part_number": "PL-2031K"}


def pair(old: dict[str, Any], new: dict[str, Any], *twice: str) -> Pair:
    conflicts = tuple(Conflict(name, (), ()) for name in twice)
    return prepare(Wanted(motor=Motor(**old), site=Site()), Record("c", Offer(**new), conflicts=conflicts))


@pytest.mark.parametrize(
    ("old", "new", "equal"),
    [
        (NUMBER, {"brand": "PLENQUIST", "part_number": "pl 2031.k"}, True),
        (NUMBER, {"brand": "Orvandel", "part_number": "PL-2031K"}, False),
        (NUMBER, {"brand": "Plenquist", "part_number": "PL-2031"}, False),
        (NUMBER, {"brand": "Plenquist", "part_number": "PL-2O31K"}, False),  # looks alike
        (NUMBER, {"brand": "Plenquist"}, False),
        (NUMBER, {"part_number": "PL-2031K"}, False),
        ({"part_number": "PL-2031K"}, {"part_number": "PL-2031K"}, False),
        ({"brand": "Unbranded", "part_number": "N/A"}, {"brand": "Unbranded", "part_number": "N/A"}, False),
    ],
)
def test_equal_maker_and_number(old: dict[str, str], new: dict[str, str], equal: bool) -> None:
    found = pair(old | {"shaft_diameter_in": 0.5}, new)
    assert found.same_number is equal
    assert found.new.shaft_diameter_in == (0.5 if equal else None)
    assert dict(found.presumed_new) == ({"shaft_diameter_in": BY_NUMBER} if equal else {})


@pytest.mark.parametrize(
    ("old", "new", "missing"),
    [
        ({"module": "with", "motor_type": "ecm"}, {}, "module"),
        ({"module_number": "M1", "motor_type": "ecm"}, {}, "module_number"),
        ({"program_number": "P1", "motor_type": "ecm"}, {}, "program_number"),
        ({"rpm_range": (300, 1300)}, {"rpm": (1075,)}, "rpm_range"),
        ({"rpm": (1075,)}, {"rpm_range": (300, 1300)}, "rpm"),
        ({"leads": True}, {"plug_pins": (5,)}, "leads"),
        ({"plug_pins": (5,)}, {"leads": True}, "plug_pins"),
        ({"turn": "cw", "seen_from": "lead_end"}, {"turn": "cw"}, "seen_from"),
        ({"turn": "cw", "seen_from": "lead_end"}, {"turn": "ccw"}, "seen_from"),
        ({"turn": "cw", "seen_from": "lead_end"}, {"seen_from": "lead_end"}, "turn"),
        ({"other_numbers": ("A1",)}, {}, "other_numbers"),
    ],
)
def test_never_presumed_by_number(old: dict[str, Any], new: dict[str, Any], missing: str) -> None:
    found = pair(NUMBER | old, NUMBER | new)
    assert getattr(found.new, missing) is None
    assert missing not in found.presumed_new


@pytest.mark.parametrize(
    ("old", "twice", "missing"),
    [
        ({"shaft_diameter_in": 0.5}, "shaft_diameter_in", "shaft_diameter_in"),
        ({"turn": "cw", "seen_from": "lead_end"}, "turn", "turn"),
        ({"turn": "cw", "seen_from": "lead_end"}, "turn", "seen_from"),
        ({"rpm": (1075,)}, "rpm_range", "rpm"),
        ({"plug_pins": (5,)}, "leads", "plug_pins"),
    ],
)
def test_never_presumed_over_a_contradiction(old: dict[str, Any], twice: str, missing: str) -> None:
    assert getattr(pair(NUMBER | old, NUMBER, twice).new, missing) is None


def test_turn_and_view_come_together() -> None:
    found = pair(NUMBER | {"turn": "cw", "seen_from": "shaft_end"}, NUMBER)
    assert (found.new.turn, found.new.seen_from) == ("cw", "shaft_end")


def test_what_is_said_stays() -> None:
    found = pair(NUMBER | {"power_hp": 0.5, "volts": "115"}, NUMBER | {"power_hp": 0.25})
    assert (found.new.power_hp, found.new.volts) == (0.25, "115")


KINDS = [
    # said, implied
    ({"module": "with"}, {"motor_type": "ecm", "phase": 1}),
    ({"module_number": "M1"}, {"motor_type": "ecm", "phase": 1}),
    ({"program_number": "P1"}, {"motor_type": "ecm", "phase": 1}),
    ({"rpm_range": (300, 1300)}, {"motor_type": "ecm", "phase": 1}),
    ({"control_signal": "pwm"}, {"motor_type": "ecm", "phase": 1}),
    ({"plug_pins": (16,)}, {"motor_type": "ecm", "phase": 1}),
    ({"plug_pins": (4, 16)}, {"motor_type": "ecm", "phase": 1}),
    ({"plug_pins": (5,)}, {}),
    ({"phase": 3}, {"motor_type": "polyphase"}),
    ({"phase": 3, "module": "with"}, {"motor_type": "ecm"}),
    ({"phase": 1}, {}),
    ({"motor_type": "psc", "module": "with"}, {"phase": 1}),
    *(
        ({"motor_type": kind}, {"phase": 1})
        for kind in ("psc", "split_phase", "capacitor_start", "shaded_pole")
    ),
    *(({"motor_type": kind}, {"phase": 1}) for kind in ("ecm", "ecm_torque", "ecm_airflow")),
    ({"motor_type": "polyphase"}, {"phase": 3}),
    ({"motor_type": "polyphase", "volts": "115"}, {"phase": 3}),
    ({"volts": "265"}, {"phase": 1}),
    ({"volts": "277"}, {"phase": 1}),
    ({"volts": "115"}, {"phase": 1}),
    ({"volts": "110"}, {"phase": 1}),
    ({"volts": "127"}, {"phase": 1}),
    ({"volts": "100-110"}, {"phase": 1}),
    ({"volts": "127-130"}, {"phase": 1}),
    ({"volts": "100-109"}, {}),
    ({"volts": "128"}, {}),
    ({"volts": "115/230"}, {"phase": 1}),
    ({"volts": "208-230"}, {}),
    ({"volts": "230/460"}, {}),
    ({"volts": "230", "capacitor_uf": 5.0}, {"phase": 1}),
    ({"volts": "230", "speeds": 2}, {"phase": 1}),
    ({"volts": "230", "speeds": 1}, {}),
    ({"volts": "230", "rpm": (1075, 950)}, {}),
    ({"frame": "48Y"}, {"body_diameter_in": 5.6}),
    ({"frame": "48 yz"}, {"body_diameter_in": 5.6}),
    ({"frame": "48Y", "body_diameter_in": 5.5}, {}),
    ({"frame": "48"}, {}),
    ({"frame": "56C"}, {"mounting": ("face",)}),
    ({"frame": "145TC"}, {"mounting": ("face",)}),
    ({"frame": "56HC", "mounting": ("rigid_base",)}, {}),
    ({"frame": "IEC71"}, {}),
    ({"frame": "IEC"}, {}),
]


@pytest.mark.parametrize(("said", "implied"), KINDS)
def test_what_an_unsaid_kind_means(said: dict[str, Any], implied: dict[str, Any]) -> None:
    assert by_kind(Motor(**said), frozenset()) == implied
    assert by_kind(Motor(**said), frozenset(implied)) == {} or "motor_type" in implied
    assert not set(by_kind(Motor(**said), frozenset(implied))) & set(implied)


def test_it_holds_on_both_sides_and_is_marked() -> None:
    found = pair({"motor_type": "psc", "frame": "48Y"}, {"phase": 3})
    assert found.old.phase == 1
    assert found.presumed_old == {"phase": BY_KIND, "body_diameter_in": BY_FRAME}
    assert found.new.motor_type == "polyphase"
    assert found.presumed_new == {"motor_type": BY_KIND}


def test_by_number_comes_first() -> None:
    found = pair(NUMBER | {"motor_type": "psc"}, NUMBER | {"module": "with"})
    assert (found.new.motor_type, found.presumed_new["motor_type"]) == ("psc", BY_NUMBER)
    found = pair(NUMBER | {"rpm_range": (300, 1300)}, NUMBER)
    assert found.new.motor_type == "ecm"


def test_only_what_the_old_plate_says_is_taken_over() -> None:
    found = pair(NUMBER | {"program_number": "P1"}, NUMBER)
    assert found.old.motor_type == "ecm"
    assert found.new.motor_type is None


def test_a_module_sold_alone_is_one() -> None:
    found = pair({}, {"item": "module"})
    assert (found.new.module, found.new.motor_type) == ("module_only", "ecm")
    assert pair({}, {"item": "module", "module": "with"}).new.module == "with"
    assert pair({}, {"item": "module"}, "module").new.module is None


def test_how_numbers_relate() -> None:
    found = pair(
        {"brand": "A", "module_number": "M-1", "program_number": "P1"},
        {"brand": "B", "module_number": "m1", "program_number": "P2"},
    )
    assert (found.same_brand, found.same_module, found.same_program) == (False, True, False)
    found = pair({"brand": "A"}, {})
    assert (found.same_brand, found.same_module, found.same_program) == (None, None, None)


@pytest.mark.parametrize("name", ["program_number", "module", "control_signal", "rpm_range", "module_number"])
def test_a_contradicted_sign_of_a_module_is_said_all_the_same(name: str) -> None:
    """Whichever of the two values holds, the motor is an electronic one."""
    assert pair({"motor_type": "psc"}, {}, name).new.motor_type == "ecm"
    assert pair({"motor_type": "psc"}, {}).new.motor_type is None
