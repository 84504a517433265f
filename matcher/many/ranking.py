"""One old motor against a pile: score, range, verdict, chance and money of every candidate as arrays."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from matcher.many.columns import Codes, Pile
from matcher.many.spread import Spread
from matcher.money.weigh import Weighed, weigh
from matcher.motor import Wanted
from matcher.settings import Settings
from matcher.tally import VERDICT_ORDER, Points, Tally


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
        low = shown(self.tally.low)
        cost = np.where(np.isnan(self.landed), np.inf, self.landed)
        return np.lexsort((cost, -low, self.tally.verdict))

    def verdict(self, place: int) -> str | None:
        """Return one candidate's verdict."""
        return VERDICT_ORDER[int(self.tally.verdict[place])]

    def weighed(self, place: int) -> Weighed:
        """Return one candidate in full, judged as a single pair."""
        return weigh(self.wanted, self.pile.records[place], self.settings)

    def best(self, top: int | None = None) -> Iterator[Weighed]:
        """Yield the candidates in full, best first."""
        for place in self.order[:top].tolist():
            yield self.weighed(place)


def rank_pile(wanted: Wanted, pile: Pile, settings: Settings | None = None) -> Ranking:
    """Rank a whole pile for one old motor; equal to weighing each candidate by itself, to the last digit."""
    settings = settings or Settings.shipped()
    row = Spread([wanted], pile, settings).row(0)
    return Ranking(wanted, pile, settings, row.tally, row.chance, row.landed)


def shown(points: Points) -> Points:
    """Return points rounded as they are shown, -1 where they aren't known; the order goes by these."""
    values, inverse = np.unique(points, return_inverse=True)
    rounded = np.array([-1.0 if np.isnan(value) else round(float(value), 1) for value in values])
    return rounded[inverse]
