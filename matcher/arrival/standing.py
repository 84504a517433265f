"""One delivery as it stands: dates, check list, what was measured, both judgements, advice and note."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from matcher.arrival.advice import Advice, advise
from matcher.arrival.checklist import Item, checklist, open_hard
from matcher.arrival.deadline import TRANSIT_DAYS, Counted, Deadline, check_dates, deadline
from matcher.arrival.looks import Look, looks_for
from matcher.arrival.measured import Deviation, deviations, measured_record, values_in
from matcher.arrival.note import send_back_note
from matcher.arrival.section import Entries, bought, date_in, entries_in
from matcher.errors import BadValue
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
    items: tuple[Item, ...]
    looks: tuple[Look, ...]
    values: Mapping[str, object]
    """What was measured, by field, as values."""
    differing: tuple[Deviation, ...]
    advice: Advice
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
    window, says = _window(candidate, entries, today, faults)
    items = checklist(wanted, candidate, before)
    looks = looks_for(wanted.motor, candidate.facts, dict(entries.looks))
    differing = deviations(candidate, measured, values)
    advice = advise(after, differing, looks, tuple(open_hard(items, values)))
    wants_back = "send_back" in (advice.what, entries.decision) and entries.decision != "keep"
    return Standing(
        candidate=candidate,
        measured=measured,
        before=before,
        after=after,
        window=window,
        window_says=says,
        items=items,
        looks=looks,
        values=values,
        differing=differing,
        advice=advice,
        note=send_back_note(titled(candidate), after, differing, looks, window, entries.photos)
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
    window, _says = _window(listing.record(), entries, today, {})
    return window.short if window else ""


def titled(candidate: Record) -> Record:
    """Return the candidate with a title; pasted text has none: maker and number, else its first line."""
    if candidate.title.strip() or not candidate.text.strip():
        return candidate
    facts, first = candidate.facts, candidate.text.strip().splitlines()[0]
    title = f"{facts.brand} {facts.part_number}" if facts.brand and facts.part_number else first
    return Record(
        candidate.id, candidate.facts, candidate.where, candidate.conflicts, title[:80], candidate.text
    )


def _window(
    candidate: Record, entries: Entries, today: date, faults: dict[str, str]
) -> tuple[Deadline | None, str]:
    paid, delivered = _date("bought", entries.bought, faults), _date("delivered", entries.delivered, faults)
    transit = _transit(entries.transit_days, faults)
    counted: Counted = "sent" if entries.counted == "sent" else "back"
    days = candidate.facts.return_days
    if paid is not None and paid > today:
        faults["bought"] = f"bought {paid} lies in the future; today is {today}"
        paid = None
    if delivered is None:
        return None, _waiting(days)
    try:
        check_dates(paid or delivered, delivered, today)
        window = deadline(
            bought=paid or delivered,
            delivered=delivered,
            return_days=days,
            today=today,
            transit_days=transit,
            counted=counted,
        )
    except BadValue as refused:
        faults["delivered"] = str(refused)
        return None, "The last safe day isn't known until the dates are mended."
    return window, window.says if window else _no_return(days)


def _waiting(days: int | None) -> str:
    if days:
        return f"Not delivered yet; the listing gives {days} days from delivery."
    return _no_return(days)


def _no_return(days: int | None) -> str:
    if days == 0:
        return "The listing says: no returns. Only what isn't as listed can go back."
    return "The listing doesn't say that it takes anything back: count on no return, and ask the seller."


def _date(what: str, text: str, faults: dict[str, str]) -> date | None:
    try:
        return date_in(what, text)
    except BadValue as refused:
        faults[what] = str(refused)
        return None


def _transit(text: str, faults: dict[str, str]) -> int:
    if not text:
        return TRANSIT_DAYS
    if text.isdecimal() and len(text) <= 2:
        return int(text)
    faults["transit_days"] = f"days on the way: {text!r:.40} can't be; enter whole days, such as 5"
    return TRANSIT_DAYS
