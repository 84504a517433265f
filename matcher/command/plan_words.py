"""How a buying plan and a trader's lots leave the program: as lines, or as JSON."""

from collections.abc import Iterator, Sequence
from dataclasses import asdict

from matcher.command.answers import as_json, money_words
from matcher.judging.saying import VERDICTS
from matcher.many.lots import Lots, Served
from matcher.money.buying import Buying
from matcher.money.questions import Worth
from matcher.money.room import Room

ASKED = 8
"""So many questions are printed."""
WORTH_ASKING = 0.5
"""Money below which an answer is not worth printing the question."""


def plan_lines(plan: Buying) -> Iterator[str]:
    """Yield the plan, its steps, what was left out and what to ask first."""
    currency = plan.fallback.currency
    yield plan.sentence
    yield from filter(None, [plan.order])
    for number, step in enumerate(plan.steps, 1):
        about = "~" if step.shipping_presumed else ""
        yield (
            f"  {number}. {step.id}: chance {step.chance:.0%}, {about}{step.landed:.2f} {currency} when it"
            f" fits, {about}{step.lost:.2f} lost when it doesn't"
        )
    for worth in [worth for worth in plan.worths if worth.worth >= WORTH_ASKING][:ASKED]:
        yield f"  ask about {worth.id} (worth {worth.worth:.2f} {currency}): {_asked(worth)}"
    yield from (f"  left out: {one.id}. {one.why}" for one in plan.left_out if one.lacks_rate)


def _asked(worth: Worth) -> str:
    return " ".join(question.text for question in worth.questions) or f"What settles the {worth.doubt}?"


def plan_json(plan: Buying) -> dict[str, object]:
    """Return the plan as one JSON object; money in the fallback's currency."""
    return {
        "plan": plan.sentence,
        "order": plan.order,
        "fallback": {
            "price": plan.fallback.price,
            "currency": plan.fallback.currency,
            "what": plan.fallback.what,
        },
        "expected_cost": round(plan.expected_cost, 2),
        "chance_of_fallback": round(plan.chance_of_fallback, 4),
        "steps": [_rounded(asdict(step)) for step in plan.steps],
        "left_out": [{"id": one.id, "why": one.why} for one in plan.left_out],
        "questions": [
            {"id": worth.id, "check": worth.doubt, "worth": round(worth.worth, 2), "text": _asked(worth)}
            for worth in plan.worths
        ],
    }


def _rounded(row: dict[str, object]) -> dict[str, object]:
    return {name: round(value, 4) if isinstance(value, float) else value for name, value in row.items()}


_MOVES = {
    "weights": ("weight", "the first three of the ranking"),
    "priors": ("chance", "the first three steps of the plan"),
    "condition_chances": ("chance of a part that is said to be", "the first three steps of the plan"),
}


def room_lines(rooms: Sequence[Room]) -> Iterator[str]:
    """Yield for each figure how far it may move before the order changes, those that can't change it last."""
    for room in sorted(rooms, key=lambda room: room.lowest is None and room.highest is None):
        kind, what = _MOVES[room.group]
        limits = [
            f"{side} {limit:.4g}"
            for side, limit in (("below", room.lowest), ("above", room.highest))
            if limit is not None
        ]
        changes = f"{' or '.join(limits)} {what} change" if limits else f"{what} stay whatever it is"
        yield f"{kind} {room.name.replace('_', ' ')}, now {room.now:g}: {changes}"


def lots_lines(lots: Lots) -> Iterator[str]:
    """Yield which lot to buy for which plate, what each earns on average, and the sum."""
    for one in lots.served:
        weighed, verdict = one.weighed, VERDICTS[one.weighed.judgement.verdict]
        yield (
            f"{one.wanted.id}: buy {weighed.id} ({verdict}, chance {weighed.fit_chance:.0%}), landed"
            f" {money_words(weighed)}; its owner pays {one.wanted.pays or 0:.2f}; earns {one.margin:.2f} on"
            " average"
        )
    yield from (f"{wanted.id}: no lot. {why}" for wanted, why in lots.unserved)
    yield f"Together {lots.margin:.2f} USD on average."


def served_json(one: Served) -> dict[str, object]:
    """Return one plate and its lot as JSON."""
    pays, margin = one.wanted.pays, round(one.margin, 2)
    return {"old_id": one.wanted.id, "pays": pays, "margin": margin, **as_json(one.weighed)}
