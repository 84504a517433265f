"""A lot: many offers at once, from opened tables or the shop's saved stock, as light rows.

Rows hold what a table shows and no more, so that 50,000 of them scroll and filter at once; the record
and the findings behind one row are fetched when it is chosen. Nothing here knows Qt.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from math import isnan
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from matcher.errors import BadValue
from matcher.job import Listing
from matcher.judging.saying import choice
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from ui.called import called
from ui.spans import shown

if TYPE_CHECKING:
    from matcher.many import Pile, Ranking

Tick = Callable[[float], None]
KEPT = "stock-"
"""How the ids of kept offers begin; the number in the store follows."""
STEP = 32
"""Offers between two reports of progress."""
REASONS = 200
"""So many of the best rows come with their reason; the others get it when they are seen or saved."""


def number_of(kept: str) -> int:
    """Return the number in the store of a kept offer's id."""
    return int(kept.removeprefix(KEPT))


class LotRow(NamedTuple):
    """One offer as the table shows it; money in the offer's currency, scores 0 .. 100."""

    at: int
    """Place of the record in its lot."""
    id: str
    """The record's id."""
    name: str
    number: str
    words: str
    """What a filter looks in, folded."""
    price: float | None
    currency: str
    shipping: float | None = None
    """`None` where it isn't said; `landed` then counts a presumed one."""
    condition: str = ""
    quantity: int | None = None
    return_days: int | None = None
    source: str = ""
    """File and line, as `lot.csv#3`."""
    verdict: str | None = "waiting"
    low: float | None = None
    score: float | None = None
    high: float | None = None
    landed: float | None = None
    chance: float | None = None
    reason: str = ""
    minds: int = 0
    """Small losses that stand under a "fits"."""

    @property
    def is_presumed(self) -> bool:
        """Whether `landed` counts a shipping cost that nobody named."""
        return self.landed is not None and self.shipping is None


class Lot:
    """The records of a lot and their rows in the order of reading."""

    def __init__(self) -> None:
        self.records: list[Record] = []
        self.sources: list[str] = []
        """By record, the file and line it came from, as `lot.csv#3`."""
        self.shelves: list[str] = []
        """By record, the id of the shelf that it stands on; empty for what was opened from a file."""
        self.gone: set[int] = set()
        """Places of records that were taken out; the others keep theirs."""
        self.rows: list[LotRow] = []
        self.problems: list[str] = []
        self.ranking: Ranking | None = None
        self._piled: Pile | None = None

    def gather(
        self, tick: Tick, records: Iterable[Record], shelf: str = "", names: Mapping[int, str] | None = None
    ) -> None:
        """Take records as they come and give each its row; `names` tells where kept ones came from."""
        for record in records:
            if not len(self.records) % STEP:
                tick(0.0)
            source = names.get(number_of(record.id), "") if names else record.id
            self.rows.append(_row(len(self.records), record, source))
            self.records.append(record)
            self.sources.append(source)
            self.shelves.append(shelf)

    def record(self, row: tuple[int, str]) -> Record:
        """Return the record of a row, by its place and id.

        Raises `BadValue` where another stands there: the lot was read again, and the stock changed meanwhile.
        """
        at, one = row
        if at >= len(self.records) or self.records[at].id != one:
            raise BadValue("The stock changed meanwhile; choose it anew above the table.")
        return self.records[at]

    def listing(self, row: tuple[int, str]) -> Listing:
        """Return one offer as a candidate. Raises `BadValue` as `record` does."""
        return Listing.of(self.record(row), self.sources[row[0]])

    def take_out(self, rows: Sequence[tuple[int, str]]) -> dict[str, list[int]]:
        """Take rows of the stock out of the lot; return their numbers in the store by shelf."""
        numbers: dict[str, list[int]] = {}
        for row in rows:
            numbers.setdefault(self.shelves[row[0]], []).append(number_of(self.record(row).id))
        self.gone.update(at for at, _one in rows)
        return numbers

    def read(self, tick: Tick, paths: Sequence[Path]) -> None:
        """Read files; what can't be read, or holds no offer, becomes a line of `problems`."""
        from matcher.reading.sources import Problem, records

        def report(problem: Problem) -> None:
            self.problems.append(f"{problem.where}: {problem.why}")

        for path in paths:
            before = len(self.records), len(self.problems)
            self.gather(tick, records([path], on_problem=report))
            if before == (len(self.records), len(self.problems)):
                self.problems.append(f"{path.name}: there is no offer in it")

    def rank(self, wanted: Wanted, settings: Settings) -> list[LotRow]:
        """Rank the lot against an old motor and return its rows, best first."""
        from matcher.many import rank_pile

        self.ranking = rank_pile(wanted, self._pile(), settings)
        order = [at for at in self.ranking.order.tolist() if at not in self.gone]
        return [self._answered(at, with_reason=place < REASONS) for place, at in enumerate(order)]

    def _pile(self) -> "Pile":
        from matcher.many import Pile

        if self._piled is None or len(self._piled) != len(self.records):
            self._piled = Pile(self.records)
        return self._piled

    def _answered(self, at: int, *, with_reason: bool) -> LotRow:
        """Return one row with its answer; a reason costs a judgement, so not every row brings it."""
        if self.ranking is None:
            return self.rows[at]
        ranking, tally = self.ranking, self.ranking.tally
        return self.rows[at]._replace(
            verdict=ranking.verdict(at),
            low=_known(tally.low[at]),
            score=_known(tally.score[at]),
            high=_known(tally.high[at]),
            landed=_known(ranking.landed[at]),
            chance=_known(ranking.chance[at]),
            reason=self.reason(at) if with_reason else "",
            minds=int(tally.minds[at]),
        )

    def reasons(self, tick: Tick, places: Sequence[int]) -> dict[int, str]:
        """Return the reasons of several offers, by place."""
        found: dict[int, str] = {}
        for done, at in enumerate(places):
            if not done % STEP:
                tick(done / len(places))
            found[at] = self.reason(at)
        return found

    def reason(self, at: int) -> str:
        """Return the one sentence that matters most about an offer; empty before ranking."""
        return self.ranking.weighed(at).judgement.reason if self.ranking else ""


def _known(figure: float) -> float | None:
    return None if isnan(figure) else float(figure)


def _row(at: int, record: Record, source: str) -> LotRow:
    facts, number = record.facts, record.facts.part_number or ""
    name = called(facts.brand, number, record.title.strip() or record.text) or record.id
    title = shown(record.title[:200])
    condition = choice("condition", facts.condition) if facts.condition else ""
    parts = (name, number, title if title != name else "", facts.brand, condition)
    return LotRow(
        at,
        record.id,
        name,
        number,
        " ".join(filter(None, parts)).casefold(),
        facts.price,
        facts.currency or "",
        facts.shipping,
        condition,
        facts.quantity,
        facts.return_days,
        shown(source),
    )
