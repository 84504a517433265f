"""Saved stock: shelves of offers that any job can be ranked against."""

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from itertools import chain, islice

from sqlite_utils import Database

from matcher.job.listing import new_id, plain_record
from matcher.job.text import now
from matcher.plain import plain_text
from matcher.record import Record
from matcher.store.connection import change, number
from matcher.store.numbers import numbers_of_offer
from matcher.store.offers import FACTS, shelf_number
from matcher.store.provenance import pack

AT_ONCE = 10_000
"""Offers read from the caller before the file is locked for writing them."""
_ADDING = "adding"
INSERT = (
    "INSERT INTO offer (shelf, source_name, title, text, numbers, facts, provenance, corrections)"
    " VALUES (?, ?, ?, ?, ?, ?, ?, '{}')"
)
"""Adds one offer; its row is `row_of`."""


@dataclass(frozen=True, slots=True)
class ShelfLine:
    """One shelf in the list of shelves."""

    id: str
    name: str
    note: str
    created: str
    changed: str
    offers: int


def shelves(db: Database, *, removed: bool = False) -> tuple[ShelfLine, ...]:
    """Return the shelves, last changed first."""
    condition = f"<> '{_ADDING}'" if removed else "IS NULL"
    rows = db.execute(
        "SELECT id, name, note, created, changed,"  # noqa: S608 nothing from outside
        f" (SELECT count(*) FROM offer WHERE offer.shelf = shelf.n) FROM shelf WHERE removed {condition}"
        " ORDER BY changed DESC, n DESC"
    )
    return tuple(ShelfLine(*row) for row in rows)


def new_shelf(db: Database, name: str, note: str = "", removed: str | None = None) -> str:
    """Make an empty shelf and return its id."""
    shelf, stamp = new_id(), now()
    with change(db):
        db.execute(
            "INSERT INTO shelf (id, name, note, created, changed, removed) VALUES (?, ?, ?, ?, ?, ?)",
            (shelf, plain_text(name), plain_text(note), stamp, stamp, removed),
        )
    return shelf


def edit_shelf(db: Database, shelf: str, *, name: str, note: str, removed: bool = False) -> None:
    """Rename a shelf, or take it out of the list. Raises `NotInStore`."""
    with change(db):
        row = (plain_text(name), plain_text(note), now() if removed else None, now(), shelf_number(db, shelf))
        db.execute("UPDATE shelf SET name = ?, note = ?, removed = ?, changed = ? WHERE n = ?", row)


def row_of(shelf: int, record: Record) -> tuple[object, ...]:
    """Return an offer as the row that `INSERT` takes."""
    record = plain_record(record)
    facts = record.facts
    return (
        shelf,
        plain_text(record.id),
        record.title,
        record.text,
        numbers_of_offer(facts),
        FACTS.dump_json(facts, exclude_none=True).decode(),
        pack(record.where, record.conflicts, record.title, record.text),
    )


def add_offers(db: Database, shelf: str, records: Iterable[Record]) -> int:
    """Put offers on a shelf, all or none, and return how many; the file is locked only to write.

    More than `AT_ONCE` offers are gathered out of sight first and moved to the shelf at the end.
    """
    source = iter(records)
    batch = list(islice(source, AT_ONCE))
    more = next(source, None)
    if more is None:
        with change(db):
            return _put(db, shelf_number(db, shelf), batch)
    staging = new_shelf(db, "", removed=_ADDING)
    try:
        total = _gather(db, shelf_number(db, staging), batch, chain((more,), source))
        _move(db, staging, shelf)
    except BaseException:
        # On a full disk this fails as well; what is left stays out of sight until a later opening.
        with suppress(sqlite3.Error):
            drop_unfinished(db, staging)
        raise
    return total


def _gather(db: Database, staging: int, batch: list[Record], source: Iterator[Record]) -> int:
    total = 0
    while batch:
        with change(db):
            total += _put(db, staging, batch)
        batch = list(islice(source, AT_ONCE))
    return total


def _put(db: Database, shelf: int, batch: list[Record]) -> int:
    first = number(db, "SELECT coalesce(max(n), 0) FROM offer")
    db.conn.executemany(INSERT, (row_of(shelf, record) for record in batch))
    db.execute(
        "INSERT INTO offer_search (rowid, title, text, numbers)"
        " SELECT n, title, text, numbers FROM offer WHERE n > ?",
        (first,),
    )
    db.execute("UPDATE shelf SET changed = ? WHERE n = ?", (now(), shelf))
    return len(batch)


def _move(db: Database, staging: str, shelf: str) -> None:
    with change(db):
        out, into = shelf_number(db, staging), shelf_number(db, shelf)
        db.execute("UPDATE offer SET shelf = ? WHERE shelf = ?", (into, out))
        db.execute("UPDATE shelf SET changed = ? WHERE n = ?", (now(), into))
        db.execute("DELETE FROM shelf WHERE n = ?", (out,))


def drop_unfinished(db: Database, staging: str | None = None) -> None:
    """Throw away offers that were being added when a program ended: one lot, or all left for a day."""
    old = (
        "removed = ? AND (id = ? OR created < strftime('%Y-%m-%dT%H:%M:%SZ', 'now', '-1 day'))",
        (_ADDING, staging),
    )
    if number(db, f"SELECT count(*) FROM shelf WHERE {old[0]}", old[1]):  # noqa: S608 ours
        with change(db):
            db.execute(f"DELETE FROM shelf WHERE {old[0]}", old[1])  # noqa: S608 ours
