"""A small seeded run of the simulation; the large one stands in tests/bench/RESULTS.md."""

from statistics import fmean

import pytest
from simulation import WAYS, Outcome, bins, simulate


@pytest.fixture(scope="module")
def outcome() -> Outcome:
    return simulate(500, seed=3)


def test_what_is_told_is_met(outcome: Outcome) -> None:
    known = {at: one for at, one in bins(outcome.told).items() if at >= 0}
    for one in known.values():
        assert abs(one.told - one.fitted) < max(0.05, 4 * one.error)
    assert {0, 1, 6, 7, 9} <= known.keys()


def test_what_is_told_as_hopeless_never_fits(outcome: Outcome) -> None:
    assert bins(outcome.told)[-1].fitted == 0
    assert bins(outcome.told)[-1].count > 500


@pytest.mark.parametrize("way", [way for way in WAYS if way != "the plan"])
def test_the_plan_costs_less_than(way: str, outcome: Outcome) -> None:
    assert fmean(outcome.costs["the plan"]) < fmean(outcome.costs[way])
