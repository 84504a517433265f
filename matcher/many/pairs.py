"""Many old motors against many candidates: the best pairs, without ever holding all pairs at once."""

import heapq
from collections.abc import Callable, Iterator, Sequence

import numpy as np

from matcher.many.columns import Pile
from matcher.many.ranking import rank_pile, shown
from matcher.many.spread import Spread
from matcher.money.weigh import Weighed, place, ranked, weigh
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.tally import POOR

FEW = 200
"""Up to so many candidates, judging one by one is as fast as grouping them."""

Pair = tuple[Wanted, Weighed]


def best_pairs(
    wanted: Sequence[Wanted],
    candidates: Sequence[Record],
    settings: Settings | None = None,
    *,
    top: int | None = None,
    progress: Callable[[int], None] | None = None,
) -> Iterator[Pair]:
    """Yield pairs best first: by verdict, then the low score, then the landed cost.

    With `top` only so many. With many of both, pairs that a hard check excludes are left out of `top`
    before the soft checks are looked at. `progress` is told how many old motors are done.
    """
    settings = settings or Settings.shipped()
    if len(wanted) == 1 and (top is None or len(candidates) <= FEW):
        yield from ((wanted[0], weighed) for weighed in _of_one(wanted[0], candidates, settings, top))
    elif top is None:
        every = [(one, weighed) for one in wanted for weighed in _of_one(one, candidates, settings, None)]
        yield from sorted(every, key=lambda pair: place(pair[1]))
    else:
        yield from _best_of_many(wanted, Pile(candidates), settings, top, progress)


def _of_one(
    wanted: Wanted, candidates: Sequence[Record], settings: Settings, top: int | None
) -> Iterator[Weighed]:
    if len(candidates) <= FEW:
        yield from ranked(wanted, candidates, settings)[:top]
    else:
        yield from rank_pile(wanted, Pile(candidates), settings).best(top)


def _best_of_many(
    wanted: Sequence[Wanted],
    pile: Pile,
    settings: Settings,
    top: int,
    progress: Callable[[int], None] | None,
) -> Iterator[Pair]:
    spread = Spread(wanted, pile, settings)
    best: list[tuple[tuple[float, float, float], int, int]] = []
    for number in range(len(wanted)):
        found = _best_of_row(spread, number, top, prune=True)
        if len(found) < top:  # too few are left: the excluded ones take part after all
            found = _best_of_row(spread, number, top, prune=False)
        best = heapq.nsmallest(top, [*best, *found])
        if progress:
            progress(number + 1)
    for _, number, at in best:
        yield wanted[number], weigh(wanted[number], pile.records[at], settings)


def _best_of_row(
    spread: Spread, number: int, top: int, *, prune: bool
) -> list[tuple[tuple[float, float, float], int, int]]:
    row = spread.row(number, prune=prune)
    low = shown(row.tally.low)
    cost = np.where(np.isnan(row.landed), np.inf, row.landed)
    order = np.lexsort((row.places, cost, -low, row.tally.verdict))[:top]
    return [
        ((float(row.tally.verdict[at]), -float(low[at]), float(cost[at])), number, int(row.places[at]))
        for at in order.tolist()
        if not prune or row.tally.verdict[at] <= POOR
    ]
