"""The words that stand beside marks: verdicts, outcomes and origins, ready for translation.

The engine has its own words where it speaks itself (`matcher.judging.saying`); here they are taken over,
and what only the window names is added.
"""

from collections.abc import Sequence

from PySide6.QtCore import QCoreApplication

from matcher.finding import Finding, Verdict
from matcher.judging import saying

VERDICTS = tuple(Verdict)
"""Verdicts on motors, best first."""


def _tr(text: str) -> str:
    return QCoreApplication.translate("words", text)


def verdict_word(verdict: str | None, minds: int = 0, decision: str = "") -> str:
    """Return the word of a verdict, with what is still to mind; `None` is what isn't a motor.

    What was bought and is kept or goes back says that instead of what to mind.
    """
    if decision:
        return f"{verdict_word(verdict)}, {_tr(saying.DECISIONS[decision])}"
    if verdict not in saying.VERDICTS:
        return _tr("not judged yet").capitalize()
    return _tr(saying.verdict(verdict, minds)).capitalize()


def outcome_word(found: Finding) -> str:
    """Return the words of what a check found."""
    return _tr(saying.outcome(found))


def outcome_sign(outcome: str) -> str:
    """Return the one-character sign of an outcome, readable without colour."""
    return {"same": "=", "ok": "≈", "loss": "−", "unknown": "?", "fail": "×"}.get(outcome, "")


def counted(number: int, noun: str) -> str:
    """Return a number with its noun: `1 conflict`, `7 listings`."""
    forms = {
        "listing": (_tr("listing"), _tr("listings")),
        "conflict": (_tr("conflict"), _tr("conflicts")),
        "fact": (_tr("fact"), _tr("facts")),
        "candidate": (_tr("candidate"), _tr("candidates")),
        "offer": (_tr("offer"), _tr("offers")),
        "question": (_tr("question"), _tr("questions")),
        "problem": (_tr("problem"), _tr("problems")),
    }
    one, many = forms[noun]
    return f"{number:,} {one if number == 1 else many}"


def held_already(held: int, number: int) -> str:
    """Say how many of a number of offers the job holds already and doesn't take again; empty for none."""
    if not held:
        return ""
    if held < number:
        return _tr("{:,} of {:,} stand in this job already and were not added again").format(held, number)
    if held == 1:
        return _tr("It is in this job already; nothing was added")
    return _tr("All {:,} are in this job already; nothing was added").format(held)


def first_of(problems: Sequence[str]) -> str:
    """Return the first problem and how many more there are; empty where there is none."""
    more = len(problems) - 1
    rest = _tr(" (and {} more)").format(more) if more > 0 else ""
    return problems[0] + rest if problems else ""


def origin_word(origin: str) -> str:
    """Return where a value came from, in words."""
    words = {
        "read": _tr("read from the text"),
        "typed": _tr("typed in"),
        "seen": _tr("seen in a picture"),
        "measured": _tr("measured"),
        "answered": _tr("the seller's answer"),
        "presumed": _tr("presumed"),
    }
    return words.get(origin, "")


def choice_word(field: str, value: object) -> str:
    """Return one of a field's values in words; a value that needs none is shown as it is."""
    return _tr(saying.choice(field, value))
