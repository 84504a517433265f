"""The buying plan of a job, as it is shown: one sentence, its steps, what was left out and why, what to ask.

Everything here is plain data; how the plan is found stands in `plan.py`.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from matcher.job import Fallback
from matcher.money.decided import KEEP, still_to_try, what_was_decided, why_not_tried
from matcher.money.plan import Gamble, Plan, best_plan, price_per_success
from matcher.money.plan_words import beside, money, nothing_to_try, order_of, sentence
from matcher.money.questions import Worth, worths
from matcher.money.step import Step
from matcher.money.weigh import Weighed, gamble_in
from matcher.settings import Settings


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A candidate that is not in the plan, and the one sentence that says why."""

    id: str
    why: str
    lacks_rate: bool = False
    """It is in another currency, and the settings give no rate of exchange."""


@dataclass(frozen=True, slots=True)
class Buying:
    """The whole plan; money in the fallback's currency."""

    sentence: str
    order: str
    """Why it doesn't follow the ranking; empty where it does."""
    fallback: Fallback
    steps: tuple[Step, ...]
    expected_cost: float
    """Mean cost of following the plan, the fallback included."""
    chance_of_fallback: float
    left_out: tuple[LeftOut, ...]
    """In the order of the candidates, last what was bought before."""
    worths: tuple[Worth, ...]
    """Open questions with what their answers are worth, dearest first."""
    unpriced: int = 0
    """How many may fit and have no price that the plan can count with."""
    bought: str = ""
    """What is left out because it goes back, in one line; empty where nothing does."""
    is_over: bool = False
    """One was bought and is kept: nothing is left to try."""


def buying(
    candidates: Sequence[Weighed],
    fallback: Fallback,
    settings: Settings,
    names: Mapping[str, str] | None = None,
    decided: Mapping[str, str] | None = None,
) -> Buying:
    """Return the plan of least mean cost for weighed candidates, best first, against a fallback.

    `names` gives candidates other names than their ids in the sentence; `decided` says by id which of them
    were bought and are kept or go back. A candidate in another currency takes part only where the settings'
    `[exchange]` gives a rate; none is ever looked up.
    """
    called, bought = dict(names or {}), dict(decided or {})
    left = still_to_try(candidates, bought)
    priced = [(one, gamble_in(one, fallback.currency, settings)) for one in left]
    plan = best_plan((gamble for _, gamble in priced if gamble), fallback.price)
    tried = {id(gamble) for gamble in plan.steps}
    steps = tuple(_steps(plan, {id(gamble): one for one, gamble in priced}))
    left_out = tuple(
        LeftOut(one.id, _why(one, gamble, fallback), lacks_rate=_lacks_rate(one, gamble))
        for one, gamble in priced
        if id(gamble) not in tried
    )
    gone = tuple(LeftOut(one.id, why) for one in candidates if (why := why_not_tried(one.id, bought)))
    is_over, said = KEEP in bought.values(), what_was_decided(bought, called)
    hopes = [(one, gamble) for one, gamble in priced if one.fit_chance > 0]
    unpriced = sum(gamble is None for _, gamble in hopes)
    says = (
        sentence(plan, fallback, called, {one.id: beside(one) for one in left})
        if plan.steps
        else nothing_to_try(fallback, len(hopes), unpriced)
    )
    return Buying(
        sentence=said if is_over else says,
        order=order_of(steps, [one.id for one, _ in hopes], {one.id: one.why for one in left_out}, called),
        fallback=fallback,
        steps=steps,
        expected_cost=plan.expected_cost,
        chance_of_fallback=plan.chance_of_fallback,
        left_out=(*left_out, *gone),
        worths=tuple(worths(left, fallback.price, settings, fallback.currency)),
        unpriced=unpriced,
        bought="" if is_over else said,
        is_over=is_over,
    )


def _steps(plan: Plan, weighed: Mapping[int, Weighed]) -> Iterator[Step]:
    reached = 1.0
    for step in plan.steps:
        per_success = float(price_per_success(step))
        one = weighed[id(step)]
        presumed = one.cost is not None and one.cost.shipping_presumed
        verdict = one.judgement.verdict
        yield Step(step.id, verdict, step.chance, step.landed, step.lost, per_success, reached, presumed)
        reached *= 1 - step.chance


def _lacks_rate(one: Weighed, gamble: Gamble | None) -> bool:
    return gamble is None and one.cost is not None and one.fit_chance > 0


def _why(one: Weighed, gamble: Gamble | None, fallback: Fallback) -> str:
    """Say why a candidate is not worth trying."""
    if one.judgement.verdict is None:
        return one.judgement.reason
    if one.cost is None:
        return "It names no price."
    if not one.fit_chance > 0:
        return f"It has no chance: {one.judgement.reason}"
    if gamble is None:  # as `_lacks_rate` says
        return (
            f"Its price is in {one.offer.currency}, the {fallback.what} in {fallback.currency}, and no rate"
            " of exchange is given in the settings."
        )
    cost = money(float(price_per_success(gamble)))
    return f"It costs {cost} for each success, no less than the {fallback.what} of {money(fallback.price)}."
