"""From answers to points: the one place where a score, its range, a verdict and a chance are reckoned.

Every figure may be a number for one pair or a NumPy array for many pairs at once: the same lines serve
both, so that many pairs get to the last digit what one pair gets.

score = 100 x (1 - sum(weight x loss) / sum(weight)) over soft checks that apply and are known, with hard
checks that came out as a loss. The range holds every unknown soft check at loss 1 and at loss 0.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from matcher.finding import Finding, Outcome, Verdict
from matcher.limit import EPSILON

Figure = Any
"""A float or a bool, or an array of them: one value a pair."""
Points = npt.NDArray[np.float64]

VERDICTS = tuple(Verdict)
VERDICT_ORDER: tuple[Verdict | None, ...] = (*VERDICTS, None)
"""Best first; None is a part that is no motor."""
FITS, WITH_WORK, ASK, POOR, WONT_FIT, PART = map(
    VERDICT_ORDER.index,
    (Verdict.FITS, Verdict.FITS_WITH_WORK, Verdict.ASK, Verdict.POOR, Verdict.WONT_FIT, None),
)
"""Places in `VERDICT_ORDER`."""

LAST_USEFUL = ASK
"""Nobody should buy a candidate whose verdict stands after this one; its chance is 0."""

LOWEST_GOOD_SCORE = 60.0
WORK_FROM = 0.3
"""A loss of this much anywhere means work."""


@dataclass(frozen=True, slots=True)
class Counted:
    """What one check adds for one pair or for many."""

    weight: Figure
    """Points of the check, from the settings; an array where several settings are tried at once."""
    loss: Figure
    """0 .. 1."""
    weighs: Figure
    """Known and counting: soft and known, or hard and a loss."""
    open: Figure
    """A soft check that applies and isn't known."""
    fails: Figure
    poor: Figure
    """The verdict is at best poor."""
    asks: Figure

    @classmethod
    def of(cls, finding: Finding, weight: float) -> "Counted":
        """Return what one finding adds."""
        unknown = finding.outcome is Outcome.UNKNOWN
        return cls(
            weight=weight,
            loss=finding.loss,
            weighs=finding.outcome is Outcome.LOSS if finding.hard else not unknown,
            open=unknown and not finding.hard,
            fails=finding.outcome is Outcome.FAIL,
            poor=finding.at_best_poor,
            asks=finding.asks,
        )


@dataclass(frozen=True, slots=True)
class Tally:
    """The sums over all checks, in the order of the checks; NaN stands for a score that isn't known."""

    score: Points
    low: Points
    high: Points
    verdict: npt.NDArray[np.int8]
    """Places in `VERDICT_ORDER`."""
    minds: npt.NDArray[np.int8]
    """Small losses that stand under a "fits"; 0 with every other verdict."""


def tally(counted: Sequence[Counted]) -> Tally:
    """Add up what all checks add, and return score, range and verdict."""
    known: Figure = 0.0
    lost: Figure = 0.0
    unsure: Figure = 0.0
    fails: Figure = False
    poor: Figure = False
    asks: Figure = False
    work: Figure = False
    losses: Figure = np.int8(0)
    for one in counted:
        known = known + one.weight * one.weighs
        lost = lost + one.weight * one.loss * one.weighs
        unsure = unsure + one.weight * one.open
        fails = fails | one.fails
        poor = poor | one.poor
        asks = asks | one.asks
        work = work | (one.loss >= WORK_FROM - EPSILON)
        losses = losses + (one.loss > 0)
    score = _points(lost, known, fails)
    verdict = np.select(
        [fails, poor, asks, score < LOWEST_GOOD_SCORE - EPSILON, work],
        [WONT_FIT, POOR, ASK, POOR, WITH_WORK],
        FITS,
    ).astype(np.int8)
    return Tally(
        score,
        _points(lost + unsure, known + unsure, fails),
        _points(lost, known + unsure, fails),
        verdict,
        np.where(verdict == FITS, losses, 0).astype(np.int8),
    )


def _points(lost: Figure, weight: Figure, fails: Figure) -> Points:
    """Return points of 100: 0 for a fail, NaN where nothing weighs."""
    with np.errstate(divide="ignore", invalid="ignore"):
        points = 100 * (1 - np.divide(lost, weight))
    return np.asarray(np.where(fails, 0.0, np.where(np.asarray(weight) > 0, points, np.nan)))


def shown(points: Points) -> Points:
    """Return points rounded to a tenth as they are shown, -1 where they aren't known; orders go by these.

    A figure that lies on a limit of rounding is left to Python's exact `round`, as one pair's is.
    """
    tenths = points * 10
    rounded = np.rint(tenths) / 10
    for at in zip(*np.nonzero(np.abs(np.abs(tenths - np.trunc(tenths)) - 0.5) < 1e-6), strict=True):
        rounded[at] = round(float(points[at]), 1)
    return np.where(np.isnan(points), -1.0, rounded)
