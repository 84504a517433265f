"""What an answer is worth, against a count of all worlds and all orders."""

import random
from collections.abc import Iterator
from itertools import permutations

import pytest

from matcher.judging.told import Told
from matcher.money.plan import Gamble, best_plan
from matcher.money.questions import MOST_FIRST, Answered, Worth, message_to_seller, to_ask, worths
from matcher.money.weigh import Weighed, ranked, weigh
from matcher.motor import Motor, Offer, Wanted
from matcher.record import Record
from matcher.settings import Settings

SETTINGS = Settings.shipped()


def cheapest(gambles: list[Gamble], fallback: float) -> float:
    """Return the mean cost of the best of all orders and stopping points, in plain floats."""
    best = fallback
    for length in range(1, len(gambles) + 1):
        for order in permutations(gambles, length):
            cost, looking = 0.0, 1.0
            for step in order:
                cost += looking * (step.chance * step.landed + (1 - step.chance) * step.lost)
                looking *= 1 - step.chance
            best = min(best, cost + looking * fallback)
    return best


def by_force(gambles: list[Gamble], asked: int, prior: float, fallback: float) -> float:
    """Let the answer be good or bad, find the best plan by enumeration in each world, and compare."""
    one = gambles[asked]
    good = [*gambles[:asked], Gamble(one.id, one.chance / prior, one.landed, one.lost), *gambles[asked + 1 :]]
    bad = [gamble for gamble in gambles if gamble is not one]
    return (
        cheapest(gambles, fallback) - prior * cheapest(good, fallback) - (1 - prior) * cheapest(bad, fallback)
    )


@pytest.mark.parametrize("seed", range(60))
def test_the_worth_of_an_answer_is_that_of_conditioning(seed: int) -> None:
    rng = random.Random(seed)
    size = rng.randint(1, 4)
    prior = rng.choice((0.1, 0.35, 0.5, 0.7, 0.92))
    gambles = [
        Gamble(str(n), prior * rng.random(), round(rng.uniform(5, 400), 2), round(rng.uniform(0, 200), 2))
        for n in range(size)
    ]
    fallback, asked = round(rng.uniform(50, 900), 2), rng.randrange(size)
    worth = Answered(gambles, fallback).worth(gambles[asked], prior)
    assert worth == pytest.approx(by_force(gambles, asked, prior, fallback), abs=1e-9)
    assert worth >= 0


@pytest.mark.parametrize(
    ("gambles", "fallback"),
    [
        pytest.param([Gamble("a", 0.4, 1000, 1000)], 500, id="dearer than the fallback whatever the answer"),
        pytest.param([Gamble("a", 0.4, 100, 0)], 500, id="nothing is lost by trying"),
    ],
)
def test_answers_that_change_nothing_are_worth_nothing(gambles: list[Gamble], fallback: float) -> None:
    assert Answered(gambles, fallback).worth(gambles[0], 0.5) == pytest.approx(0, abs=1e-9)


OLD = Wanted(
    motor=Motor(
        motor_type="psc",
        volts="115",
        phase=1,
        hertz="60",
        power_hp=0.5,
        rpm=(1075,),
        turn="cw",
        seen_from="lead_end",
        shaft_diameter_in=0.5,
        mounting=("band",),
    )
)


def listing(number: str, **also: object) -> Record:
    said = OLD.motor.model_dump(exclude_none=True) | {"price": 60.0, "shipping": 0.0, "condition": "used"}
    return Record(
        number, Offer(**{name: value for name, value in (said | also).items() if value is not None})
    )


def three() -> list[Weighed]:
    records = [
        listing("whole"),
        listing("turn", turn=None, seen_from=None, price=30.0),
        listing("two", turn=None, seen_from=None, shaft_diameter_in=None, price=20.0, brand="Hexmoor"),
    ]
    return ranked(OLD, records)


def test_every_open_doubt_has_its_worth_and_its_questions() -> None:
    found = worths(three(), 500, SETTINGS)
    assert {(worth.id, worth.doubt) for worth in found} == {
        ("turn", "rotation"),
        ("two", "rotation"),
        ("two", "shaft"),
    }
    assert [worth.worth for worth in found] == sorted((worth.worth for worth in found), reverse=True)
    assert all(worth.questions and all(q.check == worth.doubt for q in worth.questions) for worth in found)


def test_worths_agree_with_the_plan_they_lower() -> None:
    candidates = three()
    gambles = [one.gamble for one in candidates if one.gamble]
    found = worths(candidates, 500, SETTINGS)
    assert len(found) == 3
    for worth in found:
        at = [gamble.id for gamble in gambles].index(worth.id)
        prior = SETTINGS.priors[worth.doubt]
        assert worth.worth == pytest.approx(by_force(gambles, at, prior, 500), abs=1e-9)
        assert worth.worth < best_plan(gambles, 500).expected_cost


def test_a_candidate_in_money_without_a_rate_has_no_worth() -> None:
    candidates = [weigh(OLD, listing("turn", turn=None, seen_from=None, currency="EUR"))]
    assert worths(candidates, 500, SETTINGS, "USD") == []
    rated = SETTINGS.changed(exchange={"EUR": 2.0})
    (in_euros,) = worths(candidates, 500, rated, "EUR")
    (in_dollars,) = worths(candidates, 1000, rated, "USD")
    assert in_dollars.worth == pytest.approx(2 * in_euros.worth)


def lines(candidate: Weighed, found: list[Worth]) -> Iterator[str]:
    return iter(message_to_seller(candidate, found).splitlines())


def test_the_message_asks_the_dearest_first_in_plain_polite_words() -> None:
    candidates = three()
    two = next(one for one in candidates if one.id == "two")
    found = worths(candidates, 500, SETTINGS)
    dearest = next(worth for worth in found if worth.id == "two")
    said = list(lines(two, found))
    assert said[0] == "Hello, I'm interested in your Hexmoor as a replacement for one that failed."
    assert said[3] == f"1. {dearest.questions[0].text}"
    assert said[-1] == "Thank you very much."
    asked = [line for line in said if line[:1].isdigit()]
    assert len(asked) == len({line.partition(" ")[2] for line in asked})


def test_a_message_asks_the_few_questions_that_matter_first() -> None:
    bare = Offer.model_validate({"power_hp": 0.5, "price": 30.0})
    weighed = weigh(OLD, Record("bare", bare))
    asking = to_ask(weighed)
    asks = {finding.check for finding in weighed.judgement.findings if finding.asks}
    assert len(asking.first) == MOST_FIRST
    assert {one.check for one in asking.first} <= asks
    short, whole = message_to_seller(weighed), message_to_seller(weighed, whole=True)
    assert f"{MOST_FIRST}. " in short
    assert f"{MOST_FIRST + 1}. " not in short
    assert all(one.text in whole for one in (*asking.first, *asking.more))
    assert all(one.whom == "seller" for one in (*asking.first, *asking.more))


def test_what_the_seller_cannot_tell_is_not_asked() -> None:
    weighed = weigh(OLD, Record("bare", Offer.model_validate({"power_hp": 0.5, "price": 30.0})))
    told = Told(frozenset({"turn", "seen_from"}), plate_unread=True)
    said = message_to_seller(weighed, (), told, whole=True)
    assert "What does the plate say" not in said
    assert "Which way does the shaft turn" not in said
    assert "Which supply did it run on" in said


def test_nothing_open_needs_no_message() -> None:
    old = Wanted(motor=Motor(motor_type="psc"))
    weighed = weigh(old, Record("a", Offer(item="part")))
    assert message_to_seller(weighed) == ""


def test_a_seller_is_never_asked_about_the_old_motor() -> None:
    old = Wanted(motor=Motor.model_validate({k: v for k, v in OLD.motor.said().items() if k != "mounting"}))
    weighed = weigh(old, listing("turn", turn=None, seen_from=None))
    assert any(question.field == "old.mounting" for question in weighed.judgement.questions)
    said = message_to_seller(weighed)
    assert "old" not in said
    assert "Which way does the shaft turn" in said
