"""The buying plan: which candidates to try, in which order, and when to fall back.

Trying candidate *i* costs `landed` when it fits (and the search ends), `lost` when it doesn't. With
chance *p* of a fit, swapping two neighbours in the order shows that the cheaper order has the smaller

    z = landed + lost x (1 - p) / p

first, and that a candidate is worth trying before the fallback exactly when its z is below the
fallback's price. So the order by z, cut at the fallback, costs the least of all orders and all stopping
points. The sums are exact fractions: the answer equals an enumeration of all orders to the last digit.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Gamble:
    """One candidate as a buyer sees it; money in one currency, `chance` from 0 to 1."""

    id: str
    chance: float
    landed: float
    """What it costs when it fits."""
    lost: float
    """What is lost when it doesn't."""


@dataclass(frozen=True, slots=True)
class Plan:
    """Candidates to try in order, then the fallback."""

    steps: tuple[Gamble, ...]
    fallback: float
    expected_cost: float
    """Mean cost of following the plan, fallback included."""
    chance_of_fallback: float
    """The chance that every candidate fails and the fallback is paid."""


def price_per_success(gamble: Gamble) -> Fraction:
    """Return z, the money a candidate costs per success; the key of the best order.

    Raises ValueError for a chance of 0, which no money can turn into a success.
    """
    if not gamble.chance > 0:
        raise ValueError(f"{gamble.id}: a candidate without any chance has no place in a plan")
    chance = Fraction(gamble.chance)
    return Fraction(gamble.landed) + Fraction(gamble.lost) * (1 - chance) / chance


def expected_cost(steps: Sequence[Gamble], fallback: float) -> Fraction:
    """Return the exact mean cost of trying `steps` in this order, then paying the fallback."""
    cost, still_looking = Fraction(0), Fraction(1)
    for step in steps:
        chance = Fraction(step.chance)
        cost += still_looking * (chance * Fraction(step.landed) + (1 - chance) * Fraction(step.lost))
        still_looking *= 1 - chance
    return cost + still_looking * Fraction(fallback)


def best_plan(gambles: Iterable[Gamble], fallback: float) -> Plan:
    """Return the plan of least mean cost; ties keep the order given."""
    worth = [(price_per_success(gamble), gamble) for gamble in gambles if gamble.chance > 0]
    worth.sort(key=lambda pair: pair[0])
    steps = tuple(gamble for z, gamble in worth if z < Fraction(fallback))
    missed = Fraction(1)
    for step in steps:
        missed *= 1 - Fraction(step.chance)
    return Plan(steps, fallback, float(expected_cost(steps, fallback)), float(missed))
