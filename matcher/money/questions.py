"""What to ask first: the question whose answer lowers the expected cost most.

The worth of a question is computed by conditioning. Before the answer the best plan costs E. If the
answer is good, which has the doubt's prior as its chance, the candidate's own chance rises by that
factor; if it is bad, the candidate leaves the plan. The worth is E less the mean of the best plans after
either answer. It is never negative: nobody has to act on an answer.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from matcher.asking import Question
from matcher.money.chance import open_doubts
from matcher.money.plan import Gamble, best_plan, expected_cost
from matcher.money.weigh import Weighed
from matcher.settings import Settings


@dataclass(frozen=True, slots=True)
class Worth:
    """One doubt about one candidate, what to ask about it, and what the answer is worth in money."""

    id: str
    """The candidate's id."""
    doubt: str
    """The check that can't be settled, or `same_number`."""
    questions: tuple[Question, ...]
    worth: float


def worth_of_asking(gambles: Sequence[Gamble], asked: int, prior: float, fallback: float) -> float:
    """Return by how much an answer about candidate number `asked` lowers the plan's mean cost.

    `prior` is the chance of a good answer, above 0 and at most 1.
    """
    now = _cost(gambles, fallback)
    good = list(gambles)
    good[asked] = replace(good[asked], chance=min(1.0, good[asked].chance / prior))
    bad = [gamble for place, gamble in enumerate(gambles) if place != asked]
    chance = Fraction(prior)
    return float(max(now - chance * _cost(good, fallback) - (1 - chance) * _cost(bad, fallback), Fraction(0)))


def _cost(gambles: Sequence[Gamble], fallback: float) -> Fraction:
    return expected_cost(best_plan(gambles, fallback).steps, fallback)


def worths(candidates: Sequence[Weighed], fallback: float, settings: Settings) -> list[Worth]:
    """Return every open doubt with its worth, dearest first; candidates without a price have none."""
    buyable = [weighed for weighed in candidates if weighed.gamble is not None]
    gambles = [weighed.gamble for weighed in buyable if weighed.gamble is not None]
    found = [
        Worth(
            weighed.id,
            doubt,
            tuple(question for question in weighed.judgement.questions if question.check == doubt),
            worth_of_asking(gambles, place, settings.priors[doubt], fallback),
        )
        for place, weighed in enumerate(buyable)
        if weighed.fit_chance > 0
        for doubt in open_doubts(weighed.judgement)
        if settings.priors[doubt] > 0
    ]
    return sorted(found, key=lambda worth: -worth.worth)


def message_to_seller(weighed: Weighed, worth: Sequence[Worth] = ()) -> str:
    """Return a ready message that asks one candidate's questions, the dearest first."""
    dear = {entry.doubt: entry.worth for entry in worth if entry.id == weighed.id}
    questions = sorted(weighed.judgement.questions, key=lambda question: -dear.get(question.check, 0.0))
    if not questions:
        return ""
    what = " ".join(filter(None, (weighed.offer.brand, weighed.offer.part_number))) or "motor"
    asked = list(dict.fromkeys(question.text for question in questions))
    lines = [f"{number}. {text}" for number, text in enumerate(asked, 1)]
    opening = f"Hello, I'm interested in your {what} as a replacement for one that failed."
    request = (
        "Before I buy, could you please tell me:" if len(asked) > 1 else "Before I buy, one question, please:"
    )
    return "\n".join([opening, request, "", *lines, "", "Thank you very much."])
