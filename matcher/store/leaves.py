"""A job taken apart into named leaves and put together again; the unit in which changes are merged.

A leaf's path is a tuple of keys: `("name",)`, `("given", "volts")`, `("arrival", "measured", "shaft")`,
`("listings", id, "body")`, `("listings", id, "corrections", "turn")`. Its value is JSON. What was read
in a listing's text follows from the text and is no leaf of its own: it travels in `Leaves.readings`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from pydantic import JsonValue

from matcher.job import Job, Listing

Path = tuple[str, ...]
PLAIN = ("name", "place", "note", "plate_text", "shelves", "fallback", "pictures")
GIVEN = ("given", "site")
SECTIONS = ("settings_changes", "triage", "arrival", "proof", "sheet_notes", "worth")
LISTING_PLAIN = ("source_name", "original", "pictures", "decision", "note")


class Absent:
    """Stands for a leaf that isn't there, which differs from one that is null."""


ABSENT = Absent()


@dataclass(slots=True)
class Leaves:
    """All leaves of one job, and the readings of its listings by listing id."""

    values: dict[Path, JsonValue] = field(default_factory=dict)
    readings: dict[str, JsonValue] = field(default_factory=dict)

    def listing_ids(self) -> list[str]:
        """Return the ids of the listings, in their order."""
        places = {path[1]: place for path, place in self.values.items() if _is_place(path)}
        return sorted(places, key=lambda key: (places[key], key))


def _is_place(path: Path) -> bool:
    return len(path) == 3 and path[0] == "listings" and path[2] == "place"


def _flat(prefix: Path, section: Mapping[str, JsonValue]) -> Iterator[tuple[Path, JsonValue]]:
    for key, value in section.items():
        if isinstance(value, dict) and value:
            yield from _flat((*prefix, key), value)
        else:
            yield (*prefix, key), value


def _listing_leaves(listing: Listing, place: int) -> Iterator[tuple[Path, JsonValue]]:
    at: Path = ("listings", listing.id)
    plain = listing.model_dump(mode="json", include=set(LISTING_PLAIN))
    yield (*at, "place"), place
    yield (*at, "body"), {"title": listing.title, "text": listing.text}
    for name in LISTING_PLAIN:
        yield (*at, name), plain[name]
    for fact, given in listing.corrections.items():
        yield (*at, "corrections", fact), given.model_dump(mode="json")


def take_apart(job: Job, places: Mapping[str, int] | None = None) -> Leaves:
    """Return the leaves of a job.

    `places` are the numbers by which its listings were ordered last time: they are kept as far as the
    order allows, so that adding one listing changes only that listing's leaves.
    """
    plain = job.model_dump(mode="json", include={*PLAIN, *SECTIONS})
    values: dict[Path, JsonValue] = {(name,): plain[name] for name in PLAIN}
    for subject in GIVEN:
        given = getattr(job, subject)
        values |= {(subject, fact): one.model_dump(mode="json") for fact, one in given.items()}
    for name in SECTIONS:
        values.update(_flat((name,), plain[name]))
    readings: dict[str, JsonValue] = {}
    for listing, place in zip(job.listings, _places(job, places or {}), strict=True):
        values.update(_listing_leaves(listing, place))
        readings[listing.id] = (
            listing.reading.model_dump(mode="json", exclude_none=True) if listing.reading else None
        )
    return Leaves(values, readings)


def _places(job: Job, known: Mapping[str, int]) -> Iterator[int]:
    last = 0
    for listing in job.listings:
        place = known.get(listing.id, 0)
        last = place if place > last else last + 1
        yield last


def places(leaves: Leaves) -> dict[str, int]:
    """Return the number by which each listing is ordered."""
    return {p[1]: v for p, v in leaves.values.items() if _is_place(p) and isinstance(v, int)}


def _put(into: dict[str, JsonValue], keys: Path, value: JsonValue) -> None:
    for key in keys[:-1]:
        below = into.setdefault(key, {})
        if not isinstance(below, dict):
            # Only a merge of two windows can lead here; the deeper entry is the fuller one.
            below = into[key] = {}
        into = below
    into[keys[-1]] = value


def put_together(leaves: Leaves, head: Mapping[str, str]) -> dict[str, JsonValue]:
    """Return the job's document (what `Job.model_validate` takes); `head` holds id, created, changed."""
    document: dict[str, JsonValue] = {**head, **{name: {} for name in (*GIVEN, *SECTIONS)}}
    listings: dict[str, dict[str, JsonValue]] = {}
    for path, value in leaves.values.items():
        if path[0] == "listings":
            _put(listings.setdefault(path[1], {"id": path[1], "corrections": {}}), path[2:], value)
        else:
            _put(document, path, value)
    document["listings"] = [_listing(listings[key], leaves.readings.get(key)) for key in leaves.listing_ids()]
    return document


def _listing(parts: dict[str, JsonValue], reading: JsonValue) -> JsonValue:
    body = parts.pop("body", {})
    parts.pop("place", None)
    return {**parts, **(body if isinstance(body, dict) else {}), "reading": reading}
