"""The offers on a shelf: a page of them, all of them for ranking, one of them corrected."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pydantic import TypeAdapter
from sqlite_utils import Database

from matcher.job import Given, Listing, Reading
from matcher.job.given import overlay
from matcher.job.listing import plain_record
from matcher.job.text import now
from matcher.motor import Offer
from matcher.plain import without_halves
from matcher.record import Record
from matcher.store.connection import change, number
from matcher.store.faults import NotInStore
from matcher.store.merge import Clash, agree
from matcher.store.numbers import bare, may_be_number, nearest, numbers_of_offer
from matcher.store.provenance import unpack
from matcher.store.search import words_query
from matcher.values import value_for

_GIVEN = TypeAdapter(dict[str, Given])
FACTS = TypeAdapter(Offer)


@dataclass(frozen=True, slots=True)
class OfferLine:
    """One offer in the list of a shelf."""

    n: int
    """Its number in the store; the record judged for it has the id `stock-<n>`."""
    shelf: str
    source_name: str
    title: str
    facts: Offer
    """What is known of it, corrections included."""


def shelf_number(db: Database, shelf: str) -> int:
    """Return the row number of a shelf. Raises `NotInStore`."""
    n = number(db, "SELECT n FROM shelf WHERE id = ?", (shelf,))
    if not n:
        raise NotInStore(f"shelf {shelf:.40}: not in this store; it may have been deleted for good.")
    return n


def offers(db: Database, shelf: str, query: str, *, after: int, limit: int) -> tuple[OfferLine, ...]:
    """Return one page of a shelf: up to `limit` offers with a number above `after`."""
    n = shelf_number(db, shelf)
    if not query.strip():
        return _lines(db, shelf, "shelf = ? AND n > ?", (n, after), limit)
    words, typed = words_query(query), bare(query)
    if not words:
        return ()
    # `words` has no quotes or operators of the user's; a number may be typed with dashes or without.
    match = f'({words}) OR (numbers : "{typed}"*)' if typed else words
    inside = "n IN (SELECT rowid FROM offer_search WHERE offer_search MATCH ? AND rowid > ?) AND shelf = ?"
    found = _lines(db, shelf, inside, (match, after, n), limit)
    return found or (_near(db, shelf, n, typed, limit) if after == 0 else ())


def _lines(
    db: Database, shelf: str, condition: str, parameters: tuple[object, ...], limit: int
) -> tuple[OfferLine, ...]:
    rows = db.execute(
        "SELECT n, source_name, title, facts, corrections FROM offer"  # noqa: S608 the condition is ours
        f" WHERE {condition} ORDER BY n LIMIT ?",
        (*parameters, limit),
    )
    return tuple(
        OfferLine(n, shelf, name, title, _corrected(facts, corrections))
        for n, name, title, facts, corrections in rows
    )


def _near(db: Database, shelf: str, n: int, typed: str, limit: int) -> tuple[OfferLine, ...]:
    if not may_be_number(typed):
        return ()
    known = db.execute("SELECT n, numbers FROM offer WHERE shelf = ? AND numbers <> ''", (n,))
    found = nearest(typed, known)[:limit]
    return _lines(db, shelf, f"n IN ({', '.join('?' * len(found))})", tuple(found), limit) if found else ()


def _corrected(facts: str, corrections: str) -> Offer:
    read = FACTS.validate_json(facts)
    return read if corrections == "{}" else overlay(read, {}, (), _GIVEN.validate_json(corrections))[0]


def records_page(
    db: Database, shelf: str, after: int, *, words: bool, limit: int = 2000
) -> tuple[tuple[Record, ...], int]:
    """Return up to `limit` offers with a number above `after` as the engine judges them, and the last number.

    Without `words` the text and the words behind the facts are left out, which is twice as fast.
    """
    what = "text, provenance" if words else "'', ''"
    rows = db.execute(
        f"SELECT n, title, facts, corrections, {what} FROM offer"  # noqa: S608 the columns are ours
        " WHERE shelf = ? AND n > ? ORDER BY n LIMIT ?",
        (shelf_number(db, shelf), after, limit),
    ).fetchall()
    return tuple(_record(*row) for row in rows), (rows[-1][0] if rows else after)


def _record(n: int, title: str, facts: str, corrections: str, text: str, provenance: str) -> Record:
    read = FACTS.validate_json(facts)
    where, conflicts = unpack(provenance, title, text)
    if corrections != "{}":
        read, where, conflicts = overlay(read, where, conflicts, _GIVEN.validate_json(corrections))
    return Record(f"stock-{n}", read, where, conflicts, title, text)


def listing(db: Database, n: int) -> Listing:
    """Return one offer as a candidate for a job, with its corrections. Raises `NotInStore`."""
    row = db.execute(
        "SELECT title, text, source_name, facts, provenance, corrections FROM offer WHERE n = ?", (n,)
    ).fetchone()
    if row is None:
        raise NotInStore(f"offer {n}: not in this store; it may have been deleted.")
    title, text, name, facts, provenance, corrections = row
    where, conflicts = unpack(provenance, title, text)
    reading = Reading(facts=FACTS.validate_json(facts), where=where, conflicts=conflicts)
    given = _GIVEN.validate_json(corrections)
    return Listing(title=title, text=text, source_name=name, reading=reading, corrections=given)


def correct(db: Database, n: int, field: str, given: Given | None, before: Given | None) -> Clash | None:
    """Correct one fact of an offer, or undo its correction (`None`).

    `before` is the correction that the caller saw; where another window changed it meanwhile, that
    stays and is returned. Raises `NotInStore`, `UnknownField` or `BadValue`.
    """
    if given is not None:
        given = given.model_copy(update={"value": value_for(Offer, field, given.value)})
    with change(db):
        row = db.execute("SELECT corrections, facts FROM offer WHERE n = ?", (n,)).fetchone()
        if row is None:
            raise NotInStore(f"offer {n}: not in this store; it may have been deleted.")
        corrections = json.loads(row[0])
        mine, seen = ((one.model_dump(mode="json") if one else None) for one in (given, before))
        if not agree(corrections.get(field), seen):
            return Clash(("offer", str(n), field), mine, corrections.get(field))
        corrections.pop(field, None)
        if mine is not None:
            corrections[field] = mine
        text = json.dumps(corrections, ensure_ascii=False)
        numbers = numbers_of_offer(_corrected(row[1], text))
        db.execute("UPDATE offer SET corrections = ?, numbers = ? WHERE n = ?", (text, numbers, n))
    return None


def remove_offers(db: Database, numbers: Iterable[int]) -> None:
    """Delete offers for good."""
    with change(db):
        db.conn.executemany("DELETE FROM offer WHERE n = ?", [(n,) for n in numbers])


def move_offers(db: Database, numbers: Iterable[int], shelf: str) -> None:
    """Put offers on another shelf, which may be a removed one. Raises `NotInStore`."""
    with change(db):
        into = shelf_number(db, shelf)
        db.conn.executemany("UPDATE offer SET shelf = ? WHERE n = ?", [(into, n) for n in numbers])
        db.execute("UPDATE shelf SET changed = ? WHERE n = ?", (now(), into))


def source_names(db: Database, shelf: str) -> dict[int, str]:
    """Return where each offer of a shelf came from, as `lot.csv#3`, by its number."""
    found = db.execute("SELECT n, source_name FROM offer WHERE shelf = ?", (shelf_number(db, shelf),))
    return dict(found.fetchall())


Likeness = tuple[str, str, str]
"""What tells two kept offers apart: the file it came from (not its place in there), title and text."""


def kept_already(db: Database) -> Counter[Likeness]:
    """Return how often each offer stands on the shelves that are not removed."""
    found = db.execute(
        "SELECT source_name, title, text FROM offer"
        " WHERE shelf IN (SELECT n FROM shelf WHERE removed IS NULL)"
    )
    return Counter(_likeness(*row) for row in found)


def not_kept(records: Iterable[Record], kept: Counter[Likeness]) -> Iterator[Record]:
    """Yield the records that are not among the kept ones; two alike need two kept ones."""
    for record in records:
        plain = plain_record(record)
        alike = _likeness(without_halves(plain.id), plain.title, plain.text)
        if kept[alike] > 0:
            kept[alike] -= 1
        else:
            yield record


def _likeness(source_name: str, title: str, text: str) -> Likeness:
    return source_name.partition("#")[0], title, text
