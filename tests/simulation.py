"""Jobs in a world where the priors are true: chances told and met, and what each way of buying really costs."""

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from statistics import fmean

from world import Candidate, candidate, old_motor

from matcher.money.plan import best_plan
from matcher.money.weigh import Weighed, weigh
from matcher.settings import Settings

SETTINGS = Settings.shipped()
Tried = Sequence[tuple[Weighed, Candidate]]
BINS = 10


@dataclass
class Outcome:
    """What a number of jobs came to."""

    told: list[tuple[float, bool]] = field(default_factory=list)
    """Each candidate's chance as told, and whether it really fits and works."""
    costs: dict[str, list[float]] = field(default_factory=dict)
    """By way of buying, what each job cost."""


def planned(tried: Tried, quote: float) -> list[Weighed]:
    """Follow the plan."""
    priced = [(one.gamble, one) for one, _ in tried if one.gamble]
    plan = best_plan([gamble for gamble, _ in priced], quote)
    return [next(one for gamble, one in priced if gamble is step) for step in plan.steps]


def not_excluded(tried: Tried) -> list[Weighed]:
    """Return the candidates that may be bought at all."""
    return [one for one, _ in tried if one.judgement.verdict in ("fits", "fits_with_work", "ask")]


def cheapest(tried: Tried, quote: float) -> list[Weighed]:
    """Buy the cheapest that isn't excluded."""
    return sorted(not_excluded(tried), key=lambda one: one.landed_cost or 0)


def highest_score(tried: Tried, quote: float) -> list[Weighed]:
    """Buy the one of the highest score."""
    return sorted(not_excluded(tried), key=lambda one: -(one.judgement.score or 0))


WAYS: dict[str, Callable[[Tried, float], list[Weighed]]] = {
    "the plan": planned,
    "the cheapest, then the quote": lambda tried, quote: cheapest(tried, quote)[:1],
    "the cheapest first, one after another": cheapest,
    "the highest score, then the quote": lambda tried, quote: highest_score(tried, quote)[:1],
    "the highest score first, one after another": highest_score,
    "the quote": lambda *_: [],
}


def paid(order: Sequence[Weighed], truth: dict[str, bool], quote: float) -> float:
    """Return what one job really cost."""
    cost = 0.0
    for one in order:
        assert one.cost
        if truth[one.id]:
            return cost + one.cost.landed
        cost += one.cost.lost
    return cost + quote


def simulate(jobs: int, seed: int) -> Outcome:
    """Run a number of jobs."""
    rng = random.Random(seed)
    outcome = Outcome(costs={way: [] for way in WAYS})
    for _ in range(jobs):
        wanted = old_motor(rng)
        drawn = [candidate(rng, wanted, SETTINGS, number) for number in range(rng.randint(3, 8))]
        tried = [(weigh(wanted, one.record, SETTINGS), one) for one in drawn]
        truth = {weighed.id: one.fits and one.works for weighed, one in tried}
        outcome.told += [(weighed.fit_chance, truth[weighed.id]) for weighed, _ in tried]
        quote = round(rng.uniform(250, 1400))
        for way, order in WAYS.items():
            outcome.costs[way].append(paid(order(tried, quote), truth, quote))
    return outcome


@dataclass(frozen=True)
class Bin:
    """Candidates whose chance was told alike."""

    count: int
    told: float
    fitted: float

    @property
    def error(self) -> float:
        """Return the standard error of the share that fitted."""
        share = min(max(self.told, 1e-9), 1 - 1e-9)
        return float((share * (1 - share) / self.count) ** 0.5)


def bins(told: Sequence[tuple[float, bool]]) -> dict[int, Bin]:
    """Return the candidates by tenths of the chance told; those of no chance at all are bin -1."""
    sorted_in: dict[int, list[tuple[float, bool]]] = {}
    for chance, fits in told:
        sorted_in.setdefault(-1 if chance == 0 else min(int(chance * BINS), BINS - 1), []).append(
            (chance, fits)
        )
    return {
        at: Bin(len(ones), fmean(chance for chance, _ in ones), fmean(fits for _, fits in ones))
        for at, ones in sorted(sorted_in.items())
    }
