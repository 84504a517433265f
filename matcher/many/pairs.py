"""Many old motors against many candidates: the best pairs, without ever holding all pairs at once."""

import heapq
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import islice

import numpy as np

from matcher.many.columns import BLOCK, Block, Pile
from matcher.many.ranking import best_first, rank_pile
from matcher.many.spread import Spread
from matcher.money.weigh import Weighed, place, ranked, weigh
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.tally import PART, shown

FEW = 200
"""Up to so many candidates, judging one by one is as fast as grouping them."""

Pair = tuple[Wanted, Weighed]


def best_pairs(
    wanted: Sequence[Wanted],
    candidates: Iterable[Record],
    settings: Settings | None = None,
    *,
    top: int | None = None,
    progress: Callable[[int], None] | None = None,
) -> Iterator[Pair]:
    """Yield pairs best first: by verdict, then the low score, then the landed cost.

    With `top` only so many; the candidates are then taken block by block and need not all be held.
    `progress` is told how many pairs are done.
    """
    settings = settings or Settings.shipped()
    if top is not None:
        yield from _Best(wanted, settings, top).of(blocks(candidates), progress)
        return
    held = list(candidates)
    every = [(one, weighed) for one in wanted for weighed in _of_one(one, held, settings)]
    yield from every if len(wanted) == 1 else sorted(every, key=lambda pair: place(pair[1]))


def _of_one(wanted: Wanted, candidates: Sequence[Record], settings: Settings) -> Iterable[Weighed]:
    if len(candidates) <= FEW:
        return ranked(wanted, candidates, settings)
    return rank_pile(wanted, Pile(candidates), settings).best()


def blocks(candidates: Iterable[Record]) -> Iterator[Block]:
    """Cut candidates into blocks as they come."""
    rest, start = iter(candidates), 0
    while records := list(islice(rest, BLOCK)):
        yield Block(records, start)
        start += len(records)


Entry = tuple[tuple[float, float, float], int, int]
"""What sorts a pair, the old motor's number, the candidate's place: ties stay in this order."""


class _Best:
    """The best pairs so far; the worst of them says which checks may rule a candidate out early."""

    def __init__(self, wanted: Sequence[Wanted], settings: Settings, top: int) -> None:
        self.wanted, self.settings, self.top = wanted, settings, top
        self.spread = Spread(wanted)
        self.best: list[Entry] = []
        self.records: dict[int, Record] = {}

    def of(self, pile: Iterable[Block], progress: Callable[[int], None] | None) -> Iterator[Pair]:
        """Yield the best pairs of all blocks."""
        done = 0
        for block in pile:
            for number in range(len(self.wanted)):
                self._take(block, number)
                done += len(block)
                if progress:
                    progress(done)
            kept = {at for _, _, at in self.best}
            self.records = {at: record for at, record in self.records.items() if at in kept}
        for _, number, at in self.best:
            yield self.wanted[number], weigh(self.wanted[number], self.records[at], self.settings)

    def _take(self, block: Block, number: int) -> None:
        full = len(self.best) == self.top
        row = self.spread.row(number, block, self.settings, worst=int(self.best[-1][0][0]) if full else PART)
        low = shown(row.tally.low)
        cost = np.where(np.isnan(row.landed), np.inf, row.landed)
        found: list[Entry] = []
        for at in best_first(row.tally, row.landed, self.top).tolist():
            key = (float(row.tally.verdict[at]), -float(low[at]), float(cost[at]))
            found.append((key, number, block.start + int(row.places[at])))
            self.records[found[-1][2]] = block.records[row.places[at]]
        self.best = heapq.nsmallest(self.top, [*self.best, *found])
