"""What a buying plan says: what to try in which order, why not the ranking's, or that nothing is to try."""

from collections.abc import Mapping, Sequence

from matcher.finding import Verdict
from matcher.job import Fallback
from matcher.judging.saying import VERDICTS
from matcher.money.plan import Plan
from matcher.money.step import Step
from matcher.money.weigh import Weighed

NAMED = 3
"""So many candidates are named in the sentence; the others are counted."""
_DOUBTS: Mapping[Verdict | None, str] = {
    verdict: VERDICTS[verdict] for verdict in (Verdict.ASK, Verdict.POOR)
}
_TIMES = {1: "it fails", 2: "both fail"}


def beside(one: Weighed) -> str:
    """Return what stands behind a candidate's name, as a plan is no verdict: doubts, what is presumed."""
    words = ", ".join(filter(None, (_DOUBTS.get(one.judgement.verdict), one.proviso)))
    return f" ({words})" if words else ""


def sentence(plan: Plan, fallback: Fallback, names: Mapping[str, str], doubts: Mapping[str, str]) -> str:
    """Return what to try in which order and what that costs on average, for a plan that has steps.

    `names` and `doubts` say by id what a candidate is called and what stands behind its name.
    """
    price, count = money(fallback.price), len(plan.steps)
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


def nothing_to_try(fallback: Fallback, hopes: int, unpriced: int) -> str:
    """Return what a plan without steps says of `hopes` candidates that may fit, some without a price.

    What has no price isn't too dear: it isn't known.
    """
    price = f"{money(fallback.price)} {fallback.currency}"
    if unpriced and unpriced == hopes:
        return (
            f"No prices in {fallback.currency} are known of what may fit ({hopes}): ask for them or enter"
            f" them, then the plan weighs them against the {fallback.what}, {price}."
        )
    left = f" No price is known of {unpriced} more that may fit." if unpriced else ""
    here = "Nothing with a price" if unpriced else "Nothing here"
    return f"{here} is worth trying: pay the {fallback.what}, {price}.{left}"


def order_of(
    steps: Sequence[Step], ranking: Sequence[str], left_out: Mapping[str, str], names: Mapping[str, str]
) -> str:
    """Return why the plan doesn't follow the ranking, in one line; empty where it does.

    `ranking` holds the ids of what may fit, best first; `left_out` says by id why one isn't in the plan.
    """
    if not steps:
        return ""
    best = ranking[0]
    if best in left_out:
        return f"{names.get(best, best)} ranks first but is not in the plan. {left_out[best]}"
    by_id = {step.id: step for step in steps}
    ranked = [by_id[one] for one in ranking if one in by_id]
    for now, before in zip(steps, ranked, strict=True):
        if now is not before:
            return (
                f"By fit {names.get(before.id, before.id)} ranks before {names.get(now.id, now.id)}; the plan"
                f" goes by what a success costs: {_costs(now)}, against {_costs(before)}."
            )
    return ""


def _costs(step: Step) -> str:
    about = "~" if step.shipping_presumed else ""
    return f"{money(step.per_success)} (landed {about}{money(step.landed)}, {step.chance:.0%} likely)"


def money(amount: float) -> str:
    """Return an amount as a sentence says it: without cents, with commas.

    >>> money(1180), money(0.4)
    ('1,180', '0')
    """
    return f"{amount:,.0f}"
