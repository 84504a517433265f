"""Which listings a job holds already: one motor that is for sale once must not count as two chances."""

from collections.abc import Iterable

from matcher.job.document import Job, Listing
from matcher.motor import Offer


def not_held(job: Job, listings: Iterable[Listing]) -> tuple[Listing, ...]:
    """Return the listings that don't stand in the job yet, each of them once.

    Two are the same where title, text and what was read in them are; blanks and what people corrected
    don't count. Rows of a table may have no words at all: then the facts alone tell.
    """
    known: dict[tuple[str, str], list[Offer]] = {}
    for listing in job.listings:
        known.setdefault(_words(listing), []).append(listing.current_reading().facts)
    fresh = []
    for listing in listings:
        alike, facts = known.setdefault(_words(listing), []), listing.current_reading().facts
        if facts not in alike:
            alike.append(facts)
            fresh.append(listing)
    return tuple(fresh)


def _words(listing: Listing) -> tuple[str, str]:
    return " ".join(listing.title.split()), " ".join(listing.text.split())
