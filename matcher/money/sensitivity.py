"""How far a weight or a chance may move before the order of the first three changes.

Weights decide the ranking; priors and chances by condition decide the buying plan. The points where two
candidates can change places are found in closed form: a low score is a ratio of two lines in a weight, so two
of them meet where a quadratic has a root; the price per success is a line in 1 / chance. Only at those
points, and between them, is the order looked at, by the same sums that rank. Scores are compared as they are
shown, to a tenth of a point; where two are that near, every step of the rounding is looked at.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from matcher.checks import CHECKS
from matcher.money.chance import open_doubts, row_of_condition
from matcher.money.low_scores import LARGEST_WEIGHT, LowScores, quotient
from matcher.money.room import Flags, Room, room
from matcher.money.weigh import Weighed, gamble_in, place
from matcher.settings import Settings
from matcher.tally import LOWEST_GOOD_SCORE, Counted, Points, Tally, shown, tally

FIRST = 3
"""So many candidates' order is looked at."""
MOST = 200
"""Candidates that take part; those ranked after them are left aside."""


def room_of_weights(candidates: Sequence[Weighed], settings: Settings) -> list[Room]:
    """Return for each weight how far it may move before the first three of the ranking change."""
    ranking = sorted((one for one in candidates if one.judgement.verdict is not None), key=place)[:MOST]
    rows = _Rows.of(ranking, settings)
    return [rows.room(name) for name in settings.weights if name in rows.counted]


def room_of_chances(
    candidates: Sequence[Weighed], fallback: float, settings: Settings, currency: str | None = None
) -> list[Room]:
    """Return for each prior and chance by condition how far it may move before the plan's first three change.

    `fallback` is its price, in `currency`. Figures that no candidate hangs on are left out.
    """
    gambles = [(one, gamble_in(one, currency, settings)) for one in candidates]
    priced = [(one, gamble) for one, gamble in gambles if gamble is not None and one.fit_chance > 0]
    landed = np.array([gamble.landed for _, gamble in priced])
    lost = np.array([gamble.lost for _, gamble in priced])
    chance = np.array([one.fit_chance for one, _ in priced])
    plan = _Plan(landed, lost, chance, fallback)
    found = []
    for group, name, now in _chances(settings):
        hangs = np.array([name in _hanging_on(one, group) for one, _ in priced], dtype=bool)
        if hangs.any() and now > 0:
            found.append(plan.room(group, name, now, hangs))
    return found


def _chances(settings: Settings) -> list[tuple[str, str, float]]:
    groups = {"priors": settings.priors, "condition_chances": settings.condition_chances}
    return [(group, name, now) for group, figures in groups.items() for name, now in figures.items()]


def _hanging_on(one: Weighed, group: str) -> tuple[str, ...]:
    return open_doubts(one.judgement) if group == "priors" else (row_of_condition(one.offer.condition),)


@dataclass(frozen=True)
class _Rows:
    """A ranking, best first, as the tally sees it."""

    counted: dict[str, Counted]
    """By check; arrays over the candidates."""
    landed: Points

    @classmethod
    def of(cls, ranking: Sequence[Weighed], settings: Settings) -> "_Rows":
        found = [{finding.check: finding for finding in one.judgement.findings} for one in ranking]
        counted = {}
        for name in (check.name for check in CHECKS):
            weight = settings.weights[name]
            ones = [Counted.of(each[name], weight) if name in each else _NOTHING for each in found]
            if any(one is not _NOTHING for one in ones):
                arrays = (np.array([getattr(one, field) for one in ones]) for field in _FIELDS)
                counted[name] = Counted(weight, *arrays)
        landed = [float("inf") if one.landed_cost is None else one.landed_cost for one in ranking]
        return cls(counted, np.array(landed))

    def room(self, name: str) -> Room:
        """Return how far one weight may move."""
        one = self.counted[name]
        if len(self.landed) < 2 or not (np.any(one.weighs) or np.any(one.open)):
            return Room("weights", name, one.weight, None, None)
        points = np.concatenate([self._meeting(name), self._turning(name)])
        return room("weights", name, one.weight, LARGEST_WEIGHT, points, lambda at: self._keeps(name, at))

    def _keeps(self, name: str, weights: Points) -> Flags:
        """Tell for each of several weights whether the first are in the order of now."""
        tried = {**self.counted, name: _with(self.counted[name], weights[:, None])}
        whole = tally(list(tried.values()))
        first = min(FIRST, len(self.landed) - 1)
        keeps = np.ones(len(weights), bool)
        for at in range(first):
            rest = slice(at + 1, at + 2) if at + 1 < first else slice(at + 1, None)
            keeps &= self._before(whole, at, rest).all(axis=1)
        return keeps

    def _before(self, whole: Tally, at: int, rest: slice) -> Flags:
        """Tell whether one candidate's key comes before, or equals, those of others."""
        verdict, low = whole.verdict, shown(whole.low)
        mine, others = verdict[:, at, None], verdict[:, rest]
        my_low, lows = low[:, at, None], low[:, rest]
        cheaper = self.landed[at] <= self.landed[rest]
        equal = (mine == others) & ((my_low > lows) | ((my_low == lows) & cheaper))
        return np.asarray((mine < others) | equal)

    def _lines(self, name: str) -> "LowScores":
        """Return the low scores as the weight moves."""
        zero = np.zeros(len(self.landed))
        lost, known = zero, zero
        for other, one in self.counted.items():
            if other != name:
                lost = lost + one.weight * (one.loss * one.weighs + one.open)
                known = known + one.weight * (one.weighs + zero + one.open)
        one = self.counted[name]
        return LowScores(lost, one.loss * one.weighs + one.open, known, one.weighs + zero + one.open)

    def _meeting(self, name: str) -> Points:
        """Return the weights at which one of the first can change places with another candidate."""
        lows = self._lines(name)
        found = [np.empty(0)]
        for one in range(min(FIRST, len(self.landed))):
            meets = lows.meets(one)
            found.append(meets.ravel())
            found += lows.rounding(one, meets)
        return np.concatenate(found)

    def _turning(self, name: str) -> Points:
        """Return the weights at which a score passes the lowest good one, which changes the verdict."""
        lost = sum(one.weight * one.loss * one.weighs for other, one in self.counted.items() if other != name)
        known = sum(one.weight * one.weighs for other, one in self.counted.items() if other != name)
        one, share = self.counted[name], 1 - LOWEST_GOOD_SCORE / 100
        return quotient(share * known - lost, one.loss * one.weighs - share * one.weighs)


_FIELDS = ("loss", "weighs", "open", "fails", "poor", "asks")
_NOTHING = Counted(0.0, 0.0, weighs=False, open=False, fails=False, poor=False, asks=False)


def _with(one: Counted, weight: "npt.NDArray[Any]") -> Counted:
    return Counted(weight, *(getattr(one, field) for field in _FIELDS))


@dataclass(frozen=True)
class _Plan:
    """The candidates that the plan may try."""

    landed: Points
    lost: Points
    chance: Points
    fallback: float

    def room(self, group: str, name: str, now: float, hangs: Flags) -> Room:
        """Return how far one chance may move on which some candidates hang."""
        fixed = self.landed - self.lost
        moving = self.lost * now / self.chance
        # z = fixed + moving / chance for those that hang on it; the others' z stays.
        fixed, moving = np.where(hangs, fixed, fixed + moving / now), np.where(hangs, moving, 0.0)
        order = np.argsort(fixed + moving / now, kind="stable")
        fixed, moving = fixed[order], moving[order]
        steps = int(np.count_nonzero(fixed + moving / now < self.fallback))
        first = min(FIRST, steps)
        points = [quotient(moving, self.fallback - fixed)]
        points += [quotient(moving[at] - moving, fixed - fixed[at]) for at in range(first)]

        def keeps(chances: Points) -> Flags:
            with np.errstate(divide="ignore", invalid="ignore"):
                z = fixed + np.where(moving > 0, moving / chances[:, None], 0.0)
            z = np.where((chances[:, None] == 0) & hangs[order], _HOPELESS, z)
            rest = z[:, first:].min(axis=1, initial=_HOPELESS)
            ahead = np.concatenate([z[:, :first], np.minimum(rest, self.fallback)[:, None]], axis=1)
            in_order = (np.diff(ahead, axis=1) >= -_EQUAL).all(axis=1)
            if first < FIRST:
                in_order &= rest >= self.fallback - _EQUAL
            return np.asarray(in_order)

        return room(group, name, now, 1.0, np.concatenate(points), keeps)


_HOPELESS = 1e30
"""The price per success of what can't succeed."""
_EQUAL = 1e-9
"""Dollars by which two prices per success may differ and still count as equal."""
