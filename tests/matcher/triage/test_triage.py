"""From bench tests to the part that failed, on both sides of every limit."""

import pytest

from matcher.errors import BadValue, UnknownField
from matcher.motor import Motor
from matcher.triage import bench_for, diagnose
from matcher.triage.bench import bench_tests
from matcher.triage.conclude import _rules
from matcher.triage.readings import capacitor_word, windings_word

PSC = Motor(motor_type="psc", capacitor_uf=7.5)
ECM = Motor(motor_type="ecm_airflow")
SOUND = {
    "wheel": "free",
    "spins": "free",
    "grinds": "no",
    "side_play": "no",
    "smell": "no",
    "shell_kohm": "OL",
}
SOUND_PSC = SOUND | {"windings": "fine", "capacitor_uf": "7.4", "line_supply": "present"}
SOUND_ECM = SOUND | {
    "ran_until_now": "no",
    "windings_ohm": "2.1 2.1 2.2",
    "line_supply": "present",
    "low_voltage_call": "present",
}


def test_dead_tests_come_before_live_ones_for_every_kind() -> None:
    for motor in (PSC, ECM):
        stages = [test.live for test in bench_for(motor)]
        assert stages == sorted(stages)


@pytest.mark.parametrize(
    ("motor", "answers", "part", "motor_health", "module_health"),
    [
        pytest.param(PSC, {"wheel": "blocked"}, "other", "unknown", "unknown", id="a rag in the wheel"),
        pytest.param(PSC, {"spins": "seized"}, "motor", "bad", "unknown", id="seized"),
        pytest.param(PSC, {"grinds": "yes"}, "motor", "bad", "unknown", id="grinding"),
        pytest.param(PSC, {"side_play": "yes"}, "motor", "bad", "unknown", id="side play"),
        pytest.param(PSC, {"windings": "open"}, "motor", "bad", "unknown", id="open winding"),
        pytest.param(PSC, {"windings": "shorted"}, "motor", "bad", "unknown", id="shorted winding"),
        pytest.param(PSC, {"shell_kohm": "100"}, "motor", "bad", "unknown", id="100 kohm is not above 100"),
        pytest.param(
            PSC, SOUND_PSC | {"capacitor_uf": "6.7"}, "capacitor", "good", "unknown", id="6.7 of 7.5 uF"
        ),
        pytest.param(
            PSC, SOUND_PSC | {"line_supply": "absent"}, "wiring", "unknown", "unknown", id="no supply"
        ),
        pytest.param(PSC, SOUND_PSC, "other", "unknown", "unknown", id="all good"),
        pytest.param(ECM, SOUND_ECM, "module", "good", "bad", id="motor sound, both supplies there"),
        pytest.param(
            ECM, SOUND_ECM | {"low_voltage_call": "absent"}, "wiring", "unknown", "unknown", id="no call"
        ),
        pytest.param(
            ECM, SOUND_ECM | {"windings_ohm": "2.0 2.0 2.3"}, "motor", "bad", "unknown", id="unequal pairs"
        ),
        pytest.param(
            ECM, SOUND_ECM | {"windings_ohm": "2.0 OL 2.0"}, "motor", "bad", "unknown", id="open pair"
        ),
        pytest.param(
            ECM, {"ran_until_now": "yes", "grinds": "yes"}, "motor", "bad", "good", id="module worked on"
        ),
        pytest.param(
            ECM,
            {"ran_until_now": "yes", "smell": "module", "spins": "stiff"},
            "motor",
            "bad",
            "unknown",
            id="smelly",
        ),
        pytest.param(
            ECM,
            {"ran_until_now": "yes", "shell_kohm": "5"},
            "motor",
            "bad",
            "unknown",
            id="a leak may take the module",
        ),
    ],
)
def test_what_failed(
    motor: Motor, answers: dict[str, str], part: str, motor_health: str, module_health: str
) -> None:
    found = diagnose(motor, answers)
    assert (found.part, found.settled, found.motor_health, found.module_health) == (
        part,
        True,
        motor_health,
        module_health,
    )
    assert found.why
    assert found.next_test is None


def test_while_nothing_is_settled_the_first_open_test_comes_next() -> None:
    found = diagnose(PSC, {"wheel": "free", "grinds": "no"})
    assert not found.settled
    assert found.next_test is not None
    assert found.next_test.name == "spins"


def test_a_smell_points_without_settling() -> None:
    found = diagnose(ECM, {"smell": "module"})
    assert (found.settled, found.suspected) == (False, "module")


@pytest.mark.parametrize(
    ("ohms", "word"),
    [
        ((2.0, 2.0, 2.0), "equal"),
        ((1.9, 2.0, 2.1), "equal"),  # a tenth of the mean, exactly
        ((1.9, 2.0, 2.11), "unequal"),
        ((0.0, 2.0, 2.0), "unequal"),
        ((2.0, 2.0, 1001.0), "open"),
    ],
)
def test_three_pairs_within_a_tenth(ohms: tuple[float, ...], word: str) -> None:
    assert windings_word(ohms) == word


@pytest.mark.parametrize(
    ("read", "printed", "tolerance", "word"),
    [
        (9.0, 10.0, None, "within"),
        (8.99, 10.0, None, "out"),
        (11.0, 10.0, None, "within"),
        (9.5, 10.0, 0.05, "within"),
        (9.49, 10.0, 0.05, "out"),
        (9.0, None, None, "unsure"),
    ],
)
def test_a_capacitor_is_held_against_its_own_tolerance(
    read: float, printed: float | None, tolerance: float | None, word: str
) -> None:
    assert capacitor_word(read, printed, tolerance) == word


@pytest.mark.parametrize(
    ("answers", "error", "words"),
    [
        ({"spin": "free"}, UnknownField, "'spin' is no bench test"),
        ({"spins": "slowly"}, BadValue, "choose free, stiff, seized or skip"),
        ({"shell_kohm": "-4"}, BadValue, "shell_kohm"),
        ({"windings_ohm": "2.1 2.1"}, BadValue, "isn't 3 reading"),
        ({"windings_ohm": "nan 1 1"}, BadValue, "isn't 3 reading"),
    ],
)
def test_answers_that_cannot_be_are_refused(
    answers: dict[str, str], error: type[Exception], words: str
) -> None:
    with pytest.raises(error, match=words):
        diagnose(ECM, answers)


def test_every_rule_belongs_to_a_test_and_an_answer_it_can_have() -> None:
    derived = {
        "windings_ohm": {"open", "unequal", "equal"},
        "shell_kohm": {"leaking", "clear"},
        "capacitor_uf": {"out", "within", "unsure"},
    }
    known = {test.name: set(test.choices) or derived[test.name] for test in bench_tests()}
    for name, answer in _rules():
        test = name.removesuffix("_ac").removesuffix("_ecm")
        assert test == "all_clear" or answer in known[test]


@pytest.mark.parametrize(
    ("motor", "answers", "part", "motor_health", "module_health"),
    [
        pytest.param(
            ECM, SOUND_ECM | {"smell": "winding"}, "other", "unknown", "unknown", id="ecm smells burnt"
        ),
        pytest.param(PSC, SOUND_PSC | {"smell": "winding"}, "motor", "bad", "unknown", id="psc smells burnt"),
        pytest.param(
            ECM,
            SOUND_ECM | {"ran_until_now": "yes", "windings_ohm": "2.0 2.0 2.5"},
            "motor",
            "bad",
            "unknown",
            id="a damaged winding may have harmed the module",
        ),
        pytest.param(
            PSC, {"capacitor_uf": "2"}, "capacitor", "unknown", "unknown", id="a motor not tested isn't good"
        ),
        pytest.param(ECM, SOUND_ECM | {"smell": "module"}, "module", "unknown", "bad", id="smell confirmed"),
    ],
)
def test_what_the_answers_do_not_prove_stays_unknown(
    motor: Motor, answers: dict[str, str], part: str, motor_health: str, module_health: str
) -> None:
    found = diagnose(motor, answers)
    assert (found.part, found.motor_health, found.module_health) == (part, motor_health, module_health)


def test_a_skipped_test_comes_last_and_keeps_the_answer_open() -> None:
    found = diagnose(ECM, SOUND_ECM | {"line_supply": "skip"})
    assert (found.part, found.settled, found.module_health) == ("", False, "unknown")
    assert found.next_test is not None
    assert found.next_test.name == "line_supply"
    assert found.says.startswith("Not settled, next test: Is the line voltage there")


def test_a_capacitor_of_unknown_print_is_not_all_clear() -> None:
    found = diagnose(Motor(motor_type="psc"), SOUND_PSC)
    assert (found.part, found.settled) == ("", False)
    assert "what it should read isn't known" in found.why[-1]


def test_a_motor_without_a_module_is_told_nothing_of_one() -> None:
    leaking = {"shell_kohm": "5"}
    assert "module" not in " ".join(diagnose(PSC, leaking).why)
    assert "test the module before it moves over" in " ".join(diagnose(ECM, leaking).why)
