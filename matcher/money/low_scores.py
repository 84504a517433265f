"""Low scores of candidates as one weight moves: where two can change places."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from matcher.tally import Points

LARGEST_WEIGHT = 10_000.0
"""Where the search for a weight ends: 100 times all others together."""
_TENTH = 0.1 / 100
"""Shares of a score by which two scores may differ and still be shown as equal."""
_EQUAL = 1e-9
"""Points by which two scores may differ and still count as equal."""


@dataclass(frozen=True)
class LowScores:
    """Low scores of candidates as a weight w moves: 100 x (1 - (a + b w) / (c + d w))."""

    a: Points
    b: Points
    c: Points
    d: Points

    def at(self, weights: Points, which: Any) -> Points:
        """Return the scores of some candidates at some weights."""
        with np.errstate(all="ignore"):
            share = (self.a[which] + self.b[which] * weights) / (self.c[which] + self.d[which] * weights)
            return np.asarray(100 * (1 - share))

    def meets(self, one: int) -> Points:
        """Return by candidate the weights at which its score equals that of `one`, or is a tenth apart."""
        a, b, c, d = self.a, self.b, self.c, self.d
        found = []
        for apart in (-_TENTH, 0.0, _TENTH):
            squared = b * d[one] - b[one] * d - apart * d[one] * d
            linear = a * d[one] + b * c[one] - a[one] * d - b[one] * c - apart * (c[one] * d + d[one] * c)
            found.append(_roots(squared, linear, a * c[one] - a[one] * c - apart * c[one] * c))
        return np.concatenate(found)

    def rounding(self, one: int, meets: Points) -> Iterator[Points]:
        """Yield the weights at which a score is rounded otherwise, where two are less than a tenth apart."""
        inside = np.where((meets > 0) & (meets < LARGEST_WEIGHT), meets, LARGEST_WEIGHT)
        ends = np.full((1, len(self.a)), LARGEST_WEIGHT)
        stops = np.sort(np.concatenate([ends * 0, inside, ends]), axis=0)
        between = (stops[1:] + stops[:-1]) / 2
        near = np.abs(self.at(between, one) - self.at(between, slice(None))) <= 100 * _TENTH + _EQUAL
        alike = [figures == figures[one] for figures in (self.a, self.b, self.c, self.d)]
        near &= ~np.logical_and.reduce(alike) & (stops[1:] > stops[:-1])
        for at, other in zip(*np.nonzero(near), strict=True):
            for which in (one, other):
                yield self._steps(which, stops[at : at + 2, other])

    def _steps(self, which: int, ends: Points) -> Points:
        """Return the weights between two ends at which one score is halfway between two tenths."""
        low, high = np.sort(self.at(ends, which))
        if not np.isfinite([low, high]).all():
            return np.empty(0)
        halves = np.arange(np.floor(low * 10), np.ceil(high * 10) + 1) / 10 + 0.05
        share = 1 - halves / 100
        return quotient(share * self.c[which] - self.a[which], self.b[which] - share * self.d[which])


def _roots(squared: Points, linear: Points, constant: Points) -> Points:
    """Return the real roots of quadratics by column, or of lines where nothing is squared; NaN for none."""
    with np.errstate(all="ignore"):
        root = np.sqrt(linear**2 - 4 * squared * constant)
        # Both roots without the loss of digits that the schoolbook form has.
        half = -(linear + np.copysign(root, linear)) / 2
        return np.stack([half / squared, constant / half, -constant / linear])


def quotient(upper: Any, lower: Any) -> Points:
    """Divide, with NaN or infinity where nothing can be divided."""
    with np.errstate(all="ignore"):
        return np.asarray(np.divide(upper, lower), dtype=float)
