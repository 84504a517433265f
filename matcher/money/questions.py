"""What to ask first: the question whose answer lowers the expected cost most.

The worth of a question is computed by conditioning. Before the answer the best plan costs E. If the
answer is good, which has the doubt's prior as its chance, the candidate's own chance rises by that
factor; if it is bad, the candidate leaves the plan. The worth is E less the mean of the best plans after
either answer. It is never negative: nobody has to act on an answer. Doubts are taken as independent, also
where one fact of the old motor is missing for several candidates at once.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import chain

from matcher.judging.asking import PHOTO, Question, still_asked
from matcher.judging.told import Told
from matcher.money.chance import open_doubts
from matcher.money.plan import Gamble
from matcher.money.weigh import Weighed, gamble_in
from matcher.settings import Settings

_NOTHING = Told()


@dataclass(frozen=True, slots=True)
class Worth:
    """One doubt about one candidate, what to ask about it, and what the answer is worth in money."""

    id: str
    """The candidate's id."""
    doubt: str
    """The check that can't be settled, or `same_maker_and_number`."""
    questions: tuple[Question, ...]
    worth: float
    """In the currency of the fallback."""


class Answered:
    """A plan that knows what it would cost with one of its candidates' doubts settled.

    Costs are floats, unlike the plan's own exact sums: many answers are tried, and none decides a step.
    """

    def __init__(self, gambles: Iterable[Gamble], fallback: float) -> None:
        self.fallback = fallback
        placed = [(z, gamble) for gamble in gambles if (z := _per_success(gamble)) < fallback]
        self._steps = sorted(placed, key=lambda step: step[0])
        self.now = self._cost(self._steps)

    def worth(self, asked: Gamble, prior: float) -> float:
        """Return by how much an answer about one candidate lowers the plan's mean cost.

        `prior` is the chance of a good answer, above 0 and at most 1.
        """
        good = replace(asked, chance=min(1.0, asked.chance / prior))
        others = [step for step in self._steps if step[1] is not asked]
        z = _per_success(good)
        if z >= self.fallback:
            return 0.0
        sooner = (step for step in others if step[0] <= z)
        later = (step for step in others if step[0] > z)
        with_it = self._cost(chain(sooner, [(z, good)], later))
        return max(0.0, self.now - prior * with_it - (1 - prior) * self._cost(others))

    def _cost(self, steps: Iterable[tuple[float, Gamble]]) -> float:
        cost, still_looking = 0.0, 1.0
        for _, step in steps:
            cost += still_looking * (step.chance * step.landed + (1 - step.chance) * step.lost)
            still_looking *= 1 - step.chance
            if still_looking < _NEVER:
                break
        return cost + still_looking * self.fallback


_NEVER = 1e-15
"""A chance too small to count in any sum of money."""


def _per_success(gamble: Gamble) -> float:
    if not gamble.chance > 0:
        return float("inf")
    return gamble.landed + gamble.lost * (1 - gamble.chance) / gamble.chance


def worths(
    candidates: Sequence[Weighed], fallback: float, settings: Settings, currency: str | None = None
) -> list[Worth]:
    """Return every open doubt with its worth, dearest first; candidates without a price have none.

    `currency` is the fallback's; candidates in another one take part where the settings give a rate.
    Without it every price is taken as the fallback's money.
    """
    gambles = [gamble_in(weighed, currency, settings) for weighed in candidates]
    plan = Answered(filter(None, gambles), fallback)
    found = [
        Worth(
            weighed.id,
            doubt,
            tuple(question for question in weighed.judgement.questions if question.check == doubt),
            plan.worth(gamble, settings.priors[doubt]),
        )
        for weighed, gamble in zip(candidates, gambles, strict=True)
        if weighed.fit_chance > 0 and gamble is not None
        for doubt in open_doubts(weighed.judgement)
        if settings.priors[doubt] > 0
    ]
    return sorted(found, key=lambda worth: -worth.worth)


MOST_FIRST = 4
"""Questions that a private seller answers; a longer list is put aside."""


@dataclass(frozen=True, slots=True)
class ToAsk:
    """What to ask about one candidate, each question once: the few that matter, and the rest."""

    first: tuple[Question, ...]
    more: tuple[Question, ...]


def to_ask(
    weighed: Weighed, worth: Sequence[Worth] = (), told: Told = _NOTHING, *, whom: str = "seller"
) -> ToAsk:
    """Return the questions to a seller, or to be looked at `home`, in the order in which they matter.

    A photo of the plate comes first, then what the verdict waits for, then hard facts, then by worth. What
    the seller can't tell is left out. Where nothing is hard or worth money, two stand first.
    """
    dear = {entry.doubt: entry.worth for entry in worth if entry.id == weighed.id}
    found = {finding.check: finding for finding in weighed.judgement.findings}

    def weight(question: Question) -> tuple[bool, bool, bool, float]:
        finding = found.get(question.check)
        asks, hard = bool(finding and finding.asks), bool(finding and finding.hard)
        return question.field != PHOTO, not asks, not hard, -dear.get(question.check, 0.0)

    theirs = (question for question in weighed.judgement.questions if question.whom == whom)
    still = filter(None, (still_asked(question, told) for question in theirs))
    by_text = {question.text: question for question in sorted(still, key=weight, reverse=True)}
    ordered = sorted(by_text.values(), key=weight)
    matters = [one for one in ordered if not all(weight(one)[:3]) or dear.get(one.check, 0.0) >= 1]
    count = min(MOST_FIRST, len(matters)) or 2
    return ToAsk(tuple(ordered[:count]), tuple(ordered[count:]))


def message_to_seller(
    weighed: Weighed, worth: Sequence[Worth] = (), told: Told = _NOTHING, *, whole: bool = False
) -> str:
    """Return a ready message that asks one candidate's first questions, or with `whole` all of them.

    What only a look at the old motor or its place can tell is not the seller's to answer; empty if
    nothing else is open.
    """
    asking = to_ask(weighed, worth, told)
    asked = [one.text for one in (*asking.first, *(asking.more if whole else ()))]
    if not asked:
        return ""
    what = " ".join(filter(None, (weighed.offer.brand, weighed.offer.part_number))) or "motor"
    lines = [f"{number}. {text}" for number, text in enumerate(asked, 1)]
    opening = f"Hello, I'm interested in your {what} as a replacement for one that failed."
    request = (
        "Before I buy, could you please tell me:" if len(asked) > 1 else "Before I buy, one question, please:"
    )
    return "\n".join([opening, request, "", *lines, "", "Thank you very much."])
