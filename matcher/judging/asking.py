"""What to ask, of the seller or at home, in the order in which it matters."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from matcher import tables
from matcher.finding import Finding
from matcher.judging import saying

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
    whom, text = _texts().get(field) or ("seller", f"Could you tell me the {saying.fact(field)}?")
    return Question(field, text, check, whom)


@cache
def _texts() -> Mapping[object, tuple[str, str]]:
    return tables.mapping("questions", lambda row: row["key"], lambda row: (row["whom"], row["question"]))
