"""A check is called once for each distinct combination that occurs, however many pairs there are."""

import random
from collections import Counter
from dataclasses import replace

import numpy as np
import pytest
from motors import catalogue, market, wanted, wild_offer, wild_wanted

from matcher.checks import BY_NAME, CHECKS, Check
from matcher.finding import Finding
from matcher.judging.pair import Pair
from matcher.judging.presume import prepare
from matcher.many.book import NO_ENTRY, Book, Entry, OldSide, relation_codes
from matcher.many.columns import Block
from matcher.motor import Motor, Offer, Wanted
from matcher.record import Record


def counting(check: Check) -> tuple[Check, Counter[object]]:
    calls: Counter[object] = Counter()

    def rule(pair: Pair) -> Finding | None:
        new = tuple(getattr(pair.new, field) for field in check.reads.new if field not in check.reads.quoted)
        old = tuple(getattr(pair.old, field) for field in check.reads.old if field not in check.reads.quoted)
        place = tuple(getattr(pair.site, field) for field in check.reads.site)
        relations = tuple(getattr(pair, name) for name in check.reads.pair)
        against = (pair.contradicted_new & set(check.reads.new), pair.contradicted_old & set(check.reads.old))
        calls[old, new, place, relations, against] += 1
        return check.rule(pair)

    return replace(check, rule=rule), calls


def all_answers(book: Book, olds: list[Wanted], block: Block) -> list[list[int]]:
    found = []
    for number, old in enumerate(olds):
        related = {name: relation_codes(name, old.motor, block) for name in book.relations}
        found.append(book.answers(number, block, np.arange(len(block)), related).tolist())
    return found


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_no_combination_is_judged_twice(check: Check) -> None:
    rng = random.Random(21)
    models = catalogue(rng, 12)
    records = market(rng, models, 300)
    olds = [wanted(rng, motor, number) for number, motor in enumerate(models[:5])] * 2
    counted, calls = counting(check)
    book = Book(counted, [OldSide.of(old) for old in olds])
    first, second = Block(records[:150]), Block(records[150:], 150)
    answers = [all_answers(book, olds, block) for block in (first, second)]
    once = sum(calls.values())
    assert set(calls.values()) == {1}
    assert once < len(olds) * len(records) / 5
    assert [all_answers(book, olds, block) for block in (first, second)] == answers
    assert sum(calls.values()) == once, "what is written down is not asked again"


def test_only_what_occurs_is_judged() -> None:
    counted, calls = counting(BY_NAME["module"])
    old = Wanted(motor=Motor(motor_type="ecm", brand="Hexmoor", program_number="P1", module_number="M1"))
    record = Record("a", Offer(motor_type="ecm", brand="hexmoor", program_number="P2", module="with"))
    all_answers(Book(counted, [OldSide.of(old)]), [old], Block([record] * 50))
    assert sum(calls.values()) == 1


def test_where_a_check_does_not_apply_nothing_is_added() -> None:
    old = Wanted(motor=Motor(motor_type="psc"))
    book = Book(BY_NAME["module"], [OldSide.of(old)])
    assert all_answers(book, [old], Block([Record("a", Offer(motor_type="psc"))])) == [[NO_ENTRY]]


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        pytest.param(None, "Hexmoor", 0, id="old not said"),
        pytest.param("Hexmoor", None, 0, id="new not said"),
        pytest.param("Hexmoor", "Velmarrow", 1, id="differ"),
        pytest.param("Hexmoor", " HEXMOOR", 2, id="equal"),
    ],
)
def test_relations(old: str | None, new: str | None, code: int) -> None:
    block = Block([Record("a", Offer(brand=new))])
    assert relation_codes("same_brand", Motor(brand=old), block).tolist() == [code]


def test_words_on_what_was_presumed_change_no_figure() -> None:
    rng = random.Random(23)
    marked = 0
    for number in range(200):
        pair = prepare(wild_wanted(rng, number, 0.6), wild_offer(rng, number, 0.5))
        for check in CHECKS:
            judged, settled = check.judge(pair), check.settle(pair)
            marked += judged != settled
            assert Entry.of(judged) == Entry.of(settled)
    assert marked
