"""One delivery as it stands: dates, check list, what was measured, both judgements, advice and note."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from matcher.arrival.advice import Advice, advise, advise_before
from matcher.arrival.checklist import Item, checklist, open_hard
from matcher.arrival.deadline import Deadline
from matcher.arrival.looks import Look, looks_for
from matcher.arrival.measured import Deviation, deviations, measured_record, values_in
from matcher.arrival.note import send_back_note
from matcher.arrival.section import Entries, bought, entries_in
from matcher.arrival.window import names_a_return, window_of
from matcher.job import Job
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.verdict import Judgement, judge


@dataclass(frozen=True, slots=True)
class Standing:
    """Everything that follows from one delivery's entries."""

    candidate: Record
    """As listed."""
    measured: Record
    """With the measured facts over the listed ones."""
    before: Judgement
    after: Judgement
    window: Deadline | None
    window_says: str
    """The deadline, or why there is none, as one sentence."""
    window_short: str
    """The same in a few words, for a rail."""
    items: tuple[Item, ...]
    looks: tuple[Look, ...]
    values: Mapping[str, object]
    """What was measured, by field, as values."""
    differing: tuple[Deviation, ...]
    advice: Advice
    is_decided: bool
    """The decision is made, and nothing speaks against it: the advice has nothing to add."""
    note: str
    """The note to the seller; empty while there is no reason to send it back."""
    faults: Mapping[str, str]
    """By entry (a field, or `bought`, `delivered`, `transit_days`), one line on why it doesn't count."""


def stand(
    wanted: Wanted, candidate: Record, entries: Entries, today: date, settings: Settings | None = None
) -> Standing:
    """Return how a delivery stands today; entries that can't be are named in `faults`, never raised."""
    values, faults = values_in(entries.measured)
    measured = measured_record(candidate, values)
    before, after = judge(wanted, candidate, settings), judge(wanted, measured, settings)
    found = window_of(candidate, entries, today, faults)
    items = checklist(wanted, candidate, before)
    looks = looks_for(wanted.motor, candidate.facts, dict(entries.looks))
    differing = deviations(candidate, measured, values)
    is_here = bool(entries.delivered or values or entries.photos or any(look.answer for look in looks))
    left, takes_back = tuple(open_hard(items, values)), names_a_return(candidate)
    advice = advise(after, differing, looks, left, takes_back=takes_back) if is_here else advise_before(after)
    wants_back = is_here and "send_back" in (advice.what, entries.decision) and entries.decision != "keep"
    return Standing(
        candidate=candidate,
        measured=measured,
        before=before,
        after=after,
        window=found.deadline,
        window_says=found.says,
        window_short=found.short,
        items=items,
        looks=looks,
        values=values,
        differing=differing,
        advice=advice,
        is_decided=bool(entries.decision) and advice.what in (entries.decision, "measure", "wait"),
        note=send_back_note(titled(candidate), after, differing, looks, found.deadline, entries.photos)
        if wants_back
        else "",
        faults=faults,
    )


def due(job: Job, today: date) -> str:
    """Return the return window of a job in a few words, for a list of jobs; empty where none runs.

    A motor that was kept has none any more.
    """
    entries, listing = entries_in(job.arrival), bought(job)
    if listing is None or entries.decision == "keep":
        return ""
    window = window_of(listing.record(), entries, today, {})
    return window.short if window.deadline else ""


def titled(candidate: Record) -> Record:
    """Return the candidate with a title; pasted text has none: maker and number, else its first line."""
    if candidate.title.strip() or not candidate.text.strip():
        return candidate
    facts, first = candidate.facts, candidate.text.strip().splitlines()[0]
    title = f"{facts.brand} {facts.part_number}" if facts.brand and facts.part_number else first
    return Record(
        candidate.id, candidate.facts, candidate.where, candidate.conflicts, title[:80], candidate.text
    )
