from collections.abc import Callable

import pytest

Told = Callable[..., str]
KINDS = [
    "psc",
    "split_phase",
    "capacitor_start",
    "shaded_pole",
    "ecm_torque",
    "ecm_airflow",
    "ecm",
    "polyphase",
]

# Every cell, stated here on its own: row = the old motor, column = the new one, in the order of KINDS.
TABLE = {
    "psc": ["same", "ok", "ok", "loss 0.4", "loss 0.5", "fail", "unknown", "fail"],
    "split_phase": ["loss 0.4", "same", "ok", "loss 0.8 poor", "loss 0.5", "fail", "unknown", "fail"],
    "capacitor_start": [
        "loss 0.8 poor",
        "loss 0.4",
        "same",
        "loss 0.8 poor",
        "loss 0.5",
        "fail",
        "unknown",
        "fail",
    ],
    "shaded_pole": ["ok", "ok", "ok", "same", "loss 0.5", "fail", "unknown", "fail"],
    "ecm_torque": ["fail", "fail", "fail", "fail", "same", "fail", "unknown", "fail"],
    "ecm_airflow": ["fail", "fail", "fail", "fail", "fail", "unknown", "unknown", "fail"],
    "ecm": ["fail", "fail", "fail", "fail", "unknown", "unknown", "unknown", "fail"],
    "polyphase": ["fail", "fail", "fail", "fail", "fail", "fail", "fail", "same"],
}
CELLS = [(old, new, cell) for old, row in TABLE.items() for new, cell in zip(KINDS, row, strict=True)]
NUMBER = {"brand": "Orvandel", "part_number": "OV 6618"}


def kind(motor_type: str | None, **facts: object) -> dict[str, object]:
    return facts if motor_type is None else {"motor_type": motor_type, **facts}


@pytest.mark.parametrize(("old", "new", "expected"), CELLS)
def test_every_cell(told: Told, old: str, new: str, expected: str) -> None:
    assert told("drive", kind(old), kind(new)) == expected


AIRFLOW = [
    ({"control_signal": "serial"}, {"control_signal": "serial"}, "same"),
    ({"control_signal": "serial"}, {"control_signal": "pwm"}, "fail"),
    ({"control_signal": "serial", "plug_pins": (16,)}, {"control_signal": "pwm", "plug_pins": (16,)}, "fail"),
    ({"control_signal": "serial", "plug_pins": (4, 16)}, {"plug_pins": (4, 16)}, "ok"),
    ({"plug_pins": (4, 16)}, {"plug_pins": (16, 4)}, "ok"),
    ({"plug_pins": (4, 16)}, {"plug_pins": (16,)}, "unknown"),
    ({"control_signal": "serial"}, {"plug_pins": (16,)}, "unknown"),
    ({"control_signal": "serial"}, {}, "unknown"),
    ({"plug_pins": (16,)}, {}, "unknown"),
]


@pytest.mark.parametrize(("old", "new", "expected"), AIRFLOW)
def test_airflow_to_airflow(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("drive", kind("ecm_airflow", **old), kind("ecm_airflow", **new)) == expected


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("psc", "psc", "same"),
        ("psc", None, "same"),
        (None, None, "same"),
        (None, "ecm_airflow", "same"),
        ("ecm_airflow", "ecm_airflow", "same"),
        ("ecm_airflow", "ecm", "same"),
        ("ecm", "ecm_torque", "same"),
        ("ecm_torque", "ecm_airflow", "fail"),
        ("psc", "shaded_pole", "loss 0.4"),
        ("psc", "ecm", "same"),
        ("psc", "polyphase", "fail"),
    ],
)
def test_equal_numbers(told: Told, old: str | None, new: str | None, expected: str) -> None:
    assert told("drive", kind(old, **NUMBER), kind(new, **NUMBER)) == expected


def test_equal_numbers_undo_a_differing_signal(told: Told) -> None:
    old = kind("ecm_airflow", control_signal="serial", **NUMBER)
    assert told("drive", old, kind("ecm_airflow", control_signal="pwm", **NUMBER)) == "same"


WITHOUT = {"module": "without", "brand": "Fennadro"}


@pytest.mark.parametrize(
    ("old", "new", "change", "expected"),
    [
        ("ecm", "ecm", {}, "ok"),
        ("ecm_airflow", "ecm", {}, "ok"),
        ("ecm_torque", "ecm", {}, "ok"),
        ("ecm_airflow", "ecm_airflow", {}, "ok"),
        ("ecm_airflow", "ecm_airflow", {"control_signal": "pwm"}, "ok"),
        ("ecm_airflow", "ecm_airflow", {"control_signal": "serial"}, "same"),
        ("ecm_torque", "ecm_torque", {}, "same"),
        ("ecm_torque", "ecm_airflow", {}, "fail"),
        ("ecm_airflow", "ecm_torque", {}, "fail"),
        ("psc", "ecm", {}, "unknown"),
        ("ecm", "ecm", {"module": "with"}, "unknown"),
        ("ecm", "ecm", {"module": None}, "unknown"),
        ("ecm", "ecm", {"module": "module_only"}, "unknown"),
        ("ecm", "ecm", {"brand": "Grobisk"}, "unknown"),
        ("ecm", "ecm", {"brand": None}, "unknown"),
        ("ecm_airflow", "ecm_airflow", {"control_signal": "pwm", "brand": "Grobisk"}, "fail"),
    ],
)
def test_the_module_moves_over(told: Told, old, new, change, expected) -> None:  # type: ignore[no-untyped-def]
    was = kind(old, brand="fennadro", control_signal="serial")
    facts = {name: value for name, value in (WITHOUT | change).items() if value is not None}
    assert told("drive", was, kind(new, **facts), {"module_health": "good"}) == expected
    worse = {"ok": "unknown"}.get(expected, expected)
    if change == {"control_signal": "pwm"}:
        worse = "fail"
    for site in ({}, {"module_health": "unknown"}, {"module_health": "bad"}):
        assert told("drive", was, kind(new, **facts), site) == worse


@pytest.mark.parametrize("other", KINDS)
def test_type_missing_on_one_side(told: Told, other: str) -> None:
    expected = "unknown" if other in ("ecm", "ecm_torque", "ecm_airflow", "polyphase") else "ok"
    assert told("drive", kind(other), {}) == expected
    assert told("drive", {}, kind(other)) == expected


def test_missing_on_both_is_presumed_line_voltage(told: Told, look) -> None:  # type: ignore[no-untyped-def]
    assert told("drive", {}, {}) == "ok"
    assert look("drive", {}, {}).presumed == ("motor_type",)


@pytest.mark.parametrize(
    "facts",
    [
        {"module": "with"},
        {"module_number": "NB-3051"},
        {"program_number": "R20774"},
        {"rpm_range": (500, 1250)},
        {"control_signal": "pwm"},
        {"plug_pins": (4, 16)},
    ],
)
def test_an_unsaid_type_with_signs_of_a_module_is_an_ecm(told: Told, facts: dict[str, object]) -> None:
    assert told("drive", kind("psc"), facts) == "unknown"
    assert told("drive", facts, kind("psc")) == "fail"
    assert told("drive", kind("psc"), facts, twice_new=("motor_type",)) == "unknown"


def test_contradictions(told: Told) -> None:
    assert told("drive", kind("psc"), {}, twice_new=("motor_type",)) == "unknown"
    assert told("drive", {}, {}, twice_old=("motor_type",)) == "unknown"
    assert told("drive", kind("psc", **NUMBER), NUMBER, twice_new=("motor_type",)) == "unknown"
    old = kind("ecm_airflow", control_signal="serial", plug_pins=(16,), brand="Fennadro")
    new = kind("ecm_airflow", plug_pins=(16,), brand="Fennadro")
    assert told("drive", old, new) == "ok"
    assert told("drive", old, new, twice_new=("control_signal",)) == "unknown"
