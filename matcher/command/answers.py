"""How ranked candidates leave the program: a JSON line each, a table, or one candidate explained."""

from collections.abc import Iterable, Sequence

from matcher.finding import Finding
from matcher.judging.saying import verdict
from matcher.money.weigh import Weighed


def as_json(weighed: Weighed) -> dict[str, object]:
    """Return one candidate in the shape that the contract fixes."""
    judgement = weighed.judgement
    return {
        "id": weighed.id,
        "verdict": judgement.verdict,
        "score": _rounded(judgement.score, 1),
        "score_low": _rounded(judgement.score_low, 1),
        "score_high": _rounded(judgement.score_high, 1),
        "fit_chance": _rounded(weighed.fit_chance, 4),
        "landed_cost": _rounded(weighed.landed_cost, 2),
        "findings": [_finding(finding) for finding in judgement.findings],
        "questions": [question.text for question in judgement.questions],
        "notes": [*_notes(weighed)],
    }


def _notes(weighed: Weighed) -> Iterable[str]:
    if weighed.judgement.verdict is None:
        yield weighed.judgement.reason
    if weighed.proviso:
        yield f"The chance holds {weighed.proviso}."
    yield from weighed.judgement.notes


def _finding(finding: Finding) -> dict[str, object]:
    return {
        "check": finding.check,
        "outcome": finding.outcome.value,
        "loss": round(finding.loss, 4),
        "weight": finding.weight,
        "old": finding.old,
        "new": finding.new,
        "why": finding.why,
        "source": finding.source,
    }


def _rounded(value: float | None, digits: int) -> float | None:
    return None if value is None else round(value, digits)


def range_words(weighed: Weighed) -> str:
    """Return the score range as people read it: `71-95`, or `95` where nothing widens it."""
    low, high = weighed.judgement.score_low, weighed.judgement.score_high
    if low is None or high is None:
        return "-"
    return f"{low:.0f}" if round(low) == round(high) else f"{low:.0f}-{high:.0f}"


def money_words(weighed: Weighed) -> str:
    """Return the landed cost with its currency, a dash when the listing names no price."""
    if weighed.cost is None:
        return "-"
    presumed = "~" if weighed.cost.shipping_presumed else ""
    return f"{presumed}{weighed.cost.landed:.2f} {weighed.offer.currency or ''}".rstrip()


def print_table(ranking: Sequence[Weighed], title: str = "", old_ids: Sequence[str] = ()) -> None:
    """Print candidates best first; with `old_ids` (one a row) for which old motor each one is meant."""
    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    table = Table(title=title or None, title_justify="left", expand=False)
    if old_ids:
        table.add_column("old motor", overflow="fold")
    table.add_column("candidate", overflow="fold")
    table.add_column("verdict", no_wrap=True)
    table.add_column("score", justify="right", no_wrap=True)
    table.add_column("landed", justify="right", no_wrap=True)
    table.add_column("the reason that matters most", ratio=1)
    for number, weighed in enumerate(ranking):
        words = [
            weighed.id,
            verdict(weighed.judgement.verdict, weighed.judgement.minds),
            range_words(weighed),
            money_words(weighed),
            weighed.judgement.reason,
        ]
        # Text, not markup: a listing's words must not be taken for styling.
        table.add_row(*(Text(word) for word in ([old_ids[number]] if old_ids else []) + words))
    Console(width=None).print(table)


def explanation(weighed: Weighed) -> Iterable[str]:
    """Yield every finding of one candidate with its source, as lines."""
    judgement = weighed.judgement
    yield f"{weighed.id}: {verdict(judgement.verdict, judgement.minds)}, score {range_words(weighed)}"
    yield f"  {judgement.reason}"
    chance = f"{weighed.fit_chance:.0%} {weighed.proviso}".rstrip()
    yield f"  chance {chance}, landed {money_words(weighed)}"
    for note in judgement.notes:
        yield f"  note: {note}"
    for finding in judgement.findings:
        points = f" (costs {finding.loss * finding.weight:.1f} points)" if finding.loss else ""
        yield f"  {finding.check}: {finding.outcome.value}{points}"
        yield f"    {finding.why}"
        yield f"    old: {finding.old or 'not known'}; new: {finding.new or 'not known'}"
        yield f"    source: {finding.source}"
    for number, question in enumerate(judgement.questions, 1):
        yield f"  ask {number}: {question.text}"
    for note in weighed.cost.notes if weighed.cost else ():
        yield f"  money: {note}"
