from collections.abc import Callable

import pytest

from matcher.checks.power import step

Told = Callable[..., str]


@pytest.mark.parametrize(
    ("old", "new", "factor", "expected"),
    [
        (0.5, 0.5, None, "same"),
        (0.5, 0.525, None, "same"),
        (0.5, 0.475, None, "same"),
        (0.3333, 0.3333333, None, "same"),
        (0.5, 0.53, None, "ok"),  # as the next step up, 3/4
        (0.5, 0.75, None, "ok"),
        (0.5, 0.78, None, "ok"),  # within 5 % of 3/4
        (0.5, 0.79, None, "loss 0.3"),  # counts as 1
        (0.5, 1.0, None, "loss 0.3"),
        (0.5, 1.5, None, "loss 0.6"),
        (0.5, 5.0, None, "loss 0.6"),
        (0.05, 0.0667, None, "ok"),
        (0.05, 0.0833, None, "loss 0.3"),
        (2.0, 3.0, None, "ok"),
        (3.0, 5.0, None, "ok"),
        (2.0, 5.0, None, "loss 0.3"),
        (0.45, 0.5, None, "ok"),  # both count as 1/2
        (0.3333, 0.25, 1.35, "loss 0.4"),
        (0.25, 0.2, 1.25, "loss 0.4"),
        (0.25, 0.2, 1.24, "loss 1 poor"),
        (0.5, 0.3333, 1.15, "loss 1 poor"),
        (0.5, 0.474, None, "loss 1 poor"),
        (0.5, 0.474, 1.0, "loss 1 poor"),
        (0.5, 0.474, 1.15, "loss 0.4"),
        (0.2, 0.125, 1.0, "loss 1 poor"),
        (0.5, None, None, "unknown"),
        (None, 0.5, None, "unknown"),
        (None, None, None, "unknown"),
    ],
)
def test_power(told: Told, old, new, factor, expected) -> None:  # type: ignore[no-untyped-def]
    given = {"power_hp": new, "service_factor": factor}
    known = {name: value for name, value in given.items() if value is not None}
    assert told("power", {"power_hp": old} if old else {}, known) == expected


def test_unknown_power_asks(look) -> None:  # type: ignore[no-untyped-def]
    assert look("power", {"power_hp": 0.5}, {}).asks
    assert not look("power", {"power_hp": 0.5}, {"power_hp": 0.5}).asks
    assert not look("power", {}, {}).hard


def test_a_contradicted_service_factor_matters_to_a_smaller_motor_alone(told: Told) -> None:
    twice = {"twice_new": ("service_factor",)}
    assert told("power", {"power_hp": 0.3333}, {"power_hp": 0.25}, **twice) == "unknown"
    assert told("power", {"power_hp": 0.3333}, {"power_hp": 0.3333}, **twice) == "same"


@pytest.mark.parametrize(
    ("power", "place"), [(0.01, 0), (0.05, 0), (0.0526, 1), (0.5, 9), (1.0, 11), (5.0, 15)]
)
def test_steps(power: float, place: int) -> None:
    assert step(power) == place
