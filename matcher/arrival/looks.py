"""What to look at on arrival beside the measuring: `data/arrival_looks.tsv` for this pair of motors."""

from dataclasses import dataclass

from matcher.judging.presume import is_electronic
from matcher.motor import Motor, Offer
from matcher.tables import Row, rows

GOOD, BAD = "ok", "bad"


@dataclass(frozen=True, slots=True)
class Look:
    """One thing to look at; the answer is `ok`, `bad`, or nothing yet."""

    name: str
    question: str
    how: str
    bad: str
    """What is wrong when the answer is bad, as the note to the seller says it."""
    source: str
    answer: str = ""
    decides: bool = True
    """A bad answer alone is reason to send it back."""


def looks_for(old: Motor, new: Offer, answers: dict[str, str]) -> tuple[Look, ...]:
    """Return what to look at for this pair, with the answers so far."""
    return tuple(_look(row, answers) for row in rows("arrival_looks") if _applies(row["for"], old, new))


def _applies(kind: str, old: Motor, new: Offer) -> bool:
    if kind == "ecm":
        return bool(is_electronic(old) or is_electronic(new))
    if kind == "without":
        return new.module == "without"
    if kind == "used":
        return new.condition not in ("new", "open_box")
    return True


def _look(row: Row, answers: dict[str, str]) -> Look:
    answer = answers.get(row["name"], "")
    return Look(
        row["name"],
        row["question"],
        row["how"],
        row["bad"],
        row["source"],
        answer if answer in (GOOD, BAD) else "",
        row["decides"] == "yes",
    )
