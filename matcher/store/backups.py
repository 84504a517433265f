"""Backups of the store: made beside it, checked by opening them, a bounded number of generations.

SQLite's online backup copies one consistent state while others go on reading and writing (SQLite,
"Using the SQLite Online Backup API"). A backup gets its name only when it is whole and on the disk.
"""

import os
import re
import time
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlite_utils import Database

from matcher.files import sync_folder
from matcher.store.connection import APPLICATION_ID, connect, number
from matcher.store.faults import NotAStore, locked
from matcher.store.health import check
from matcher.store.migrations import migrate, pending

EVERY = timedelta(hours=20)
"""A backup is due when the newest is older: one for each day of use."""
_NEWEST, _DAYS, _WEEKS = 3, 7, 5
MOST = _NEWEST + _DAYS + _WEEKS
"""Generations that are kept at most."""
_PATIENCE_S = 10.0
"""How long a backup waits for a lock; copying itself takes one step and isn't cut short."""
_WAITING = (5, 6)
"""SQLite's result codes BUSY and LOCKED."""
_NAME = re.compile(r"(\d{8}T\d{6})Z(?:-(\d{1,9}))?\.db")


@dataclass(frozen=True, slots=True)
class Generation:
    """One backup."""

    path: Path
    made: datetime
    """UTC, to the second."""
    size: int
    """Bytes."""


def folder(path: Path) -> Path:
    """Return the folder that holds the backups of the store at `path`."""
    return path.with_name(f"{path.stem}.backups")


def generations(path: Path) -> tuple[Generation, ...]:
    """Return the backups of a store, oldest first."""
    if not folder(path).is_dir():
        return ()
    found = []
    for file in folder(path).iterdir():
        match = _NAME.fullmatch(file.name)
        if match:
            made = datetime.strptime(match[1], "%Y%m%dT%H%M%S").replace(tzinfo=UTC)
            found.append((made, int(match[2] or 1), Generation(file, made, file.stat().st_size)))
    return tuple(generation for _, _, generation in sorted(found, key=lambda one: one[:2]))


def is_due(path: Path) -> bool:
    """Whether the newest backup is older than `EVERY`, or there is none."""
    kept = generations(path)
    return not kept or datetime.now(UTC) - kept[-1].made > EVERY


def sound(db: Database, path: Path) -> None:
    """Check that an opened backup is a whole store that this program knows. Raises `StoreUnavailable`."""
    check(db, path, whole=True)
    if number(db, "PRAGMA application_id") != APPLICATION_ID:
        raise NotAStore(f"{path}: this is no backup of a store; it is left as it is.")
    pending(db, path)


def _next_name(path: Path) -> Path:
    """Return a name that sorts after all others, those of the same second included."""
    stamp = datetime.now(UTC).strftime("%Y%m%dT%H%M%S")
    matches = (_NAME.fullmatch(file.name) for file in folder(path).iterdir())
    taken = [int(match[2] or 1) for match in matches if match and match[1] == stamp]
    return folder(path) / (f"{stamp}Z-{max(taken) + 1}.db" if taken else f"{stamp}Z.db")


def make(db: Database, path: Path, spare: Path | None = None) -> Generation:
    """Make one backup of the open store and drop the generations that are too many, but not `spare`.

    Raises `StoreUnavailable`, `sqlite3.Error` or `OSError`; what was there before stays.
    """
    folder(path).mkdir(exist_ok=True)
    draft = folder(path) / f"unfinished-{os.getpid()}.tmp"
    copy_to(db, draft, path)
    target = _next_name(path)
    draft.replace(target)
    sync_folder(target.parent)
    thin_out(path, spare)
    return next(kept for kept in generations(path) if kept.path == target)


def copy_to(db: Database, draft: Path, path: Path) -> None:
    """Copy the open store at `path` into a new file, check the copy and bring it onto the disk."""
    draft.unlink(missing_ok=True)
    try:
        copy = connect(draft)
        with closing(copy.conn):
            _copy(db, copy, path)
            # One file, with nothing beside it that could be left behind.
            copy.execute("PRAGMA journal_mode = DELETE").fetchone()
            check(copy, draft, whole=True)
        with draft.open("rb+") as file:
            os.fsync(file.fileno())
    except BaseException:
        draft.unlink(missing_ok=True)
        raise


def _copy(source: Database, target: Database, path: Path) -> None:
    """Copy all pages; a lock held by another program ends it, since SQLite's own call would wait for ever."""
    started = time.monotonic()

    def progress(status: int, _remaining: int, _total: int) -> None:
        if status in _WAITING and time.monotonic() - started > _PATIENCE_S:
            raise locked(path)

    source.conn.backup(target.conn, progress=progress)


def kept(oldest_first: Sequence[Generation]) -> set[Generation]:
    """Return which backups to keep: the newest, then the newest of each day, then of each week."""
    newest_first = oldest_first[::-1]
    days: dict[object, Generation] = {}
    weeks: dict[object, Generation] = {}
    for one in newest_first[_NEWEST:]:
        days.setdefault(one.made.date(), one)
        weeks.setdefault(one.made.isocalendar()[:2], one)
    return {*newest_first[:_NEWEST], *list(days.values())[:_DAYS], *list(weeks.values())[:_WEEKS]}


def thin_out(path: Path, spare: Path | None = None) -> None:
    """Delete the generations that are too many, but not `spare`, and drafts that were never finished."""
    there = generations(path)
    for one in set(there) - kept(there):
        if one.path != spare:
            one.path.unlink(missing_ok=True)
    for draft in folder(path).glob("unfinished-*.tmp*"):
        if datetime.now(UTC).timestamp() - draft.stat().st_mtime > EVERY.total_seconds():
            draft.unlink(missing_ok=True)


def restore(db: Database, path: Path, generation: Generation) -> Generation:
    """Put a backup in the place of everything in the open store, after backing that up as well.

    Other windows on the store see the change at once. Returns the backup of the state before.
    """
    source = connect(generation.path, mode="ro")
    with closing(source.conn):
        sound(source, generation.path)
        before = make(db, path, generation.path)
        _copy(source, db, path)
    migrate(db, path)
    return before
