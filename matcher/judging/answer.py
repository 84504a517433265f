"""What the rules inside one check answer, and how several answers make one finding.

A fail beats an unknown, an unknown beats a loss, a loss beats ok, ok beats same; of several losses the
largest counts. In a soft check a known loss beats an unknown.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from matcher.finding import Finding, Outcome

_HARD = {Outcome.SAME: 0, Outcome.OK: 1, Outcome.LOSS: 2, Outcome.UNKNOWN: 3, Outcome.FAIL: 4}
_SOFT = _HARD | {Outcome.UNKNOWN: 2, Outcome.LOSS: 3}
COMMON = "common practice"


@dataclass(frozen=True, slots=True)
class Answer:
    """What one rule answers; the fields are those of `Finding`."""

    outcome: Outcome
    why: str
    loss: float = 0.0
    at_best_poor: bool = False
    questions: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()


def same(why: str) -> Answer:
    """Answer that both are equal."""
    return Answer(Outcome.SAME, why)


def ok(why: str, *questions: str) -> Answer:
    """Answer that they differ harmlessly; a question may remain."""
    return Answer(Outcome.OK, why, questions=questions)


def loses(loss: float, why: str, *needs: str, poor: bool = False) -> Answer:
    """Answer that the difference costs points: `loss` 0 .. 1, with the swap costs that it brings."""
    return Answer(Outcome.LOSS, why, loss=min(1.0, loss), at_best_poor=poor, needs=needs)


def unknown(why: str, *questions: str) -> Answer:
    """Answer that a fact is missing, with what to ask."""
    return Answer(Outcome.UNKNOWN, why, questions=questions)


def fails(why: str) -> Answer:
    """Answer that it can't be used."""
    return Answer(Outcome.FAIL, why)


def _ordered(answers: Sequence[Answer], *, hard: bool) -> list[Answer]:
    rank = _HARD if hard else _SOFT
    return sorted(answers, key=lambda answer: (-rank[answer.outcome], -answer.loss))


def worst(answers: Sequence[Answer], *, hard: bool) -> Answer:
    """Return the answer that counts among several things that one check looks at."""
    return answers[0] if len(answers) == 1 else _ordered(answers, hard=hard)[0]


def finding(
    check: str,
    answers: Answer | Sequence[Answer],
    *,
    hard: bool = False,
    source: str = COMMON,
    values: tuple[str, str] = ("", ""),
    presumed: tuple[str, ...] = (),
) -> Finding:
    """Make the finding of a check from the answers of its rules; `values` are the old and the new one's."""
    ordered = [answers] if isinstance(answers, Answer) else _ordered(answers, hard=hard)
    first = ordered[0]
    losing = [answer for answer in ordered if answer.loss > 0] if first.outcome is Outcome.LOSS else []
    return Finding(
        check=check,
        outcome=first.outcome,
        why=_sentences(ordered),
        source=source,
        old=values[0],
        new=values[1],
        loss=first.loss,
        hard=hard,
        at_best_poor=any(answer.at_best_poor for answer in losing),
        asks=hard and first.outcome is Outcome.UNKNOWN,
        questions=_each_once(name for answer in ordered for name in answer.questions),
        needs=_each_once(name for answer in losing for name in answer.needs),
        presumed=presumed,
    )


def asking(found: Finding) -> Finding:
    """Let a soft check's unknown alone make the verdict `ask`."""
    return replace(found, asks=True) if found.outcome is Outcome.UNKNOWN else found


def _sentences(ordered: Sequence[Answer]) -> str:
    """Join the deciding answer's words with those of other answers that are not harmless."""
    first, *others = ordered
    if first.outcome is Outcome.FAIL:
        return first.why
    more = [a.why for a in others if a.outcome in (Outcome.LOSS, Outcome.UNKNOWN)]
    return " ".join(dict.fromkeys([first.why, *more[:1]]))


def _each_once(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))
