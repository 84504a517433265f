"""The buying plan as a sentence."""

from PySide6.QtCore import QCoreApplication

from matcher.job import Fallback
from matcher.money.plan import Plan
from ui.money_words import whole_money

NAMED = 3


def _tr(text: str) -> str:
    return QCoreApplication.translate("plan", text)


def plan_sentence(plan: Plan, fallback: Fallback, names: dict[str, str]) -> str:
    """Return what to try in which order and what that costs on average."""
    if not plan.steps:
        return _tr("Nothing here is worth trying; pay the {what}: {price} {currency}.").format(
            what=fallback.what, price=whole_money(fallback.price), currency=fallback.currency
        )
    order = [names.get(step.id, "") for step in plan.steps[:NAMED]]
    tried = _tr(", then ").join(order)
    if len(plan.steps) > NAMED:
        tried += _tr(" and {} more").format(len(plan.steps) - NAMED)
    ending = _tr("if it fails") if len(plan.steps) == 1 else _tr("if all fail")
    return _tr(
        "Try {tried}; {ending}, pay the {what}. Expected cost {cost} instead of {price} {currency}."
    ).format(
        tried=tried,
        ending=ending,
        what=fallback.what,
        cost=whole_money(plan.expected_cost),
        price=whole_money(fallback.price),
        currency=fallback.currency,
    )
