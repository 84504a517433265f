"""The return window of one delivery in words: entered dates, what the listing promises, what is unclear."""

from dataclasses import dataclass
from datetime import date

from matcher.arrival.dates import date_in
from matcher.arrival.deadline import (
    LONGEST_TRANSIT_DAYS,
    TRANSIT_DAYS,
    Counted,
    Deadline,
    check_dates,
    deadline,
)
from matcher.arrival.section import Entries
from matcher.errors import BadValue
from matcher.record import Record

UNCLEAR_DATES = "The last safe day isn't known until the dates are mended."


@dataclass(frozen=True, slots=True)
class Window:
    """What is known of the days to send a delivery back."""

    deadline: Deadline | None
    says: str
    """The deadline, or why there is none, as one sentence."""
    short: str
    """The same in a few words, for a rail."""


def window_of(candidate: Record, entries: Entries, today: date, faults: dict[str, str]) -> Window:
    """Return the window; entries that can't be are named in `faults`, by entry, and never raised."""
    paid = _date("bought", entries.bought, today, faults)
    delivered = _date("delivered", entries.delivered, today, faults)
    transit = _transit(entries.transit_days, faults)
    if paid is not None and paid > today:
        faults["bought"] = f"bought {paid} lies in the future; today is {today}"
        paid = None
    if delivered is not None:
        try:
            check_dates(paid or delivered, delivered, today)
        except BadValue as refused:
            faults["delivered"] = str(refused)
    if "delivered" in faults:
        return Window(None, UNCLEAR_DATES, "dates to mend")
    if delivered is None:
        return _waiting(candidate)
    counted: Counted = "sent" if entries.counted == "sent" else "back"
    found = deadline(
        bought=paid or delivered,
        delivered=delivered,
        return_days=candidate.facts.return_days,
        today=today,
        transit_days=transit,
        counted=counted,
    )
    return Window(found, found.says, found.short) if found else _without_days(candidate)


def _waiting(candidate: Record) -> Window:
    days = candidate.facts.return_days
    if days:
        says = f"Not delivered yet; the listing gives {days} days from delivery."
    else:
        says = _without_days(candidate).says
    return Window(None, says, "not delivered yet")


def names_a_return(candidate: Record) -> bool:
    """Tell whether the listing speaks of taking it back, be it without days or with two numbers of them."""
    facts = candidate.facts
    return bool(
        facts.return_days
        or "return_days" in candidate.contradicted
        or (facts.return_days is None and facts.return_shipping is not None)
    )


def _without_days(candidate: Record) -> Window:
    days = candidate.facts.return_days
    if "return_days" in candidate.contradicted:
        says = "The listing says two things about the days to return it: settle under Listings which counts."
        return Window(None, says, "return days to settle")
    if days == 0:
        says = "The listing says: no returns. Only what isn't as listed can go back."
        return Window(None, says, "no return promised")
    if names_a_return(candidate):
        says = "The listing speaks of returns but gives no days: ask the seller how many."
        return Window(None, says, "return days not told")
    says = "The listing doesn't say that it takes anything back: count on no return, and ask the seller."
    return Window(None, says, "no return promised")


def _date(what: str, text: str, today: date, faults: dict[str, str]) -> date | None:
    try:
        return date_in(what, text, today)
    except BadValue as refused:
        faults[what] = str(refused)
        return None


def _transit(text: str, faults: dict[str, str]) -> int:
    if not text:
        return TRANSIT_DAYS
    if text.isdecimal() and len(text) <= 2 and int(text) <= LONGEST_TRANSIT_DAYS:
        return int(text)
    faults["transit_days"] = (
        f"days on the way: {text!r:.40} can't be; enter whole days, {LONGEST_TRANSIT_DAYS} at most; "
        f"until then {TRANSIT_DAYS} are counted"
    )
    return TRANSIT_DAYS
