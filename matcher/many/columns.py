"""Candidates cut into columns of codes, once, so that equal facts can be judged once.

A column holds, for each candidate, the place of its value in a list of distinct values. Cutting is one pass
over the candidates and knows nothing of any old motor. A pile is cut block by block, so that what ranking
needs beside the candidates themselves is bounded, however many they are.
"""

import gc
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, count
from operator import itemgetter
from typing import Any

import numpy as np
import numpy.typing as npt

from matcher.checks import CHECKS
from matcher.judging.presume import READS_KIND, READS_KIND_SAID, by_kind
from matcher.many.codes import Codes, Groups, combined
from matcher.record import Record
from matcher.trade.numbers import compact

BLOCK = 1 << 16
"""Candidates of one block."""

_LOOKED_AT = (*READS_KIND, *chain.from_iterable(READS_KIND_SAID))

_READ = (field for check in CHECKS for field in check.reads.new)
FIELDS: tuple[str, ...] = tuple(dict.fromkeys((*_READ, *_LOOKED_AT, "brand", "part_number", "condition")))
"""All facts that are cut into columns."""

Flags = npt.NDArray[np.bool_]
_AT_ONCE = 512
"""Candidates whose facts are taken out together: few enough for the processor's own memory."""
_SETTLED: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Column:
    """One fact of all candidates: `values[codes[n]]` is candidate n's."""

    values: tuple[Any, ...]
    codes: Codes

    @classmethod
    def of(cls, values: Sequence[object]) -> "Column":
        """Return the column of hashable values."""
        place: defaultdict[object, int] = defaultdict(count().__next__)
        codes = np.fromiter(map(place.__getitem__, values), np.int32, len(values))
        return cls(tuple(place), codes)

    @classmethod
    def of_flags(cls, flags: Flags) -> "Column":
        """Return the column of yes or no."""
        return cls((False, True), flags.astype(np.int32))

    def narrowed(self, part: Callable[[Any], object]) -> "Column":
        """Return a column of what matters of each value alone."""
        narrow = Column.of([part(value) for value in self.values])
        if len(narrow.values) <= 1:  # all alike: an array of one zero serves
            return Column(narrow.values, np.broadcast_to(np.int32(0), self.codes.shape))
        return Column(narrow.values, narrow.codes[self.codes])

    def told(self, tell: Callable[[Any], bool]) -> Flags:
        """Return for each candidate what `tell` says of its value."""
        return np.array([tell(value) for value in self.values], dtype=bool)[self.codes]


class Block:
    """Some candidates with their columns."""

    def __init__(self, records: Sequence[Record], start: int = 0) -> None:
        self.records = records
        self.start = start
        """Place of the first one in the whole pile."""
        self.columns, self.price, self.shipping = _cut(records)
        said_twice = [record.contradicted if record.conflicts else _SETTLED for record in records]
        self.contradicted = Column.of(said_twice)
        self._groups: dict[str, Groups] = {}
        self.relations: dict[tuple[str, str | None], Codes] = {}
        """Relations to old motors, by what these say; filled where they are worked out."""

    def __len__(self) -> int:
        return len(self.records)

    @cached_property
    def kinds(self) -> Column:
        """What is presumed of each candidate by its kind: one code for all candidates alike in that."""
        columns = [self.columns[field] for field in READS_KIND]
        columns += [Column.of_flags(self._any_said(fields)) for fields in READS_KIND_SAID]
        columns.append(self.contradicted.narrowed(lambda names: names.intersection(_LOOKED_AT)))
        groups = combined(columns)
        alike = Column.of([_presumed(self.records[place]) for place in groups.first.tolist()])
        return Column(alike.values, alike.codes[groups.of])

    def _any_said(self, fields: Sequence[str]) -> Flags:
        any_said = np.zeros(len(self), bool)
        for field in fields:
            any_said |= self.columns[field].told(lambda value: value is not None)
        return any_said

    @cached_property
    def numbered(self) -> dict[str, list[int]]:
        """The codes of part numbers by what they are compared as."""
        found: dict[str, list[int]] = {}
        for code, number in enumerate(self.columns["part_number"].values):
            if number and compact(number):
                found.setdefault(compact(number), []).append(code)
        return found

    def grouped(self, name: str, columns: Callable[[], Iterable[Column]]) -> Groups:
        """Return the candidates grouped by some columns; the groups are kept under a name."""
        if name not in self._groups:
            self._groups[name] = combined(list(columns()))
        return self._groups[name]


class Pile:
    """Candidates in blocks with their columns; build it once and rank it for any number of old motors."""

    def __init__(self, records: Iterable[Record]) -> None:
        self.records = list(records)
        starts = range(0, len(self.records), BLOCK)
        self.blocks = [Block(self.records[start : start + BLOCK], start) for start in starts]

    def __len__(self) -> int:
        return len(self.records)


def _cut(records: Sequence[Record]) -> tuple[dict[str, Column], "npt.NDArray[Any]", "npt.NDArray[Any]"]:
    """Return the columns of all facts, and price and shipping (NaN where not said)."""
    facts_of = itemgetter(*FIELDS, "price", "shipping")
    parts: list[list[tuple[object, ...]]] = [[] for _ in range(len(FIELDS) + 2)]
    with _no_collecting():
        for start in range(0, len(records), _AT_ONCE):
            rows = [facts_of(record.facts.__dict__) for record in records[start : start + _AT_ONCE]]
            for part, more in zip(parts, zip(*rows, strict=True), strict=True):
                part.append(more)
        values = [list(chain.from_iterable(part)) for part in parts]
    *coded, price, shipping = values
    columns = {field: Column.of(column) for field, column in zip(FIELDS, coded, strict=True)}
    return columns, np.array(price, dtype=float), np.array(shipping, dtype=float)


@contextmanager
def _no_collecting() -> Iterator[None]:
    """Keep the collector of cycles out: nothing here makes any, and it would walk over all candidates."""
    if not gc.isenabled():
        yield
        return
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def _presumed(record: Record) -> tuple[tuple[str, object], ...]:
    return tuple(by_kind(record.facts, record.contradicted).items())
