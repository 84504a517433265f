"""For who buys to sell on: which lots serve which wanted plates, and at what expected margin.

The margin of a pair is chance x (pays - landed) - (1 - chance) x lost, in US dollars. Each wanted plate gets
one lot at most, each lot serves as many plates as it has pieces (one where the quantity isn't said), and the
sum of margins is the largest there is: an optimal assignment, no greedy one.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from matcher.many.assign import NONE, best_assignment
from matcher.many.columns import Block
from matcher.many.pairs import blocks
from matcher.many.spread import Row, Spread
from matcher.money.cost import OF_THE_TABLES, cost_of
from matcher.money.weigh import Weighed, weigh
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.tally import LAST_USEFUL, Figure, Points


@dataclass(frozen=True, slots=True)
class Served:
    """One wanted plate and the lot to buy for it; money in USD."""

    wanted: Wanted
    weighed: Weighed
    margin: float
    """What is earned on average, above 0."""


@dataclass(frozen=True, slots=True)
class Lots:
    """What to buy for whom."""

    served: tuple[Served, ...]
    """Largest margin first."""
    unserved: tuple[tuple[Wanted, str], ...]
    """The other plates, each with the reason."""

    @property
    def margin(self) -> float:
        """What all of it earns on average (USD)."""
        return sum(one.margin for one in self.served)


def expected_margin(chance: Figure, pays: float, landed: Figure, lost: Figure) -> Figure:
    """Return what a pair, or each of many, earns on average."""
    return chance * (pays - landed) - (1 - chance) * lost


def lots_for(
    wanted: Sequence[Wanted], candidates: Iterable[Record], settings: Settings | None = None
) -> Lots:
    """Return which lots serve which wanted plates with the largest sum of margins.

    A lot in another currency takes part only where the settings' `[exchange]` gives a rate.
    """
    settings = settings or Settings.shipped()
    paying = [one for one in wanted if one.pays is not None]
    market = _Market(paying, settings)
    for block in blocks(candidates):
        market.take(block)
    served = sorted(market.served(), key=lambda one: -one.margin)
    happy = {id(one.wanted) for one in served}
    return Lots(tuple(served), tuple((one, _why(one)) for one in wanted if id(one) not in happy))


def _why(wanted: Wanted) -> str:
    if wanted.pays is None:
        return "What its owner would pay isn't said; write pays = ... into its file."
    return "No lot that is left earns anything on it."


@dataclass(frozen=True, slots=True)
class _Offer:
    """One pair with a margin above 0."""

    margin: float
    place: int


class _Market:
    """The pairs that earn something: for each plate no more than there are plates, which is enough."""

    def __init__(self, wanted: Sequence[Wanted], settings: Settings) -> None:
        self.wanted, self.settings = wanted, settings
        self.spread = Spread(wanted)
        self.offers: list[list[_Offer]] = [[] for _ in wanted]
        self.records: dict[int, Record] = {}

    def take(self, block: Block) -> None:
        """Take in the pairs of one block that earn something."""
        rates = _rates(block, self.settings)
        lost: dict[int, float] = {}
        for number, one in enumerate(self.wanted):
            row = self.spread.row(number, block, self.settings, worst=LAST_USEFUL)
            for margin, place in self._earning(one, row, block, rates, lost):
                self.offers[number].append(_Offer(margin, block.start + place))
                self.records[block.start + place] = block.records[place]
            best = sorted(self.offers[number], key=lambda offer: -offer.margin)
            self.offers[number] = best[: len(self.wanted)]
        kept = {offer.place for offers in self.offers for offer in offers}
        self.records = {place: record for place, record in self.records.items() if place in kept}

    def _earning(
        self, wanted: Wanted, row: Row, block: Block, rates: Points, lost: dict[int, float]
    ) -> Iterator[tuple[float, int]]:
        """Yield margin and place of the candidates that earn something; `lost` keeps what was worked out."""
        pays = wanted.pays or 0.0
        rate = rates[row.places]
        likely = np.flatnonzero(row.chance * (pays - row.landed * rate) > 0)
        for at in likely.tolist():
            place = int(row.places[at])
            if place not in lost:
                cost = cost_of(block.records[place].facts, 0, self.settings)
                lost[place] = cost.lost if cost else float("inf")
            landed = float(row.landed[at] * rate[at])
            margin = expected_margin(float(row.chance[at]), pays, landed, lost[place] * float(rate[at]))
            if margin > 0:
                yield margin, place

    def served(self) -> Iterator[Served]:
        """Yield each plate that gets a lot in the best assignment."""
        columns = [
            place for place, record in self.records.items() for _ in range(_pieces(record, len(self.wanted)))
        ]
        gain = self._gain(columns)
        for number, column in enumerate(best_assignment(gain).tolist()):
            if column != NONE:
                weighed = weigh(self.wanted[number], self.records[columns[column]], self.settings)
                yield Served(self.wanted[number], weighed, float(gain[number, column]))

    def _gain(self, columns: Sequence[int]) -> Points:
        """Return the margin of each plate with each piece, 0 where there is none."""
        pieces: dict[int, list[int]] = {}
        for column, place in enumerate(columns):
            pieces.setdefault(place, []).append(column)
        gain = np.zeros((len(self.wanted), len(columns)))
        for number, offers in enumerate(self.offers):
            for offer in offers:
                gain[number, pieces.get(offer.place, [])] = offer.margin
        return gain


def _pieces(record: Record, most: int) -> int:
    quantity = record.facts.quantity
    return min(1 if quantity is None else quantity, most)


def _rates(block: Block, settings: Settings) -> Points:
    """Return what the money of each candidate is worth in US dollars; NaN where no rate is given."""
    currencies = block.columns["currency"]
    rates = [settings.rate(currency, OF_THE_TABLES) for currency in currencies.values]
    return np.array([np.nan if rate is None else rate for rate in rates])[currencies.codes]
