"""A pile of candidates cut into columns of codes, once, so that equal facts can be judged once.

A column holds, for each candidate, the place of its value in a list of distinct values. Cutting costs one
pass a field and knows nothing of any old motor.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from matcher.motor import Motor
from matcher.numbers import compact
from matcher.presume import new_side
from matcher.record import Record

Codes = npt.NDArray[np.int64]

PRESUMING = (
    "motor_type",
    "module",
    "module_number",
    "program_number",
    "rpm_range",
    "control_signal",
    "plug_pins",
    "phase",
    "volts",
    "capacitor_uf",
    "capacitor_vac",
    "speeds",
    "frame",
    "body_diameter_in",
    "mounting",
)
"""What `matcher.presume.by_kind` looks at; a test holds the two together."""


@dataclass(frozen=True, slots=True)
class Column:
    """One fact of all candidates: `values[codes[n]]` is candidate n's."""

    values: tuple[object, ...]
    codes: Codes

    @classmethod
    def of(cls, values: Sequence[object]) -> "Column":
        """Return the column of hashable values."""
        distinct = dict.fromkeys(values)
        place = {value: number for number, value in enumerate(distinct)}
        codes = np.fromiter(map(place.__getitem__, values), np.int64, len(values))
        return cls(tuple(distinct), codes)


class Pile:
    """Candidates with their columns; build it once and rank it for any number of old motors."""

    def __init__(self, records: Iterable[Record]) -> None:
        self.records = list(records)
        self._raw = [vars(record.facts) for record in self.records]
        self.contradicted = Column.of([record.contradicted for record in self.records])
        self._columns: dict[str, Column] = {}

    def __len__(self) -> int:
        return len(self.records)

    def column(self, field: str) -> Column:
        """Return the column of one fact as the listings say it."""
        if field not in self._columns:
            self._columns[field] = Column.of([facts[field] for facts in self._raw])
        return self._columns[field]

    @cached_property
    def kinds(self) -> Column:
        """What is presumed of each candidate by its kind: one code for all candidates alike in that."""
        key = combined([self.column(field) for field in PRESUMING] + [self.contradicted])
        first, inverse = distinct(key)
        implied = [_presumed(self.records[n]) for n in first]
        column = Column.of(implied)
        return Column(column.values, column.codes[inverse])

    @cached_property
    def by_number(self) -> dict[tuple[str, str], list[int]]:
        """Places of the candidates by maker and number, compared as the rules compare them."""
        places: dict[tuple[str, str], list[int]] = {}
        brands, numbers = self.column("brand"), self.column("part_number")
        makers = [_maker(brand) for brand in brands.values]
        compacted = [compact(str(number)) if number else "" for number in numbers.values]
        for place, (brand, number) in enumerate(
            zip(brands.codes.tolist(), numbers.codes.tolist(), strict=True)
        ):
            if makers[brand] and compacted[number]:
                places.setdefault((makers[brand], compacted[number]), []).append(place)
        return places

    def same_number(self, old: Motor) -> list[int]:
        """Return the places of candidates whose maker and number equal the old motor's."""
        if not old.brand or not old.part_number:
            return []
        return self.by_number.get((_maker(old.brand), compact(old.part_number)), [])


def _presumed(record: Record) -> tuple[tuple[str, object], ...]:
    side, reasons = new_side(record.facts, record.contradicted)
    return tuple((name, getattr(side, name)) for name in reasons)


def _maker(brand: object) -> str:
    return " ".join(str(brand).casefold().split()) if brand else ""


def combined(columns: Sequence[Column]) -> Codes:
    """Return one code for each row's combination of codes."""
    key = np.zeros(len(columns[0].codes), np.int64)
    size = 1
    for column in columns:
        if len(column.values) <= 1:
            continue
        if size > 2**62 // len(column.values):
            _, key = distinct(key)
            size = int(key.max(initial=0)) + 1
        key = key * len(column.values) + column.codes
        size *= len(column.values)
    return key


def distinct(key: Codes) -> tuple[Codes, Codes]:
    """Return the place of a first row of each distinct code, and each row's place among them."""
    _, first, inverse = np.unique(key, return_index=True, return_inverse=True)
    return first.astype(np.int64), inverse.astype(np.int64).reshape(key.shape)
