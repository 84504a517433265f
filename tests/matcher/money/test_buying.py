"""The plan as it is shown."""

import pytest
from plates import PLATE

from matcher.job import Fallback
from matcher.money.buying import buying
from matcher.money.plan import best_plan
from matcher.money.weigh import ranked
from matcher.motor import Motor, Offer, Wanted
from matcher.record import Record
from matcher.settings import Settings

SETTINGS = Settings.shipped()
OLD = Wanted(motor=Motor(**PLATE))
QUOTE = Fallback(price=1150)


def listing(number: str, **also: object) -> Record:
    said = PLATE | {"price": 60.0, "shipping": 0.0, "condition": "used", "currency": "USD"}
    return Record(
        number, Offer(**{name: value for name, value in (said | also).items() if value is not None})
    )


def plan_of(*records: Record, fallback: Fallback = QUOTE, settings: Settings = SETTINGS):
    return buying(ranked(OLD, records, settings), fallback, settings, {"a": "the Hexmoor"})


@pytest.mark.parametrize(
    ("records", "sentence"),
    [
        ((), "Nothing here is worth trying: pay the quote, 1,150 USD."),
        (
            (listing("a"),),
            # 0.75 x 60 + 0.25 x (60 + 1150)
            "Try the Hexmoor; if it fails, pay the quote. Expected 348 instead of 1,150 USD.",
        ),
        (
            (listing("a"), listing("b", price=50.0)),
            "Try b, then the Hexmoor; if both fail, pay the quote. Expected 137 instead of 1,150 USD.",
        ),
        (
            tuple(listing(name, price=60.0 + at) for at, name in enumerate("bcdef")),
            "Try b, then c, then d, then 2 more; if all fail, pay the quote. Expected 81 instead of 1,150 USD.",
        ),
    ],
    ids=["nothing", "one", "two", "five"],
)
def test_the_sentence(records: tuple[Record, ...], sentence: str) -> None:
    assert plan_of(*records).sentence == sentence


def test_a_sure_candidate_needs_no_fallback() -> None:
    sure = SETTINGS.changed(condition_chances={"used": 1})
    assert plan_of(listing("a"), settings=sure).sentence == (
        "Buy the Hexmoor. Expected 60 instead of 1,150 USD."
    )


def test_steps_carry_the_numbers_of_the_picture() -> None:
    plan = plan_of(listing("a"), listing("b", price=50.0, return_days=30, return_shipping="seller"))
    first, second = plan.steps
    assert (first.id, first.chance, first.landed, first.lost, first.reached) == ("b", 0.75, 50, 0, 1)
    assert first.per_success == 50
    assert second.reached == pytest.approx(0.25)
    assert second.per_success == pytest.approx(60 + 60 * 0.25 / 0.75)
    assert plan.chance_of_fallback == pytest.approx(0.0625)
    assert plan.expected_cost == pytest.approx(0.75 * 50 + 0.25 * (60 + 0.25 * 1150))


@pytest.mark.parametrize(
    ("record", "why"),
    [
        (listing("x", price=None), "It names no price."),
        (listing("x", turn="ccw"), "It has no chance: Turns counter-clockwise"),
        (listing("x", item="part"), "Not a motor"),
        (
            listing("x", currency="EUR"),
            "Its price is in EUR, the quote in USD, and no rate of exchange is given",
        ),
        (listing("x", price=900.0), "It costs 1,200 for each success, no less than the quote of 1,150."),
    ],
    ids=["no price", "won't fit", "a part", "other money", "too dear"],
)
def test_what_is_left_out_says_why(record: Record, why: str) -> None:
    plan = plan_of(listing("a"), record)
    (left,) = plan.left_out
    assert left.id == "x"
    assert left.why.startswith(why)
    assert [step.id for step in plan.steps] == ["a"]


def test_an_exchange_rate_brings_other_money_in() -> None:
    rated = SETTINGS.changed(exchange={"EUR": 1.25, "CAD": 0.75})
    plan = plan_of(listing("x", currency="EUR", price=40.0), settings=rated)
    assert (plan.steps[0].landed, plan.steps[0].lost) == (50, 50)
    canadian = plan_of(
        listing("x", currency="EUR", price=30.0), settings=rated, fallback=Fallback(price=500, currency="CAD")
    )
    assert canadian.steps[0].landed == pytest.approx(50)


def test_the_plan_is_the_best_one() -> None:
    records = [listing(str(n), price=10.0 * n, shaft_diameter_in=0.5 if n % 2 else None) for n in range(1, 9)]
    candidates = ranked(OLD, records)
    best = best_plan([one.gamble for one in candidates if one.gamble], 1150)
    plan = buying(candidates, QUOTE, SETTINGS)
    assert [step.id for step in plan.steps] == [step.id for step in best.steps]
    assert plan.expected_cost == best.expected_cost
    assert {worth.doubt for worth in plan.worths} == {"shaft"}


@pytest.mark.parametrize(
    ("decided", "sentence", "bought", "left_out"),
    [
        (
            {"a": "send_back"},
            "Try b; if it fails, pay the quote. Expected 338 instead of 1,150 USD.",  # 50 + 0.25 x 1150
            "the Hexmoor goes back: it is not in the plan.",
            {"a": "It was bought and goes back."},
        ),
        (
            {"a": "send_back", "b": "send_back"},
            "Nothing here is worth trying: pay the quote, 1,150 USD.",
            "the Hexmoor and b go back: they are not in the plan.",
            {"b": "It was bought and goes back.", "a": "It was bought and goes back."},
        ),
        (
            {"a": "keep"},
            "Nothing is left to try: the Hexmoor was bought and is kept.",
            "",
            {"b": "Another one was bought and is kept.", "a": "It was bought and is kept."},
        ),
    ],
    ids=["one goes back", "both go back", "one is kept"],
)
def test_what_was_bought_and_decided_is_nothing_to_try(
    decided: dict[str, str], sentence: str, bought: str, left_out: dict[str, str]
) -> None:
    candidates = ranked(OLD, [listing("a", turn=None), listing("b", price=50.0)], SETTINGS)
    plan = buying(candidates, QUOTE, SETTINGS, {"a": "the Hexmoor"}, decided)
    assert (plan.sentence, plan.bought) == (sentence, bought)
    assert {one.id: one.why for one in plan.left_out} == left_out
    assert plan.is_over is ("keep" in decided.values())
    assert "a" not in {worth.id for worth in plan.worths}


def test_a_plan_is_no_verdict() -> None:
    open_turn = listing("a", brand="Ossenby", part_number="OB-1", turn=None, seen_from=None)
    plan = plan_of(open_turn, listing("b", price=500.0))
    assert plan.sentence.startswith("Try the Hexmoor (ask first), then b;")


@pytest.mark.parametrize(
    ("records", "sentence"),
    [
        (
            (listing("a", price=None), listing("b", price=None)),
            (
                "No prices in USD are known of what may fit (2): ask for them or enter them, then the plan weighs"
                " them against the quote, 1,150 USD."
            ),
        ),
        (
            (listing("a", currency="EUR"), listing("b", price=None, turn="ccw")),
            (
                "No prices in USD are known of what may fit (1): ask for them or enter them, then the plan weighs"
                " them against the quote, 1,150 USD."
            ),
        ),
        (
            (listing("a", price=1150.0), listing("b", price=None)),
            (
                "Nothing with a price is worth trying: pay the quote, 1,150 USD. No price is known of 1 more that"
                " may fit."
            ),
        ),
        (
            (listing("a", price=1150.0), listing("b", price=None, turn="ccw")),
            "Nothing here is worth trying: pay the quote, 1,150 USD.",
        ),
    ],
    ids=["no prices", "none in this money", "one too dear, one without", "what can't fit needs no price"],
)
def test_a_price_that_is_not_known_is_not_too_dear(records: tuple[Record, ...], sentence: str) -> None:
    assert plan_of(*records).sentence == sentence


def test_a_plan_says_why_it_leaves_the_order_of_the_ranking() -> None:
    plan = plan_of(listing("a", price=200.0), listing("b", turn=None, seen_from=None))
    assert [step.id for step in plan.steps] == ["b", "a"]
    # 60 + 60 x 0.625 / 0.375 and 200 + 200 x 0.25 / 0.75
    assert plan.order == (
        "By fit the Hexmoor ranks before b; the plan goes by what a success costs: 160 (landed 60, 38% likely),"
        " against 267 (landed 200, 75% likely)."
    )


def test_the_best_that_is_not_in_the_plan_is_told() -> None:
    plan = plan_of(listing("a", price=None), listing("b", turn=None, seen_from=None))
    assert plan.order == "the Hexmoor ranks first but is not in the plan. It names no price."


@pytest.mark.parametrize("records", [(), (listing("a"),), (listing("a", price=50.0), listing("b"))])
def test_a_plan_in_the_order_of_the_ranking_says_nothing(records: tuple[Record, ...]) -> None:
    assert plan_of(*records).order == ""


def test_a_plan_names_what_a_chance_takes_as_given() -> None:
    electronic = {"motor_type": "ecm_torque", "brand": "Hexmoor", "speeds": None}
    old = Wanted(motor=Motor(**{k: v for k, v in (PLATE | electronic).items() if v is not None}))
    bare = listing("a", **electronic, module="without")
    plan = buying(ranked(old, [bare], SETTINGS), QUOTE, SETTINGS)
    assert plan.sentence.startswith("Try a (if the old module is good); if it fails")
