from collections.abc import Callable

import pytest

Told = Callable[..., str]


@pytest.mark.parametrize(
    ("old", "new", "used", "expected"),
    [
        (3, 3, None, "same"),
        (2, 3, None, "ok"),
        (3, 2, None, "loss 0.4"),
        (3, 1, None, "loss 0.8"),
        (4, 1, None, "loss 1"),
        (5, 1, None, "loss 1"),
        (3, 1, 1, "same"),
        (1, 1, 2, "loss 0.4"),
        (3, 2, 2, "same"),
        (3, 4, 2, "ok"),
        (None, 2, 2, "same"),
        (3, None, None, "unknown"),
        (1, None, None, "unknown"),
        (None, None, 2, "unknown"),
        (None, 3, None, "none"),
        (None, None, None, "none"),
    ],
)
def test_taps(told: Told, old, new, used, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(name: str, value: int | None) -> dict[str, int]:
        return {} if value is None else {name: value}

    given = fact("speeds", old), fact("speeds", new), fact("taps_in_use", used)
    assert told("taps", *given) == expected
    airflow = {"motor_type": "ecm_airflow"}
    assert told("taps", given[0] | airflow, given[1], given[2]) == "none"
    assert told("taps", given[0], given[1] | airflow, given[2]) == "none"


def test_a_multi_speed_motor_of_unsaid_number(told: Told) -> None:
    assert told("taps", {"rpm_range": (300, 1300)}, {"speeds": 3}) == "unknown"
    assert told("taps", {"motor_type": "ecm_torque"}, {"speeds": 5}) == "unknown"
    assert told("taps", {"motor_type": "ecm"}, {"speeds": 5}) == "none"
    assert told("taps", {"rpm": (1075, 950, 825)}, {"speeds": 3}) == "none"
    assert told("taps", {"speeds": 3}, {"rpm": (1075, 950, 825)}) == "unknown"
    assert told("taps", {}, {"speeds": 3}, twice_old=("speeds",)) == "unknown"


def test_a_loss_by_the_plate_s_speeds_alone_says_so_and_asks_at_home(look) -> None:  # type: ignore[no-untyped-def]
    guessed = look("taps", {"speeds": 4}, {"speeds": 3})
    assert guessed.why == (
        "It has 3 speeds, the old one 4: 1 can't be wired, should all be in use. Count the speed wires that"
        " are connected."
    )
    assert guessed.questions == ("site.taps_in_use",)
    counted = look("taps", {"speeds": 4}, {"speeds": 3}, {"taps_in_use": 4})
    assert counted.why == "It has 3 speeds, 4 in use: 1 can't be wired."
    assert counted.questions == ()
