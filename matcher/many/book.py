"""One check's answers: it is called once for each distinct combination of the facts it declares.

A book groups old motors and candidates by what its check reads of them, said or presumed, and writes down
each answer when it is first needed, so that time grows with the facts that differ and not with the number of
pairs. It outlives the blocks of a pile: what one block made known serves all others.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import astuple, dataclass
from itertools import product
from typing import Any
from weakref import WeakKeyDictionary

import numpy as np
import numpy.typing as npt

from matcher.checks import Check
from matcher.finding import Finding
from matcher.judging.pair import Pair
from matcher.judging.presume import new_side, old_side
from matcher.many.codes import Codes, distinct
from matcher.many.columns import Block, Column
from matcher.money.cost import needs_mask
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.tally import Counted
from matcher.trade.numbers import same_brand, same_code

_MEANS: tuple[bool | None, ...] = (None, False, True)
RELATED = {"same_brand": "brand", "same_program": "program_number", "same_module": "module_number"}
"""Relations that many pairs differ in, with the fact behind each; pairs of equal number are judged singly."""

_NOT_YET = -1


@dataclass(frozen=True, slots=True)
class Entry:
    """What one answer adds: the figures of `Counted` without a weight, and what the swap needs."""

    loss: float = 0.0
    weighs: bool = False
    open: bool = False
    fails: bool = False
    poor: bool = False
    asks: bool = False
    needs: int = 0

    @classmethod
    def of(cls, finding: Finding | None) -> "Entry":
        """Return what a finding adds; nothing where the check does not apply."""
        if finding is None:
            return NOTHING
        one = Counted.of(finding, 0.0)
        return cls(one.loss, one.weighs, one.open, one.fails, one.poor, one.asks, needs_mask([finding]))


NOTHING = Entry()
NO_ENTRY = 0
"""The number of `NOTHING` in every book."""


@dataclass(frozen=True, slots=True)
class OldSide:
    """One old motor made ready to be judged against."""

    motor: Motor
    site: Site
    contradicted: frozenset[str]

    @classmethod
    def of(cls, wanted: Wanted) -> "OldSide":
        """Return the side of one old motor with what its kind implies."""
        return cls(old_side(wanted)[0], wanted.site, wanted.contradicted)


@dataclass(frozen=True, slots=True)
class _NewSide:
    """One candidate of a group, which stands for all of it."""

    offer: Offer
    contradicted: frozenset[str]


class Book:
    """The answers of one check about some old motors and any candidates."""

    def __init__(self, check: Check, old: Sequence[OldSide]) -> None:
        self.check = check
        self.relations = tuple(name for name in check.reads.pair if name in RELATED)
        self._related = tuple(product(_MEANS, repeat=len(self.relations)))
        self._old = Column.of([_old_key(check, one) for one in old])
        self._old_first = [old[place] for place in distinct(self._old.codes).first.tolist()]
        self._known: dict[object, int] = {}
        self._candidates: list[_NewSide] = []
        self._answers = np.empty((len(self._old_first), 0), np.int32)
        self._entries: dict[Entry, int] = {NOTHING: NO_ENTRY}
        self._figures = _figures([NOTHING])
        self._places: WeakKeyDictionary[Block, Codes] = WeakKeyDictionary()

    @property
    def size(self) -> int:
        """How many answers it may come to hold, by what it knows of now."""
        return self._answers.size

    def answers(self, old: int, block: Block, places: Codes, related: dict[str, Codes]) -> Codes:
        """Return the entry of each pair of one old motor and the candidates at `places`."""
        at = self._of(block)[places]
        for name in self.relations:
            at = at * len(_MEANS) + related[name][places]
        row = self._answers[self._old.codes[old]]
        found: Codes = row.take(at)
        if found.min(initial=0) == _NOT_YET:
            self._judge(self._old.codes[old], at[found == _NOT_YET])
            found = row.take(at)
        return found

    def figure(self, name: str, entries: Codes) -> "npt.NDArray[Any]":
        """Return one figure of `Entry` for each of some pairs."""
        return self._figures[name].take(entries)

    def counted(self, weight: float, entries: Codes) -> Counted:
        """Return what the check adds for some pairs."""
        names = ("loss", "weighs", "open", "fails", "poor", "asks")
        return Counted(weight, *(self.figure(name, entries) for name in names))

    def _judge(self, old_group: int, places: Codes) -> None:
        """Write down the answers at some places of one old group."""
        old = self._old_first[old_group]
        before = len(self._entries)
        for at in np.flatnonzero(np.bincount(places)).tolist():
            number, relation = divmod(at, len(self._related))
            related = dict(zip(self.relations, self._related[relation], strict=True))
            entry = Entry.of(self.check.settle(_pair(old, self._candidates[number], related)))
            self._answers[old_group, at] = self._entries.setdefault(entry, len(self._entries))
        if len(self._entries) > before:
            self._figures = _figures(list(self._entries))

    def _of(self, block: Block) -> Codes:
        """Return each candidate's group as this book numbers them, over all blocks."""
        if block not in self._places:
            groups = block.grouped(self.check.name, lambda: _new_columns(self.check, block))
            numbers = [self._number(block.records[place]) for place in groups.first.tolist()]
            self._make_room()
            self._places[block] = np.array(numbers, dtype=np.int32)[groups.of]
        return self._places[block]

    def _number(self, record: Record) -> int:
        side = _NewSide(new_side(record.facts, record.contradicted)[0], record.contradicted)
        key = _new_key(self.check, side)
        if key not in self._known:
            self._known[key] = len(self._candidates)
            self._candidates.append(side)
        return self._known[key]

    def _make_room(self) -> None:
        old_groups, room = self._answers.shape
        needed = len(self._candidates) * len(self._related)
        if needed > room:
            more = np.full((old_groups, max(needed, 2 * room) - room), _NOT_YET, np.int32)
            self._answers = np.concatenate([self._answers, more], axis=1)


def _figures(entries: Sequence[Entry]) -> "dict[str, npt.NDArray[Any]]":
    columns = zip(*map(astuple, entries), strict=True)
    return {name: np.array(column) for name, column in zip(Entry.__slots__, columns, strict=True)}


def _pair(old: OldSide, new: _NewSide, related: Mapping[str, bool | None]) -> Pair:
    return Pair(
        old=old.motor,
        new=new.offer,
        site=old.site,
        contradicted_old=old.contradicted,
        contradicted_new=new.contradicted,
        same_brand=related.get("same_brand"),
        same_program=related.get("same_program"),
        same_module=related.get("same_module"),
    )


def _fields(check: Check) -> Iterator[str]:
    return (field for field in check.reads.new if field not in check.reads.quoted)


def _new_columns(check: Check, block: Block) -> Iterator[Column]:
    """Yield the columns that candidates must be alike in to get one answer."""
    read = {*check.reads.new, *check.settled.new}
    yield block.kinds.narrowed(lambda implied: tuple(one for one in implied if one[0] in read))
    yield block.contradicted.narrowed(lambda names: names & read)
    yield from (block.columns[field] for field in _fields(check))


def _new_key(check: Check, new: _NewSide) -> object:
    """Return what candidates must be alike in, as values that hold beyond one block."""
    facts = tuple(getattr(new.offer, field) for field in _fields(check))
    return facts, new.contradicted & {*check.reads.new, *check.settled.new}


def _old_key(check: Check, old: OldSide) -> object:
    """Return what old motors must be alike in to get one answer."""
    facts = tuple(getattr(old.motor, field) for field in check.reads.old if field not in check.reads.quoted)
    place = tuple(getattr(old.site, field) for field in check.reads.site)
    return facts, place, old.contradicted & {*check.reads.old, *check.settled.old}


def relation_codes(name: str, old: Motor, block: Block) -> Codes:
    """Return each candidate's relation to the old motor: 0 not said, 1 they differ, 2 they are equal."""
    said = getattr(old, RELATED[name])
    if (name, said) not in block.relations:
        column = block.columns[RELATED[name]]
        compare = same_brand if name == "same_brand" else same_code
        related = [_MEANS.index(compare(said, value)) for value in column.values]
        block.relations[name, said] = np.array(related, dtype=np.int8)[column.codes]
    return block.relations[name, said]
