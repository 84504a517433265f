from collections.abc import Callable

import pytest

Told = Callable[..., str]
OLD = {"motor_type": "ecm_torque", "brand": "Fennadro", "part_number": "FD-1", "program_number": "R31180"}
NEW = {"motor_type": "ecm_torque", "brand": "Fennadro", "part_number": "FD-2"}
EQUAL, DIFFER = {"program_number": "r 31180"}, {"program_number": "R99"}
NOT_SAID: dict[str, str] = {}

# comes, numbers, module health, motor health, outcome: every cell, stated here on its own
CELLS = [
    ("with", "equal", "good", None, "same"),
    ("with", "equal", "unknown", None, "same"),
    ("with", "equal", "bad", None, "same"),
    ("with", "differ", "good", None, "loss 0.3"),
    ("with", "differ", "unknown", None, "loss 0.7"),
    ("with", "differ", "bad", None, "loss 1 poor"),
    ("with", "not said", "good", None, "loss 0.2"),
    ("with", "not said", "unknown", None, "unknown"),
    ("with", "not said", "bad", None, "unknown"),
    *(("without", numbers, "good", None, "loss 0.2") for numbers in ("equal", "differ", "not said")),
    *(("without", numbers, "unknown", None, "loss 0.6") for numbers in ("equal", "differ", "not said")),
    *(("without", numbers, "bad", None, "loss 1 poor") for numbers in ("equal", "differ", "not said")),
    *(("module_only", numbers, "good", None, "loss 1 poor") for numbers in ("equal", "differ", "not said")),
    *(("module_only", numbers, "good", "good", "loss 1 poor") for numbers in ("equal", "not said")),
    *(
        ("module_only", numbers, "unknown", None, "loss 0.8 poor")
        for numbers in ("equal", "differ", "not said")
    ),
    *(("module_only", numbers, "unknown", "bad", "loss 0.8 poor") for numbers in ("equal", "not said")),
    ("module_only", "equal", "bad", "good", "loss 0.3"),
    ("module_only", "differ", "bad", "good", "loss 1 poor"),
    ("module_only", "not said", "bad", "good", "unknown"),
    *(("module_only", numbers, "bad", None, "unknown") for numbers in ("equal", "differ", "not said")),
    *(("module_only", numbers, "bad", "unknown", "unknown") for numbers in ("equal", "differ", "not said")),
    *(("module_only", numbers, "bad", "bad", "loss 1 poor") for numbers in ("equal", "differ", "not said")),
    *((None, numbers, "good", None, "unknown") for numbers in ("equal", "differ", "not said")),
    *((None, numbers, "unknown", None, "unknown") for numbers in ("equal", "differ", "not said")),
    *((None, numbers, "bad", None, "unknown") for numbers in ("equal", "differ", "not said")),
    *((None, numbers, "bad", "good", "unknown") for numbers in ("equal", "not said")),
]


def new(comes: str | None, numbers: str) -> dict[str, object]:
    said = {"equal": EQUAL, "differ": DIFFER, "not said": NOT_SAID}[numbers]
    return NEW | said | ({"module": comes} if comes else {})


def site(module: str | None, motor: str | None) -> dict[str, str]:
    given = {"module_health": module, "motor_health": motor}
    return {name: health for name, health in given.items() if health is not None}


@pytest.mark.parametrize(("comes", "numbers", "module", "motor", "expected"), CELLS)
def test_every_cell(told: Told, look, *, comes, numbers, module, motor, expected) -> None:  # type: ignore[no-untyped-def]
    given = OLD, new(comes, numbers), site(module, motor)
    assert told("module", *given) == expected
    assert look("module", *given).asks == (expected == "unknown" and module != "good")
    if module == "unknown":
        assert told("module", OLD, new(comes, numbers), site(None, motor)) == expected


MOVING = [
    ("with", "differ", "good", 0.3),
    ("with", "not said", "good", 0.2),
    ("without", "not said", "good", 0.2),
    ("without", "not said", "unknown", 0.6),
]


@pytest.mark.parametrize(("comes", "numbers", "module", "loss"), MOVING)
@pytest.mark.parametrize(
    ("old", "change", "more"),
    [
        ({}, {}, 0),
        ({}, {"brand": "FENNADRO"}, 0),
        ({}, {"brand": "Grobisk"}, 0.3),
        ({}, {"brand": None}, 0),
        ({"volts": "115"}, {"volts": "115"}, 0),
        ({"volts": "115"}, {"volts": "115/230"}, 0),
        ({"volts": "208-230"}, {"volts": "230-240"}, 0),
        ({"volts": "208-230"}, {"volts": "240"}, 0.3),
        ({"volts": "115"}, {"volts": "230"}, 0.3),
        ({"volts": "115"}, {"volts": "230", "brand": "Grobisk"}, 0.3),
        ({"volts": "115"}, {}, 0),
    ],
)
def test_moving_it_needs_make_and_volts(
    told: Told, *, comes, numbers, module, loss, old, change, more
) -> None:  # type: ignore[no-untyped-def]
    facts = {name: value for name, value in (new(comes, numbers) | change).items() if value is not None}
    expected = f"loss {loss + more:.1f}"
    assert told("module", OLD | old, facts, {"module_health": module}) == expected


@pytest.mark.parametrize(
    ("comes", "numbers", "module", "expected"),
    [
        ("with", "equal", "good", "same"),
        ("with", "differ", "unknown", "loss 0.7"),
        ("without", "not said", "bad", "loss 1 poor"),
        ("module_only", "equal", "unknown", "loss 0.8 poor"),
    ],
)
def test_cells_that_move_nothing_ask_for_no_make(told: Told, comes, numbers, module, expected) -> None:  # type: ignore[no-untyped-def]
    other = new(comes, numbers) | {"brand": "Grobisk"}
    assert told("module", OLD, other, {"module_health": module}) == expected


PROGRAMS = [
    # old numbers, new numbers, equal maker and number, outcome with a module while the old one is bad
    ({"program_number": "A1"}, {"program_number": "A-1"}, False, "same"),
    ({"program_number": "A1"}, {"program_number": "A2"}, False, "loss 1 poor"),
    ({"program_number": "A1"}, {"program_number": "A2"}, True, "loss 1 poor"),
    ({"program_number": "A1"}, {}, True, "same"),
    ({}, {}, True, "same"),
    ({"module_number": "M1"}, {"module_number": "M2"}, True, "same"),
    ({"module_number": "M1"}, {"module_number": "M1"}, False, "unknown"),
    ({"module_number": "M1"}, {"module_number": "M2"}, False, "loss 1 poor"),
    ({"module_number": "M1"}, {}, False, "unknown"),
    (
        {"program_number": "A1", "module_number": "M1"},
        {"program_number": "A1", "module_number": "M2"},
        False,
        "same",
    ),
    ({"program_number": "A1", "module_number": "M1"}, {"module_number": "M2"}, False, "loss 1 poor"),
    ({"program_number": "A1O"}, {"program_number": "A10"}, False, "loss 1 poor"),  # alike is not equal
]


@pytest.mark.parametrize(("old", "other", "equal", "expected"), PROGRAMS)
def test_numbers(told: Told, old, other, equal, expected) -> None:  # type: ignore[no-untyped-def]
    was = {"motor_type": "ecm", "brand": "Fennadro", "part_number": "FD-1"} | old
    now = {"motor_type": "ecm", "brand": "Fennadro", "part_number": "FD-1" if equal else "FD-2"} | other
    assert told("module", was, now | {"module": "with"}, {"module_health": "bad"}) == expected


def test_a_contradicted_program_is_never_presumed_equal(told: Told) -> None:
    both = OLD | {"module": "with"}
    now = {name: value for name, value in both.items() if name != "program_number"}
    assert told("module", OLD, now, {"module_health": "bad"}) == "same"
    for health in ("bad", "good"):
        assert told("module", OLD, now, {"module_health": health}, twice_new=("program_number",)) == "unknown"
    alone = now | {"module": "module_only"}  # no number helps a module that replaces a good one
    assert (
        told("module", OLD, alone, {"module_health": "good"}, twice_new=("program_number",)) == "loss 1 poor"
    )


@pytest.mark.parametrize("old", ["psc", "split_phase", "capacitor_start", "shaded_pole"])
@pytest.mark.parametrize(
    ("comes", "expected"),
    [("with", "ok"), ("without", "loss 1 poor"), ("module_only", "loss 1 poor"), (None, "unknown")],
)
def test_an_electronic_motor_for_a_line_voltage_one(told: Told, old, comes, expected) -> None:  # type: ignore[no-untyped-def]
    now = NEW | ({"module": comes} if comes else {})
    assert told("module", {"motor_type": old}, now, {"module_health": "good"}) == expected


def test_it_applies_to_electronic_motors_alone(told: Told) -> None:
    assert told("module", {"motor_type": "psc"}, {"motor_type": "psc"}) == "none"
    assert told("module", {}, {"motor_type": "polyphase"}) == "none"
    assert told("module", {"motor_type": "ecm"}, {"motor_type": "psc"}) == "unknown"
    assert told("module", {}, {"module": "with"}) == "unknown"


@pytest.mark.parametrize(
    ("comes", "numbers", "health", "asked"),
    [
        ("without", "equal", "unknown", True),
        ("with", "differ", "unknown", True),
        ("module_only", "equal", "unknown", True),
        ("without", "equal", "good", False),
        ("with", "differ", "bad", False),
        ("with", "equal", "unknown", False),
    ],
)
def test_a_loss_that_hangs_on_the_old_module_asks_for_its_test(look, comes, numbers, health, asked) -> None:  # type: ignore[no-untyped-def]
    found = look("module", OLD, new(comes, numbers), site(health, None))
    assert ("site.module_health" in found.questions) is asked


def test_both_programs_stand_beside_each_other(look) -> None:  # type: ignore[no-untyped-def]
    found = look("module", OLD, new("with", "differ") | {"module_number": "M2"})
    assert (found.old, found.new) == ("program R31180", "with, program R99, module M2")
    assert look("module", OLD, new("without", "not said")).new == "without"
