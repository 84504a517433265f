"""What to ask, of the seller or at home, in the order in which it matters."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache

from matcher import tables
from matcher.finding import Finding
from matcher.judging import saying
from matcher.judging.told import Told

PHOTO = "plate_photo"


@dataclass(frozen=True, slots=True)
class Question:
    """One question: the fact it is about, its words, and the check that it would settle."""

    field: str
    """A fact of the offer; `old.` before one of the old motor, `site.` before one of the place."""
    text: str
    check: str
    whom: str = "seller"
    """`seller` or `home`."""


def questions(findings: Sequence[Finding]) -> tuple[Question, ...]:
    """Return each question once: the plate photo, then what makes it `ask`, then by weight."""
    ordered = sorted(findings, key=lambda finding: (not finding.asks, -finding.weight))
    asked: dict[str, str] = {}
    for finding in ordered:
        for field in finding.questions:
            asked.setdefault(field, finding.check)
    fields = sorted(asked, key=lambda field: field != PHOTO)
    return tuple(question(field, asked[field]) for field in fields)


def question(field: str, check: str) -> Question:
    """Return the question about a fact in the words of `data/questions.tsv`."""
    row = _rows().get(field)
    if row is None:
        return Question(field, f"Could you tell me the {saying.fact(field)}?", check)
    return Question(field, row["question"], check, row["whom"])


def still_asked(question: Question, told: Told) -> Question | None:
    """Return the question as it can still be asked of a seller who told that much; `None` for not at all."""
    row = _rows().get(question.field)
    if question.whom != "seller":
        return question
    if question.field in told.unknown:
        return None
    if row is None or not told.plate_unread or not row["unread"]:
        return question
    return None if row["unread"] == "-" else replace(question, text=row["unread"])


@cache
def _rows() -> Mapping[object, tables.Row]:
    return tables.mapping("questions", lambda row: row["key"], lambda row: row)
