"""One check over many pairs: it is called once for each distinct combination of the facts it declares.

`New` groups the candidates and `Old` the old motors by what the check reads on their side; `Answers` holds
the check's answer for each old group, new group and relation, as small arrays to be spread back over pairs.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from matcher.checks import Check
from matcher.finding import Finding
from matcher.many.columns import Codes, Column, Pile, combined, distinct
from matcher.money.cost import needs_mask
from matcher.motor import Motor, Wanted
from matcher.numbers import same_brand, same_code
from matcher.pair import Pair
from matcher.presume import new_side, old_side
from matcher.tally import Counted

Flags = npt.NDArray[np.bool_]
_MEANS: tuple[bool | None, ...] = (None, False, True)
RELATED = {"same_brand": "brand", "same_program": "program_number", "same_module": "module_number"}
"""Relations that many pairs differ in, with the fact behind each; pairs of equal number are judged singly."""


@dataclass(frozen=True, slots=True)
class New:
    """The candidates' side of one check."""

    first: Codes
    """Place of one candidate of each group."""
    group: Codes
    """Each candidate's group."""


def group_new(check: Check, pile: Pile) -> New:
    """Group a pile by what a check reads of it."""
    fields = [field for field in check.reads.new if field not in check.reads.quoted]
    read = set(check.reads.new) | set(check.settled.new)
    columns = [pile.column(field) for field in fields]
    columns.append(_narrowed(pile.kinds, lambda implied: tuple(one for one in implied if one[0] in read)))
    columns.append(_narrowed(pile.contradicted, lambda names: tuple(sorted(names & read))))
    columns.append(_narrowed(pile.contradicted, bool))
    return New(*distinct(combined(columns)))


def _narrowed(column: Column, part: Callable[[Any], object]) -> Column:
    """Return a column of what matters of each value alone."""
    narrow = Column.of([part(value) for value in column.values])
    return Column(narrow.values, narrow.codes[column.codes])


@dataclass(frozen=True, slots=True)
class Old:
    """The old motors' side of one check."""

    first: tuple[int, ...]
    group: Codes


def group_old(check: Check, wanted: Sequence[Wanted]) -> Old:
    """Group old motors with their sites by what a check reads of them."""
    fields = [field for field in check.reads.old if field not in check.reads.quoted]
    read = set(check.reads.old) | set(check.settled.old)
    keys = []
    for one in wanted:
        motor, presumed = old_side(one)
        facts = tuple(getattr(motor, field) for field in fields)
        place = tuple(getattr(one.site, field) for field in check.reads.site)
        marks = (
            tuple(sorted(presumed.keys() & read)),
            tuple(sorted(one.contradicted & read)),
            bool(one.contradicted),
        )
        keys.append((facts, place, marks))
    column = Column.of(keys)
    first, group = distinct(column.codes)
    return Old(tuple(first.tolist()), group)


@dataclass(frozen=True, slots=True)
class Answers:
    """A check's answers by [old group, new group, relation], flat; where it has none, nothing is added."""

    loss: npt.NDArray[np.float64]
    weighs: Flags
    open: Flags
    fails: Flags
    poor: Flags
    asks: Flags
    needs: npt.NDArray[np.int64]

    def counted(self, weight: float, at: Codes) -> Counted:
        """Return what the check adds for pairs whose places in the arrays are `at`."""
        return Counted(
            weight,
            self.loss.take(at),
            self.weighs.take(at),
            self.open.take(at),
            self.fails.take(at),
            self.poor.take(at),
            self.asks.take(at),
        )


def relations_of(check: Check) -> tuple[str, ...]:
    """Return the relations of a check that many pairs differ in."""
    return tuple(name for name in check.reads.pair if name in RELATED)


def answers(check: Check, wanted: Sequence[Wanted], old: Old, pile: Pile, new: New) -> Answers:
    """Call a check once for each old group, new group and relation."""
    names = relations_of(check)
    findings: list[Finding | None] = []
    sides = [new_side(pile.records[n].facts, pile.records[n].contradicted) for n in new.first.tolist()]
    for at in old.first:
        motor, presumed = old_side(wanted[at])
        for place, (offer, presumed_new) in zip(new.first.tolist(), sides, strict=True):
            for relation in np.ndindex(*(3,) * len(names)):
                pair = Pair(
                    old=motor,
                    new=offer,
                    site=wanted[at].site,
                    presumed_old=presumed,
                    presumed_new=presumed_new,
                    contradicted_old=wanted[at].contradicted,
                    contradicted_new=pile.records[place].contradicted,
                    **{name: _MEANS[code] for name, code in zip(names, relation, strict=True)},
                )
                findings.append(check.judge(pair))
    return _arrays(findings)


def _arrays(findings: Sequence[Finding | None]) -> Answers:
    counted = [None if finding is None else Counted.of(finding, 0.0) for finding in findings]

    def flags(name: str) -> Flags:
        return np.array([bool(one and getattr(one, name)) for one in counted], dtype=bool)

    return Answers(
        loss=np.array([one.loss if one else 0.0 for one in counted], dtype=float),
        weighs=flags("weighs"),
        open=flags("open"),
        fails=flags("fails"),
        poor=flags("poor"),
        asks=flags("asks"),
        needs=np.array([needs_mask([found]) if found else 0 for found in findings], dtype=np.int64),
    )


def relation_codes(name: str, old: Motor, pile: Pile) -> Codes:
    """Return each candidate's relation to the old motor: 0 not said, 1 they differ, 2 they are equal."""
    column = pile.column(RELATED[name])
    compare = same_brand if name == "same_brand" else same_code
    said = getattr(old, RELATED[name])
    related = [_MEANS.index(compare(said, None if value is None else str(value))) for value in column.values]
    return np.array(related, dtype=np.int64)[column.codes]
