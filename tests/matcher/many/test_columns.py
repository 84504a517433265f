"""The columns cut what the rules look at, and nothing that they look at is left out."""

import random
from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from motors import wild_offer, wild_wanted

from matcher.checks import CHECKS, Check
from matcher.judging.pair import Pair
from matcher.judging.presume import READS_KIND, READS_KIND_SAID, by_kind, prepare
from matcher.many.codes import ROOM, combined
from matcher.many.columns import FIELDS, Block, Column, Pile
from matcher.motor import OFFER_FIELDS, Offer
from matcher.record import Record

SAID_ONLY = tuple(field for fields in READS_KIND_SAID for field in fields)


class Watched(Offer):
    """An offer that keeps which of its facts were looked at."""

    def __getattribute__(self, name: str) -> object:
        if name in OFFER_FIELDS:
            seen.add(name)
        return super().__getattribute__(name)


seen: set[str] = set()


def offers(count: int, seed: int) -> Iterator[Record]:
    rng = random.Random(seed)
    return (wild_offer(rng, number, rng.choice((0.1, 0.4, 0.8))) for number in range(count))


def test_presuming_names_exactly_what_is_looked_at() -> None:
    seen.clear()
    for record in offers(400, 1):
        by_kind(Watched.model_construct(None, **dict(record.facts)), record.contradicted)
    assert seen == {*READS_KIND, *SAID_ONLY}


def test_of_some_facts_only_whether_any_is_said_matters() -> None:
    rng = random.Random(2)
    others = list(offers(300, 3))
    for record in offers(300, 2):
        changes: dict[str, object] = {}
        for fields in READS_KIND_SAID:
            said = [field for field in fields if getattr(record.facts, field) is not None]
            if said:
                # Another value, or another one of the same kind, must do as well.
                field = rng.choice(fields)
                value = next(v for v in (getattr(o.facts, field) for o in others) if v is not None)
                changes |= dict.fromkeys(said) | {field: value}
        other = record.facts.model_copy(update=changes)
        if record.contradicted.isdisjoint(SAID_ONLY):
            assert by_kind(other, frozenset()).keys() == by_kind(record.facts, frozenset()).keys()
            assert by_kind(other, frozenset()) == by_kind(record.facts, frozenset())


def test_every_fact_that_a_check_reads_is_cut() -> None:
    assert {field for check in CHECKS for field in check.reads.new} <= set(FIELDS)


@pytest.mark.parametrize(
    "check", [check for check in CHECKS if check.reads.quoted], ids=lambda check: check.name
)
def test_quoted_facts_never_change_an_answer(check: Check) -> None:
    rng = random.Random(4)
    others = list(offers(200, 5))
    told = 0
    for number, record in enumerate(offers(600, 6)):
        pair = prepare(wild_wanted(rng, number, 0.8), record)
        donor = rng.choice(others).facts
        quoted = {field: getattr(donor, field) for field in check.reads.quoted}
        changed: Pair = replace(
            pair, new=pair.new.model_copy(update=quoted), old=pair.old.model_copy(update=quoted)
        )
        before, after = check.judge(pair), check.judge(changed)
        if before is None or after is None:
            assert before is after
            continue
        told += before != after
        assert replace(before, why="", old="", new="") == replace(after, why="", old="", new="")
    assert told, "the words do quote them"


def test_a_column_says_each_value_once() -> None:
    column = Column.of(["b", None, "a", "b"])
    assert column.values == ("b", None, "a")
    assert column.codes.tolist() == [0, 1, 2, 0]
    assert column.narrowed(lambda value: value == "a").codes.tolist() == [0, 0, 1, 0]
    assert column.told(lambda value: value is None).tolist() == [False, True, False, False]


@pytest.mark.parametrize("distinct", [1, 3, 700, ROOM])
def test_groups_are_those_of_a_dictionary(distinct: int) -> None:
    rng = np.random.default_rng(distinct)
    columns = [Column.of(rng.integers(0, distinct, 500).tolist()) for _ in range(4)]
    groups = combined(columns)
    rows = list(zip(*(np.array(column.values)[column.codes].tolist() for column in columns), strict=True))
    by_hand: dict[object, list[int]] = {}
    for place, row in enumerate(rows):
        by_hand.setdefault(row, []).append(place)
    assert sorted(groups.first.tolist()) == [places[0] for places in by_hand.values()]
    for places in by_hand.values():
        assert len(set(groups.of[places].tolist())) == 1
    assert len(set(groups.of.tolist())) == len(by_hand)


def test_kinds_hold_what_presuming_implies() -> None:
    records = list(offers(300, 7))
    kinds = Block(records).kinds
    for record, code in zip(records, kinds.codes.tolist(), strict=True):
        assert dict(kinds.values[code]) == by_kind(record.facts, record.contradicted)


def test_prices_not_said_are_no_number() -> None:
    block = Block([Record("a", Offer(price=3)), Record("b", Offer(shipping=2))])
    assert block.price.tolist()[0] == 3
    assert np.isnan(block.price[1])
    assert np.isnan(block.shipping[0])


def test_a_pile_of_nothing() -> None:
    assert len(Pile([])) == 0
