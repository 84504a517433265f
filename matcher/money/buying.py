"""The buying plan of a job, as it is shown: one sentence, its steps, what was left out and why, what to ask.

Everything here is plain data; how the plan is found stands in `plan.py`.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from matcher.job import Fallback
from matcher.money.plan import Gamble, Plan, best_plan, price_per_success
from matcher.money.questions import Worth, worths
from matcher.money.weigh import Weighed, gamble_in
from matcher.settings import Settings

NAMED = 3
"""So many candidates are named in the sentence; the others are counted."""
_DOUBTS = {"ask": " (ask first)", "poor": " (poor)"}
_TIMES = {1: "it fails", 2: "both fail"}


@dataclass(frozen=True, slots=True)
class Step:
    """One candidate of the plan; money in the fallback's currency."""

    id: str
    verdict: str | None
    chance: float
    """Chance, 0 to 1, that it fits and works."""
    landed: float
    lost: float
    per_success: float
    """What it costs for each success; the plan goes up by it."""
    reached: float
    """Chance, 0 to 1, that the plan comes to this step: that all before it fail."""


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
    fallback: Fallback
    steps: tuple[Step, ...]
    expected_cost: float
    """Mean cost of following the plan, the fallback included."""
    chance_of_fallback: float
    left_out: tuple[LeftOut, ...]
    """In the order of the candidates."""
    worths: tuple[Worth, ...]
    """Open questions with what their answers are worth, dearest first."""


def buying(
    candidates: Sequence[Weighed],
    fallback: Fallback,
    settings: Settings,
    names: Mapping[str, str] | None = None,
) -> Buying:
    """Return the plan of least mean cost for weighed candidates against a fallback.

    `names` gives candidates other names than their ids in the sentence. A candidate in another currency
    takes part only where the settings' `[exchange]` gives a rate; none is ever looked up.
    """
    priced = [(one, gamble_in(one, fallback.currency, settings)) for one in candidates]
    plan = best_plan((gamble for _, gamble in priced if gamble), fallback.price)
    tried = {id(gamble) for gamble in plan.steps}
    verdicts = {id(gamble): one.judgement.verdict for one, gamble in priced}
    return Buying(
        sentence=sentence(plan, fallback, names or {}, {one.id: one.judgement.verdict for one in candidates}),
        fallback=fallback,
        steps=tuple(_steps(plan, verdicts)),
        expected_cost=plan.expected_cost,
        chance_of_fallback=plan.chance_of_fallback,
        left_out=tuple(
            LeftOut(one.id, _why(one, gamble, fallback), lacks_rate=_lacks_rate(one, gamble))
            for one, gamble in priced
            if id(gamble) not in tried
        ),
        worths=tuple(worths(candidates, fallback.price, settings, fallback.currency)),
    )


def _steps(plan: Plan, verdicts: Mapping[int, str | None]) -> Iterator[Step]:
    reached = 1.0
    for step in plan.steps:
        per_success = float(price_per_success(step))
        verdict = verdicts[id(step)]
        yield Step(step.id, verdict, step.chance, step.landed, step.lost, per_success, reached)
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


def sentence(
    plan: Plan, fallback: Fallback, names: Mapping[str, str], verdicts: Mapping[str, str | None] | None = None
) -> str:
    """Return what to try in which order and what that costs on average.

    What the rules don't let go in as it is says so beside its name: a plan is no verdict.
    """
    price, count = money(fallback.price), len(plan.steps)
    if not plan.steps:
        return f"Nothing here is worth trying: pay the {fallback.what}, {price} {fallback.currency}."
    doubts = {one: _DOUBTS.get(verdict or "", "") for one, verdict in (verdicts or {}).items()}
    order = ", then ".join(
        f"{names.get(step.id, step.id)}{doubts.get(step.id, '')}" for step in plan.steps[:NAMED]
    )
    more = f", then {count - NAMED} more" if count > NAMED else ""
    expected = f"Expected {money(plan.expected_cost)} instead of {price} {fallback.currency}."
    if not plan.chance_of_fallback:
        return (
            f"Try {order}{more}; one of them is sure. {expected}" if count > 1 else f"Buy {order}. {expected}"
        )
    failing = _TIMES.get(count, "all fail")
    return f"Try {order}{more}; if {failing}, pay the {fallback.what}. {expected}"


def money(amount: float) -> str:
    """Return an amount as a sentence says it: without cents, with commas.

    >>> money(1180), money(0.4)
    ('1,180', '0')
    """
    return f"{amount:,.0f}"
