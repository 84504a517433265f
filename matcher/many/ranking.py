"""One old motor against a pile: score, range, verdict, chance and money of every candidate as arrays."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
import numpy.typing as npt

from matcher.finding import Verdict
from matcher.many.codes import Codes
from matcher.many.columns import Pile
from matcher.many.spread import Row, Spread
from matcher.money.weigh import Weighed, weigh
from matcher.motor import Wanted
from matcher.settings import Settings
from matcher.tally import VERDICT_ORDER, Points, Tally, shown


@dataclass(frozen=True)
class Ranking:
    """Every candidate of a pile for one old motor; arrays follow the pile's order."""

    wanted: Wanted
    pile: Pile
    settings: Settings
    tally: Tally
    chance: Points
    landed: Points
    """NaN where the listing names no price."""

    @cached_property
    def order(self) -> Codes:
        """Places of the candidates, best first: verdict, then the low score, then the landed cost."""
        return best_first(self.tally, self.landed)

    def verdict(self, place: int) -> Verdict | None:
        """Return one candidate's verdict."""
        return VERDICT_ORDER[int(self.tally.verdict[place])]

    def weighed(self, place: int) -> Weighed:
        """Return one candidate in full, judged as a single pair."""
        return weigh(self.wanted, self.pile.records[place], self.settings)

    def best(self, top: int | None = None) -> Iterator[Weighed]:
        """Yield the candidates in full, best first."""
        order = self.order if top is None else best_first(self.tally, self.landed, top)
        for place in order.tolist():
            yield self.weighed(place)


def rank_pile(
    wanted: Wanted, pile: Pile, settings: Settings | None = None, *, spread: Spread | None = None
) -> Ranking:
    """Rank a whole pile for one old motor; equal to weighing each candidate by itself, to the last digit.

    To rank again with other settings, hand over the `Spread([wanted])` of the first time: then nothing is
    judged anew, only tallied.
    """
    settings = settings or Settings.shipped()
    spread = spread or Spread([wanted])
    rows = [spread.row(0, block, settings) for block in pile.blocks]
    return Ranking(wanted, pile, settings, *_joined(rows))


def _joined(rows: Sequence[Row]) -> tuple[Tally, Points, Points]:
    def joined(parts: "Sequence[npt.NDArray[Any]]") -> "npt.NDArray[Any]":
        return np.concatenate(parts) if parts else np.empty(0)

    names = ("score", "low", "high", "verdict", "minds")
    whole = Tally(*(joined([getattr(row.tally, name) for row in rows]) for name in names))
    return whole, joined([row.chance for row in rows]), joined([row.landed for row in rows])


def best_first(tally: Tally, landed: Points, top: int | None = None) -> Codes:
    """Return places best first, only so many with `top`; ties stay in the order given.

    Each of `landed` is in its offer's own currency and compared as it stands, as in `rank_key`.
    """
    places: Codes = np.arange(len(landed))
    if top is not None and top < len(landed):
        places = np.flatnonzero(tally.verdict <= np.partition(tally.verdict, top)[top])
    low = shown(tally.low[places])
    cost = np.where(np.isnan(landed[places]), np.inf, landed[places])
    return places[np.lexsort((cost, -low, tally.verdict[places]))[:top]]
