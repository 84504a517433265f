"""A lot: many offers at once, from opened tables or the shop's saved stock, as light rows.

Rows hold what a table shows and no more, so that 50,000 of them scroll and filter at once; the record
and the findings behind one row are fetched when it is chosen. Nothing here knows Qt.
"""

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import NamedTuple

from matcher.money.weigh import Weighed, place, weigh
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from ui.spans import shown

Tick = Callable[[float], None]
STEP = 32
"""Offers between two reports of progress."""


class LotRow(NamedTuple):
    """One offer as the table shows it; money in the offer's currency, scores 0 .. 100."""

    at: int
    """Place of the record in its lot."""
    name: str
    number: str
    words: str
    """What a filter looks in, folded."""
    price: float | None
    currency: str
    verdict: str | None = "waiting"
    low: float | None = None
    score: float | None = None
    high: float | None = None
    landed: float | None = None
    chance: float | None = None
    reason: str = ""


class Lot:
    """The records of a lot and their rows in the order of reading."""

    def __init__(self) -> None:
        self.records: list[Record] = []
        self.rows: list[LotRow] = []
        self.problems: list[str] = []

    def gather(self, tick: Tick, records: Iterable[Record]) -> None:
        """Take records as they come and give each its row."""
        for record in records:
            if not len(self.records) % STEP:
                tick(0.0)
            self.rows.append(_row(len(self.records), record))
            self.records.append(record)

    def read(self, tick: Tick, paths: Sequence[Path]) -> None:
        """Read files; what can't be read becomes a line of `problems`."""
        from matcher.reading.sources import Problem, records

        def report(problem: Problem) -> None:
            self.problems.append(f"{problem.where}: {problem.why}")

        self.gather(tick, records(paths, on_problem=report))

    def ranked(self, tick: Tick, wanted: Wanted, settings: Settings) -> list[LotRow]:
        """Return the rows ranked against an old motor, best first."""
        placed: list[tuple[tuple[int, float, float], LotRow]] = []
        for at, record in enumerate(self.records):
            if not at % STEP:
                tick(at / len(self.records))
            one = weigh(wanted, record, settings)
            placed.append((place(one), _answered(self.rows[at], one)))
        placed.sort(key=lambda pair: pair[0])
        return [row for _place, row in placed]


def _row(at: int, record: Record) -> LotRow:
    facts = record.facts
    first = (record.title or record.text[:200]).strip()
    name = shown(first).splitlines()[0][:120] if first else ""
    name = name or " ".join(filter(None, (facts.brand, facts.part_number))) or record.id
    number = facts.part_number or ""
    return LotRow(at, name, number, f"{name} {number}".casefold(), facts.price, facts.currency or "")


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
