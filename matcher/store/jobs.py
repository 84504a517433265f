"""Jobs in the store: load, save with merging, take away and bring back, the history of one."""

import json
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import NamedTuple

from pydantic import JsonValue, ValidationError
from sqlite_utils import Database

from matcher.job import Job
from matcher.job.text import STAMP_FORM, now
from matcher.refusal import first_fault
from matcher.store.connection import change, glance, number
from matcher.store.faults import NotInStore, StoreDamaged
from matcher.store.leaves import ABSENT, Leaves, Path, places, put_together, take_apart
from matcher.store.merge import Clash, merge
from matcher.store.rows import dumps, read_leaves, write_job, write_leaves

LOGGED = timedelta(days=90)
"""How long a change stays in the log at least: no window is open for so long on an older version."""
LEAST_LOGGED = 500
"""The newest entries of a job that stay, however old they are."""


class Held(NamedTuple):
    """A job as the store holds it, and the version to hand back when saving it."""

    job: Job
    version: int


@dataclass(frozen=True, slots=True)
class Saved:
    """What a save left in the store: the job with the other window's changes merged in."""

    job: Job
    version: int
    clashes: tuple[Clash, ...] = ()
    """What both windows changed differently; the store kept the other window's values."""


@dataclass(frozen=True, slots=True)
class Change:
    """One entry of the log: a value of a job became another."""

    n: int
    """Number in the log of the whole store, rising."""
    job: str
    version: int
    changed_at: str
    path: Path
    """Empty for the job itself: it was added, removed or brought back."""
    old: JsonValue = None
    new: JsonValue = None


@dataclass(frozen=True, slots=True)
class _Row:
    n: int
    version: int
    created: str
    changed: str


def _row(db: Database, job_id: str) -> _Row | None:
    row = db.execute("SELECT n, version, created, changed FROM job WHERE id = ?", (job_id,)).fetchone()
    return _Row(*row) if row else None


def _job(leaves: Leaves, job_id: str, row: _Row) -> Job:
    head = {"id": job_id, "created": row.created, "changed": row.changed}
    try:
        return Job.model_validate(put_together(leaves, head))
    except ValidationError as fault:
        raise StoreDamaged(
            f"job {job_id}: {first_fault(fault)}. Restore it from a backup, or export and mend it."
        ) from None


def load(db: Database, job_id: str) -> Held:
    """Return a job. Raises `NotInStore`."""
    with glance(db):
        row = _row(db, job_id)
        if row is None:
            raise NotInStore(f"job {job_id:.40}: not in this store; it may have been deleted for good.")
        try:
            leaves = read_leaves(db, row.n)
        except (ValueError, KeyError, TypeError) as fault:
            raise StoreDamaged(
                f"job {job_id}: it can't be read ({fault}). Restore it from a backup."
            ) from None
        return Held(_job(leaves, job_id, row), row.version)


def save(db: Database, job: Job, base: int, writer: str) -> Saved:
    """Save what changed in `job` since version `base` (0 for a job that was never saved)."""
    with change(db):
        row = _row(db, job.id) or _add(db, job)
        theirs = read_leaves(db, row.n)
        start = theirs if base == row.version else _rolled_back(db, job.id, theirs, base)
        mine = take_apart(job, places(start) | places(theirs))
        merged = merge(start, theirs, mine)
        read = [key for key, text in merged.leaves.readings.items() if text != theirs.readings.get(key)]
        if not merged.changed and not read and row.version:
            return Saved(_job(merged.leaves, job.id, row), row.version, merged.clashes)
        after = _Row(row.n, row.version + 1, row.created, now())
        write_leaves(db, row.n, merged.leaves, merged.changed, read)
        db.execute(
            "UPDATE job SET version = ?, changed = ? WHERE n = ?", (after.version, after.changed, row.n)
        )
        _log(db, job.id, after, merged.changed, writer)
    return Saved(_job(merged.leaves, job.id, after), after.version, merged.clashes)


def exists(db: Database, job_id: str) -> bool:
    """Whether the store has a job of that id, removed ones included."""
    return _row(db, job_id) is not None


def overwrite(db: Database, job: Job, writer: str) -> Saved:
    """Save a job as it is, whatever other windows made of it."""
    row = _row(db, job.id)
    return save(db, job, row.version if row else 0, writer)


def index(db: Database, n: int) -> None:
    """Make the job with row number `n` findable again."""
    write_job(db, n, read_leaves(db, n))


def replace(db: Database, job: Job, writer: str = "") -> Saved:
    """Put a job in the place of whatever the store holds under its id."""
    with change(db):
        db.execute("DELETE FROM job_search WHERE rowid IN (SELECT n FROM job WHERE id = ?)", (job.id,))
        db.execute("DELETE FROM job WHERE id = ?", (job.id,))
    return save(db, job, 0, writer)


def _add(db: Database, job: Job) -> _Row:
    row = db.execute(
        "INSERT INTO job (id, version, name, place, note, created, changed, shelves, fallback, pictures)"
        " VALUES (?, 0, '', '', '', ?, ?, '[]', 'null', '[]') RETURNING n, version, created, changed",
        (job.id, job.created, now()),
    ).fetchone()
    db.execute("INSERT INTO old_motor (job, plate_text) VALUES (?, '')", (row[0],))
    db.execute("INSERT INTO job_search (rowid) VALUES (?)", (row[0],))
    return _Row(*row)


def _log(db: Database, job_id: str, row: _Row, changed: dict[Path, object], writer: str) -> None:
    added = {p[1] for p, old in changed.items() if p[0] == "listings" and p[2] == "body" and old is ABSENT}
    olds: dict[Path, object] = {("listings", listing): ABSENT for listing in added}
    olds |= {path: old for path, old in changed.items() if path[0] != "listings" or path[1] not in added}
    if row.version == 1:
        olds = {(): ABSENT}
    db.conn.executemany(
        "INSERT INTO change (job, version, changed_at, writer, path, old) VALUES (?, ?, ?, ?, ?, ?)",
        [
            (job_id, row.version, row.changed, writer, dumps(path), None if old is ABSENT else dumps(old))
            for path, old in olds.items()
        ],
    )


def _undo(leaves: Leaves, path: Path, old: str | None) -> None:
    if old is not None:
        leaves.values[path] = json.loads(old)
        return
    for inside in [key for key in leaves.values if key[: len(path)] == path]:
        del leaves.values[inside]


def _rolled_back(db: Database, job_id: str, theirs: Leaves, base: int) -> Leaves:
    """Return the leaves as they were in version `base`; version 0 had none."""
    before = Leaves(dict(theirs.values), dict(theirs.readings))
    for path, old in db.execute(
        "SELECT path, old FROM change WHERE job = ? AND version > ? ORDER BY n DESC", (job_id, base)
    ):
        _undo(before, tuple(json.loads(path)), old)
    return before


def mark_removed(db: Database, job_id: str, *, removed: bool, writer: str) -> None:
    """Take a job out of the list, or bring it back; nothing of it is deleted. Raises `NotInStore`."""
    with change(db):
        row = _row(db, job_id)
        if row is None:
            raise NotInStore(f"job {job_id:.40}: not in this store.")
        db.execute("UPDATE job SET removed = ? WHERE n = ?", (now() if removed else None, row.n))
        db.execute(
            "INSERT INTO change (job, version, changed_at, writer, path, old) VALUES (?, ?, ?, ?, '[]', ?)",
            (job_id, row.version, now(), writer, dumps("there" if removed else "removed")),
        )


def trim_log(db: Database) -> None:
    """Drop what no window can still need to merge, and what nobody looks back to any more.

    Each job keeps its newest `LEAST_LOGGED` entries and all of the last `LOGGED`.
    """
    before = (datetime.now(UTC) - LOGGED).strftime(STAMP_FORM)
    with change(db):
        db.execute(
            "DELETE FROM change WHERE changed_at < ? AND n IN (SELECT n FROM"
            " (SELECT n, row_number() OVER (PARTITION BY job ORDER BY n DESC) AS place FROM change)"
            " WHERE place > ?)",
            (before, LEAST_LOGGED),
        )


def latest(db: Database) -> int:
    """Return the number of the newest entry of the log, 0 where there is none."""
    return number(db, "SELECT max(n) FROM change")


def changes_since(db: Database, n: int, writer: str) -> tuple[Change, ...]:
    """Return what other windows changed after entry `n` of the log, oldest first, without values."""
    rows = db.execute(
        "SELECT n, job, version, changed_at, path FROM change WHERE n > ? AND writer <> ? ORDER BY n",
        (n, writer),
    )
    return tuple(Change(row[0], row[1], row[2], row[3], tuple(json.loads(row[4]))) for row in rows)


def log(db: Database, job_id: str, limit: int = 1000) -> tuple[Change, ...]:
    """Return the newest `limit` entries of a job's log, newest first, with old and new values."""
    with glance(db):
        row = _row(db, job_id)
        if row is None:
            raise NotInStore(f"job {job_id:.40}: not in this store.")
        leaves = read_leaves(db, row.n)
        rows = db.execute(
            "SELECT n, job, version, changed_at, path, old FROM change WHERE job = ? ORDER BY n DESC LIMIT ?",
            (job_id, limit),
        ).fetchall()
    entries = []
    for n, job, version, at, text, old in rows:
        path = tuple(json.loads(text))
        new = leaves.values.get(path)
        if path:
            _undo(leaves, path, old)
        entries.append(Change(n, job, version, at, path, json.loads(old) if old else None, new))
    return tuple(entries)
