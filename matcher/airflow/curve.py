"""Fan curve and system curve, and the point where they meet."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from matcher.airflow.entry import measured
from matcher.errors import BadValue

Point = tuple[float, float]
"""Airflow in CFM, static pressure in inches of water."""


@dataclass(frozen=True, slots=True)
class SystemCurve:
    """Ducts, filter and coil: static = k x flow squared, k in in. w.c. per CFM squared."""

    k: float

    @classmethod
    def through(cls, cfm: float, static_in_wc: float) -> "SystemCurve":
        """Return the curve through one measured point."""
        flow = measured("the airflow", cfm, low=0, high=200_000, unit="CFM", above=True)
        static = measured("the static", static_in_wc, low=0, high=20, unit="in. w.c.", above=True)
        return cls(static / flow**2)

    def static_in_wc(self, cfm: float) -> float:
        """Return the static that this much air takes."""
        return self.k * cfm**2


@dataclass(frozen=True, slots=True)
class FanCurve:
    """A fan's table at one speed: points by rising airflow; between them straight lines."""

    points: tuple[Point, ...]

    @classmethod
    def of(cls, points: Sequence[Point]) -> "FanCurve":
        """Return the curve through at least two points. Raises BadValue for fewer or for repeated flows."""
        ordered = tuple(sorted(points))
        if len(ordered) < 2 or len({flow for flow, _ in ordered}) < len(ordered):
            raise BadValue("a fan curve takes at least two points with different airflows")
        return cls(ordered)

    def at_speed_ratio(self, ratio: float) -> "FanCurve":
        """Return the curve at another speed by the fan laws."""
        return FanCurve(tuple((flow * ratio, static * ratio**2) for flow, static in self.points))


def operating_point(fan: FanCurve, system: SystemCurve) -> Point | None:
    """Return where fan and system meet, `None` when they don't within the fan's table.

    Each piece of the fan's table is a straight line, so the meeting is the root of a quadratic; the piece
    with the highest flow counts, where a fan runs stably.
    """
    for left, right in reversed(list(zip(fan.points, fan.points[1:], strict=False))):
        flow = _meeting_flow(left, right, system.k)
        slack = 1e-9 * right[0]  # a meeting on a point of the table belongs to both its pieces
        if flow is not None and left[0] - slack <= flow <= right[0] + slack:
            return flow, system.static_in_wc(flow)
    return None


def _meeting_flow(left: Point, right: Point, k: float) -> float | None:
    """Solve k q^2 = slope q + intercept for the straight line through two points."""
    slope = (right[1] - left[1]) / (right[0] - left[0])
    intercept = left[1] - slope * left[0]
    inside = slope**2 + 4 * k * intercept
    return (slope + math.sqrt(inside)) / (2 * k) if inside >= 0 else None
