"""A lot: many offers at once, from opened tables or the shop's saved stock, ranked on a worker.

Rows are light, so that 50,000 of them scroll and filter at once; the findings behind one row are
worked out again when it is chosen.
"""

import gc
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from matcher.job import Listing
from matcher.money.weigh import Weighed, place, weigh
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from ui.spans import shown

Tick = Callable[[float], None]
STEP = 64
"""Offers between two reports of progress."""


class LotRow(NamedTuple):
    """One offer as the table shows it; money in the offer's currency, scores 0 .. 100."""

    at: int
    """Place of the record in its lot."""
    name: str
    number: str
    price: float | None
    currency: str
    verdict: str | None = "waiting"
    low: float | None = None
    score: float | None = None
    high: float | None = None
    landed: float | None = None
    chance: float | None = None
    reason: str = ""


@dataclass(frozen=True)
class Lot:
    """Records with a row each; `problems` has a line for what could not be read."""

    records: Sequence[Record]
    rows: list[LotRow]
    problems: tuple[str, ...] = ()


@contextmanager
def _without_pauses() -> Iterator[None]:
    """Keep the collector from walking over all of a growing lot again and again.

    A full collection over 50,000 records stops every thread for hundreds of milliseconds.
    """
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()


def read_lot(tick: Tick, paths: Sequence[Path]) -> Lot:
    """Read opened files."""
    from matcher.reading.sources import Problem, records

    problems: list[Problem] = []
    lot = gathered(tick, records(paths, on_problem=problems.append))
    lines = tuple(f"{problem.where}: {problem.why}" for problem in problems)
    return Lot(lot.records, lot.rows, lines)


def gathered(tick: Tick, records: Iterable[Record]) -> Lot:
    """Take records as they come and give each its row."""
    found: list[Record] = []
    rows: list[LotRow] = []
    with _without_pauses():
        for record in records:
            if not len(found) % STEP:
                tick(0.0)
            rows.append(_row(len(found), record))
            found.append(record)
    return Lot(found, rows)


def _row(at: int, record: Record) -> LotRow:
    facts = record.facts
    first = (record.title or record.text[:200]).strip()
    name = shown(first).splitlines()[0][:120] if first else ""
    name = name or " ".join(filter(None, (facts.brand, facts.part_number))) or record.id
    return LotRow(at, name, facts.part_number or "", facts.price, facts.currency or "")


def ranked(tick: Tick, lot: Lot, wanted: Wanted, settings: Settings) -> list[LotRow]:
    """Rank a lot against an old motor and return its rows, best first."""
    placed: list[tuple[tuple[int, float, float], LotRow]] = []
    with _without_pauses():
        for at, record in enumerate(lot.records):
            if not at % STEP:
                tick(at / len(lot.records))
            one = weigh(wanted, record, settings)
            placed.append((place(one), _answered(lot.rows[at], one)))
        placed.sort(key=lambda pair: pair[0])
    return [row for _place, row in placed]


def _answered(row: LotRow, one: Weighed) -> LotRow:
    judgement = one.judgement
    return row._replace(
        verdict=judgement.verdict,
        low=judgement.score_low,
        score=judgement.score,
        high=judgement.score_high,
        landed=one.landed_cost,
        chance=one.fit_chance,
        reason=judgement.reason,
    )


def as_listing(record: Record) -> Listing:
    """Return one offer as a candidate for the job."""
    return Listing.of(record)
