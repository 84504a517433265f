"""Which lots serve which wanted plates: against an enumeration of all assignments."""

import random
from collections.abc import Sequence
from itertools import product

import pytest
from motors import catalogue, market, wanted
from plates import PLATE

from matcher.many.lots import Lots, expected_margin, lots_for
from matcher.money.weigh import weigh
from matcher.motor import Motor, Offer, Wanted
from matcher.record import Record
from matcher.settings import Settings

SETTINGS = Settings.shipped()


def plate(number: str, pays: float | None = 200, **also: object) -> Wanted:
    return Wanted(motor=Motor(**(PLATE | also)), id=number, pays=pays)


def lot(number: str, price: float, **also: object) -> Record:
    said = PLATE | {"price": price, "shipping": 0.0, "condition": "used", "currency": "USD"} | also
    return Record(number, Offer(**said))


def pairs(lots: Lots) -> list[tuple[str, str]]:
    return sorted((one.wanted.id, one.weighed.id) for one in lots.served)


def by_force(olds: Sequence[Wanted], records: Sequence[Record]) -> float:
    """Try every way of giving each plate a lot or none, no lot more often than it has pieces."""
    margins = {}
    for i, old in enumerate(olds):
        for j, record in enumerate(records):
            one = weigh(old, record)
            if one.cost and one.fit_chance and record.facts.currency in (None, "USD"):
                margins[i, j] = expected_margin(one.fit_chance, old.pays or 0, one.cost.landed, one.cost.lost)
    best = 0.0
    for choice in product(range(-1, len(records)), repeat=len(olds)):
        used = [j for j in choice if j >= 0]
        if all(used.count(j) <= (1 if (q := records[j].facts.quantity) is None else q) for j in used):
            best = max(best, sum(margins.get((i, j), -1e9) for i, j in enumerate(choice) if j >= 0))
    return best


@pytest.mark.parametrize("seed", range(10))
def test_no_assignment_earns_more(seed: int) -> None:
    rng = random.Random(seed)
    models = catalogue(rng, 2)
    olds = [
        wanted(rng, rng.choice(models), n).model_copy(update={"pays": round(rng.uniform(80, 400))})
        for n in range(3)
    ]
    records = market(rng, models, 9)
    lots = lots_for(olds, records)
    assert lots.margin == pytest.approx(by_force(olds, records))
    for one in lots.served:
        assert one.weighed.cost is not None
        landed, lost = one.weighed.cost.landed, one.weighed.cost.lost
        assert one.margin == pytest.approx(
            expected_margin(one.weighed.fit_chance, one.wanted.pays or 0, landed, lost)
        )


def test_the_margin_by_hand() -> None:
    # A used part works in 3 of 4 cases: 0.75 x (200 - 60) - 0.25 x 60.
    lots = lots_for([plate("a")], [lot("x", 60)])
    assert lots.margin == pytest.approx(90)


@pytest.mark.parametrize(
    ("quantity", "served"),
    [(None, 1), (0, 0), (1, 1), (2, 2), (9, 3)],
    ids=["not said: one", "sold out", "one", "two", "plenty"],
)
def test_a_lot_serves_as_many_plates_as_it_has_pieces(quantity: int | None, served: int) -> None:
    lots = lots_for([plate(name) for name in "abc"], [lot("x", 60, quantity=quantity)])
    assert len(lots.served) == served
    assert [wanted.id for wanted, _ in lots.unserved] == list("abc")[served:]


def test_who_pays_more_is_served_first() -> None:
    lots = lots_for([plate("low", 150), plate("high", 300)], [lot("x", 60)])
    assert pairs(lots) == [("high", "x")]


def test_a_dear_pair_gives_way_to_a_dearer_whole() -> None:
    # The only lot that fits b also fits a; a can take the other one.
    olds = [plate("a"), plate("b", turn="ccw")]
    records = [lot("either", 50, turn="either"), lot("cw", 60)]
    assert pairs(lots_for(olds, records)) == [("a", "cw"), ("b", "either")]


@pytest.mark.parametrize(
    ("old", "record", "why"),
    [
        (plate("a", pays=None), lot("x", 60), "What its owner would pay isn't said"),
        (plate("a", pays=60), lot("x", 60), "No lot that is left earns anything"),
        (plate("a"), lot("x", 60, turn="ccw"), "No lot that is left earns anything"),
        (plate("a"), lot("x", 60, currency="EUR"), "No lot that is left earns anything"),
    ],
    ids=["pays nothing said", "no margin", "won't fit", "no rate"],
)
def test_who_is_not_served_and_why(old: Wanted, record: Record, why: str) -> None:
    lots = lots_for([old], [record])
    assert lots.served == ()
    assert lots.unserved[0][1].startswith(why)


def test_other_money_takes_part_at_the_rate_of_the_settings() -> None:
    rated = SETTINGS.changed(exchange={"EUR": 2.0})
    lots = lots_for([plate("a")], [lot("x", 30, currency="EUR")], rated)
    assert lots.margin == pytest.approx(90)


def test_blocks_change_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    rng = random.Random(3)
    models = catalogue(rng, 3)
    olds = [wanted(rng, models[n % 3], n).model_copy(update={"pays": 250.0}) for n in range(4)]
    records = market(rng, models, 120)
    whole = lots_for(olds, records)
    monkeypatch.setattr("matcher.many.pairs.BLOCK", 17)
    assert lots_for(olds, records).margin == pytest.approx(whole.margin)
