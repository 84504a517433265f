"""What a user entered about an arrival, as `Job.arrival` keeps it: texts as typed, also ones that can't be.

Keys: `listing` (the id of the one that was bought), `bought` and `delivered` (dates), `transit_days`,
`counted` (`back` or `sent`), `measured` and `looks` (text by name), `photos` (names), `decision`
(`keep` or `send_back`). `put_aside` holds the same of listings that were taken for the bought one before, by
their ids.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from pydantic import JsonValue

from matcher.arrival.dates import lasting
from matcher.job import Job, Listing
from matcher.job.section import texts, with_text
from matcher.job.text import safe_name

MOST_PHOTOS = 60
DECISIONS = ("keep", "send_back")
PUT_ASIDE = "put_aside"
OF_ANY_PURCHASE = ("bought", "transit_days")
"""Entries that a listing starts with when it is chosen in the place of another."""


@dataclass(frozen=True, slots=True)
class Entries:
    """Everything entered, as text; nothing of it is checked yet."""

    listing: str = ""
    bought: str = ""
    delivered: str = ""
    transit_days: str = ""
    counted: str = "back"
    measured: Mapping[str, str] = field(default_factory=dict)
    looks: Mapping[str, str] = field(default_factory=dict)
    photos: tuple[str, ...] = ()
    decision: str = ""


def entries_in(section: Mapping[str, JsonValue]) -> Entries:
    """Return what the section of a job holds; values of another kind are passed over."""
    photos = section.get("photos")
    return Entries(
        listing=_text(section, "listing"),
        bought=_text(section, "bought"),
        delivered=_text(section, "delivered"),
        transit_days=_text(section, "transit_days"),
        counted="sent" if section.get("counted") == "sent" else "back",
        measured=texts(section.get("measured")),
        looks=texts(section.get("looks")),
        photos=tuple(str(name) for name in photos) if isinstance(photos, list) else (),
        decision=_text(section, "decision") if section.get("decision") in DECISIONS else "",
    )


def _text(section: Mapping[str, JsonValue], name: str) -> str:
    value = section.get(name)
    return value.strip() if isinstance(value, str) else ""


def bought(job: Job) -> Listing | None:
    """Return the listing that was bought, `None` while nothing is chosen or it was removed."""
    chosen = entries_in(job.arrival).listing
    return next((listing for listing in job.listings if listing.id == chosen), None)


def decided(job: Job) -> dict[str, str]:
    """Return what was decided of the motors that were bought, by their ids: `keep` or `send_back`.

    One that goes back still does when another is bought after it; to keep it is then no decision any more.
    """
    aside = {one: entries_in(kept).decision for one, kept in _put_aside(job.arrival).items()}
    now = entries_in(job.arrival)
    found = {one: decision for one, decision in aside.items() if decision == "send_back"}
    found |= {now.listing: now.decision} if now.decision else {}
    return {listing.id: found[listing.id] for listing in job.listings if listing.id in found}


def with_bought(job: Job, listing_id: str) -> Job:
    """Return the job with another listing as the one that was bought, or none when the id is empty.

    What was entered belongs to the part before: it is put aside, and comes back with that part.
    """
    before = entries_in(job.arrival).listing
    if listing_id == before:
        return job
    entered = {name: value for name, value in job.arrival.items() if name not in ("listing", PUT_ASIDE)}
    aside = _put_aside(job.arrival) | ({before: entered} if before and entered else {})
    own = aside.pop(listing_id, {name: entered[name] for name in OF_ANY_PURCHASE if name in entered})
    chosen: dict[str, JsonValue] = {"listing": listing_id} if listing_id else {}
    changed = job.edited(arrival={**own, **chosen, **({PUT_ASIDE: {**aside}} if aside else {})})
    for listing in job.listings:
        decision = "bought" if listing.id == listing_id else ""
        if listing.decision in ("", "bought") and listing.decision != decision:
            changed = changed.with_listing(listing.edited(decision=decision))
    return changed


def _put_aside(section: Mapping[str, JsonValue]) -> dict[str, dict[str, JsonValue]]:
    kept = section.get(PUT_ASIDE)
    if not isinstance(kept, dict):
        return {}
    return {listing: entries for listing, entries in kept.items() if isinstance(entries, dict)}


def with_entry(job: Job, name: str, text: str) -> Job:
    """Return the job with one entry of the section as typed; emptied, it is taken out."""
    return job.edited(arrival=with_text(job.arrival, name, text))


def with_day(job: Job, name: str, text: str, today: date) -> Job:
    """Return the job with a day of the section as typed, `yesterday` and `20 Nov` with their year."""
    return with_entry(job, name, lasting(text, today))


def with_named(job: Job, group: str, name: str, text: str) -> Job:
    """Return the job with one text in `measured` or `looks`; emptied, it is taken out."""
    return job.edited(arrival={**job.arrival, group: with_text(texts(job.arrival.get(group)), name, text)})


def with_photos(job: Job, names: Sequence[str]) -> Job:
    """Return the job with pictures noted by name; the files stay where they are."""
    known = entries_in(job.arrival).photos
    every = list(dict.fromkeys([*known, *(safe_name(name) for name in names)]))[:MOST_PHOTOS]
    return job.edited(arrival={**job.arrival, "photos": every})
