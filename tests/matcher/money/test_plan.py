"""The buying plan against an enumeration of every order and every stopping point."""

import random
from fractions import Fraction
from itertools import permutations

import pytest

from matcher.money.plan import Gamble, best_plan, expected_cost, price_per_success


def cheapest_by_force(gambles: list[Gamble], fallback: float) -> Fraction:
    """Walk all orders; every prefix of an order is a stopping point, so each prefix is priced on the way."""
    best = Fraction(fallback)
    for length in range(1, len(gambles) + 1):
        for order in permutations(gambles, length):
            best = min(best, expected_cost(order, fallback))
    return best


def random_gambles(rng: random.Random, most: int) -> list[Gamble]:
    return [
        Gamble(
            str(number),
            chance=rng.choice([0.0, 1.0, rng.random(), rng.randint(0, 10) / 10]),
            landed=round(rng.uniform(0, 400), 2),
            lost=round(rng.uniform(0, 150), 2),
        )
        for number in range(rng.randint(0, most))
    ]


@pytest.mark.parametrize("seed", range(20))
def test_no_order_and_no_stopping_point_is_cheaper(seed: int) -> None:
    rng = random.Random(seed)
    for _ in range(120):
        gambles = random_gambles(rng, 5)
        fallback = round(rng.uniform(0, 900), 2)
        plan = best_plan(gambles, fallback)
        assert expected_cost(plan.steps, fallback) == cheapest_by_force(gambles, fallback)


def test_seven_candidates_equal_the_enumeration_too() -> None:
    rng = random.Random(7)
    for _ in range(3):
        gambles = [Gamble(str(n), rng.random(), rng.uniform(20, 300), rng.uniform(0, 90)) for n in range(7)]
        assert expected_cost(best_plan(gambles, 700).steps, 700) == cheapest_by_force(gambles, 700)


@pytest.mark.parametrize(
    ("gambles", "fallback", "order"),
    [
        pytest.param([], 500, [], id="nothing to try"),
        pytest.param(
            [Gamble("a", 0.5, 100, 100)], 200, [], id="z equals the fallback: paying at once is as good"
        ),
        pytest.param([Gamble("a", 0.5, 100, 99.99)], 200, ["a"], id="z just below the fallback"),
        pytest.param([Gamble("a", 0.0, 1, 0)], 500, [], id="no chance, no place"),
        pytest.param(
            [Gamble("a", 1.0, 90, 90), Gamble("b", 0.5, 40, 40)], 500, ["b", "a"], id="cheap gamble first"
        ),
        pytest.param(
            [Gamble("b", 0.3, 60, 60), Gamble("a", 1.0, 90, 90)], 500, ["a", "b"], id="after a sure thing"
        ),
    ],
)
def test_orders_a_person_can_check(gambles: list[Gamble], fallback: float, order: list[str]) -> None:
    assert [step.id for step in best_plan(gambles, fallback).steps] == order


def test_the_mean_of_a_plan_by_hand() -> None:
    # 0.5 x 40 + 0.5 x 30 + 0.5 x 0.5 ... : try b (half fits at 40, else 30 lost), then the quote of 300.
    plan = best_plan([Gamble("b", 0.5, 40, 30)], 300)
    assert plan.expected_cost == pytest.approx(0.5 * 40 + 0.5 * 30 + 0.5 * 300)
    assert plan.chance_of_fallback == pytest.approx(0.5)


def test_a_hopeless_candidate_has_no_price_per_success() -> None:
    with pytest.raises(ValueError, match="without any chance"):
        price_per_success(Gamble("a", 0.0, 10, 10))
