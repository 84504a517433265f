"""How far one figure may move before an order changes: found by looking outward from where it stands."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from matcher.tally import Points

Flags = npt.NDArray[np.bool_]
Keeps = Callable[[Points], Flags]
"""Tells for each value of a figure whether the order is as it is now."""


@dataclass(frozen=True, slots=True)
class Room:
    """How far one figure may move with all others as they are."""

    group: str
    """`weights`, `priors` or `condition_chances`."""
    name: str
    now: float
    lowest: float | None
    """Below this the order changes; `None`: however low it gets, it doesn't."""
    highest: float | None
    """Above this the order changes; `None`: however high it gets, it doesn't."""


def room(group: str, name: str, now: float, most: float, points: Points, keeps: Keeps) -> Room:
    """Look outward from `now`, down to 0 and up to `most`, for the first values that change the order.

    `points` are the values where it can change; between two of them it stays.
    """
    points = points[np.isfinite(points)]
    lower = np.unique(np.append(points[(points > 0) & (points < now)], 0.0))[::-1]
    upper = np.unique(np.append(points[(points > now) & (points < most)], most))
    return Room(group, name, now, _edge(now, lower, keeps), _edge(now, upper, keeps))


def _edge(now: float, points: Points, keeps: Keeps) -> float | None:
    """Return the last value that keeps the order before one of `points`, or between two, changes it."""
    stops = np.concatenate([[now], points])
    looked_at = np.empty(2 * len(stops) - 1)
    looked_at[::2], looked_at[1::2] = stops, (stops[1:] + stops[:-1]) / 2
    changed = np.flatnonzero(~keeps(looked_at))
    if not len(changed):
        return None
    if not changed[0]:
        return now
    good, bad = looked_at[changed[0] - 1], looked_at[changed[0]]
    for _ in range(4):  # each step narrows 64 times
        between = np.linspace(good, bad, 65)
        at = int(np.flatnonzero(~keeps(between))[0])
        good, bad = between[max(at - 1, 0)], between[at]
    return float(good)
