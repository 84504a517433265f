"""Many pairs get, to the last digit, what each pair gets by itself."""

import math
import random
from collections.abc import Sequence

import pytest
from motors import catalogue, listing, market, wanted, wild_offer, wild_wanted

from matcher.many import Pile, best_pairs, rank_pile
from matcher.many import columns as columns_of_many
from matcher.many.pairs import blocks
from matcher.many.spread import Spread
from matcher.money.weigh import Weighed, place, weigh
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record
from matcher.settings import Settings
from matcher.verdict import rank_key

pytestmark = pytest.mark.property

CHANGED = Settings.shipped().changed(
    weights={"power": 33.3, "module": 0, "length": 1.7},
    priors={"shaft": 0.33, "rotation": 1},
    condition_chances={"used": 0.61},
    swap_costs={"capacitor": 17.31, "shipping_not_said": 9.99, "isolators": 11.1},
    wise_parts=True,
)


def of_one(old: Wanted, records: Sequence[Record], settings: Settings) -> list[tuple[object, ...]]:
    return [told(weigh(old, record, settings)) for record in records]


def told(one: Weighed) -> tuple[object, ...]:
    judgement = one.judgement
    points = (judgement.score, judgement.score_low, judgement.score_high)
    return judgement.verdict, judgement.minds, *points, one.fit_chance, one.landed_cost


def of_many(old: Wanted, records: Sequence[Record], settings: Settings) -> list[tuple[object, ...]]:
    ranking = rank_pile(old, Pile(records), settings)
    tally = ranking.tally
    return [
        (
            ranking.verdict(at),
            int(tally.minds[at]),
            *(shown(float(points[at])) for points in (tally.score, tally.low, tally.high)),
            float(ranking.chance[at]),
            None if math.isnan(ranking.landed[at]) else float(ranking.landed[at]),
        )
        for at in range(len(records))
    ]


def shown(points: float) -> float | None:
    return None if math.isnan(points) else round(points, 1)


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("settings", [Settings.shipped(), CHANGED], ids=["shipped", "changed"])
def test_offers_without_sense(seed: int, settings: Settings) -> None:
    rng = random.Random(seed)
    share = rng.choice((0.2, 0.5, 0.8, 0.95))
    records = [wild_offer(rng, number, share) for number in range(60)]
    for number in range(3):
        old = wild_wanted(rng, number, rng.choice((0.4, 0.9)))
        assert of_many(old, records, settings) == of_one(old, records, settings)


def test_a_market_of_listings() -> None:
    rng = random.Random(5)
    models = catalogue(rng, 40)
    records = market(rng, models, 500)
    for number in range(3):
        old = wanted(rng, models[number], number)
        assert of_many(old, records, CHANGED) == of_one(old, records, CHANGED)


@pytest.mark.parametrize("seed", range(4))
def test_equal_numbers_and_modules_alone(seed: int) -> None:
    rng = random.Random(100 + seed)
    models = [motor for motor in catalogue(rng, 60) if motor.motor_type in ("ecm_torque", "ecm_airflow")][:4]
    models[1] = models[1].model_copy(update={"module": "module_only"})
    records = [listing(rng, rng.choice(models), number) for number in range(120)]
    old = Wanted(motor=models[0].model_copy(update={"module": None}), site=Site(motor_health="good"))
    answers = of_one(old, records, CHANGED)
    assert of_many(old, records, CHANGED) == answers
    assert any(record.facts.module == "module_only" for record in records)
    assert any(record.facts.part_number == models[0].part_number for record in records)


@pytest.mark.parametrize("top", [1, 7, 40, None])
def test_several_old_motors_give_the_best_of_all_pairs(
    top: int | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("matcher.many.pairs.BLOCK", 64)
    rng = random.Random(9)
    models = catalogue(rng, 12)
    records = market(rng, models, 230)
    olds = [wanted(rng, motor, number) for number, motor in enumerate(models[:6])]
    every = [(old, weigh(old, record)) for old in olds for record in records]
    every.sort(key=lambda pair: place(pair[1]))
    found = list(best_pairs(olds, records, top=top))
    assert [(old.id, one.id, told(one)) for old, one in found] == [
        (old.id, one.id, told(one)) for old, one in every[:top]
    ]


def test_blocks_change_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    rng = random.Random(11)
    records = [wild_offer(rng, number, 0.6) for number in range(150)]
    old = wild_wanted(rng, 0, 0.8)
    whole = of_many(old, records, CHANGED)
    monkeypatch.setattr(columns_of_many, "BLOCK", 37)
    assert len(Pile(records).blocks) == 5
    assert of_many(old, records, CHANGED) == whole


def test_a_spread_ranks_again_with_other_settings_without_judging() -> None:
    rng = random.Random(13)
    records = [wild_offer(rng, number, 0.6) for number in range(80)]
    old = wild_wanted(rng, 0, 0.9)
    pile, spread = Pile(records), Spread([old])
    rank_pile(old, pile, spread=spread)
    again = rank_pile(old, pile, CHANGED, spread=spread)
    fresh = rank_pile(old, pile, CHANGED)
    assert again.order.tolist() == fresh.order.tolist()
    assert again.chance.tolist() == fresh.chance.tolist()


def test_ties_keep_the_order_given() -> None:
    same = [Record(f"r{number}", Offer(price=10, volts="115")) for number in range(250)]
    old = Wanted(motor=Motor(volts="115"))
    found = [one.id for _, one in best_pairs([old], same, top=5)]
    assert found == ["r0", "r1", "r2", "r3", "r4"]


def test_a_contradicted_fact_is_not_a_missing_one() -> None:
    facts = Offer(motor_type="psc", volts="115", price=5)
    plain, torn = Record("a", facts), Record("b", facts, conflicts=(Conflict("turn", (), ()),))
    old = Wanted(motor=Motor(volts="115", turn="cw", seen_from="lead_end", motor_type="psc"))
    assert of_many(old, [plain, torn, plain], CHANGED) == of_one(old, [plain, torn, plain], CHANGED)


def test_nothing_to_rank() -> None:
    old = Wanted(motor=Motor(volts="115"))
    assert list(best_pairs([old], [])) == []
    assert list(best_pairs([old], [], top=3)) == []
    assert list(blocks([])) == []
    assert rank_pile(old, Pile([])).order.tolist() == []


def test_the_key_of_the_order_is_that_of_one_pair() -> None:
    rng = random.Random(17)
    records = [wild_offer(rng, number, 0.5) for number in range(220)]
    old = wild_wanted(rng, 0, 0.8)
    keys = [
        rank_key(one.judgement.verdict, one.judgement.score_low, one.landed_cost)
        for one in rank_pile(old, Pile(records)).best()
    ]
    assert keys == sorted(keys)
