"""Opening a store file: ours or not, sound or damaged, writable or not.

A damaged store is set aside under another name, never written to, and what can be read of it goes
into a new one.
"""

import sqlite3
from dataclasses import dataclass
from pathlib import Path

from sqlite_utils import Database

from matcher.errors import StoreUnavailable
from matcher.files import sync_folder
from matcher.store import backups
from matcher.store.connection import APPLICATION_ID, MAGIC, connect, number, write_ahead
from matcher.store.faults import (
    NotAStore,
    StoreDamaged,
    StoreGone,
    StoreReadOnly,
    explain,
    gone,
)
from matcher.store.health import check
from matcher.store.migrations import migrate, pending
from matcher.store.rescue import finish, rebuild
from matcher.store.shelves import drop_unfinished

CHECKED_WHOLE = 64 * 1024 * 1024
"""Bytes up to which a store is checked whole on opening; of a larger one only the jobs."""


@dataclass(frozen=True, slots=True)
class Opened:
    """An open store file and what a person should be told about it."""

    db: Database
    notices: tuple[str, ...] = ()
    read_only: bool = False


def open_file(path: Path, wait_s: float) -> Opened:
    """Open, check and bring up to date the store at `path`; made where there is none.

    Raises `StoreUnavailable`, `sqlite3.Error` or `OSError`.
    """
    if not path.parent.is_dir():
        raise gone(path)
    finish(path)
    new = not path.exists()
    if not new and not _begins_right(path):
        return _rescued(path, wait_s)
    try:
        return _sound(path, wait_s, new=new)
    except StoreDamaged:
        return _rescued(path, wait_s)
    except sqlite3.Error as error:
        fault = explain(error, path)
        if isinstance(fault, StoreDamaged):
            return _rescued(path, wait_s)
        if not isinstance(fault, (StoreReadOnly, StoreGone)):
            raise
        if new:
            raise StoreReadOnly(
                f"{path.parent}: this folder may not be written. Choose another place for the store."
            ) from error
        return _read_only(path, fault)


def _begins_right(path: Path) -> bool:
    """Whether the file begins as SQLite's do. Raises `NotAStore` for a file of another kind."""
    if path.is_dir():
        raise NotAStore(f"{path}: this is a folder, not a store. Choose another name.")
    with path.open("rb") as file:
        head = file.read(len(MAGIC))
    if head == MAGIC or (not head and not backups.generations(path)):
        return True
    if not backups.generations(path) and not path.name.startswith("samespin"):
        raise NotAStore(
            f"{path}: this file is no store of Samespin; it is left as it is. Choose another name."
        )
    return False


def _sound(path: Path, wait_s: float, *, new: bool) -> Opened:
    db = connect(path, wait_s=wait_s)
    try:
        _ours(db, path)
        check(db, path, whole=path.stat().st_size <= CHECKED_WHOLE)
        if not _writable(db):
            return Opened(db, (_read_only_notice(path),), read_only=True)
        write_ahead(db)
        _bring_up_to_date(db, path)
        if new:
            sync_folder(path.parent)
        drop_unfinished(db)
    except BaseException:
        db.conn.close()
        raise
    return Opened(db)


def _ours(db: Database, path: Path) -> None:
    if number(db, "PRAGMA application_id") != APPLICATION_ID and db.table_names():
        raise NotAStore(
            f"{path}: this is another program's database; it is left as it is. Choose another name."
        )


def _writable(db: Database) -> bool:
    patience = number(db, "PRAGMA busy_timeout")
    try:
        db.execute("PRAGMA busy_timeout = 0")
        # On a file that may only be read, SQLite lets this begin and refuses the first write.
        db.execute("BEGIN IMMEDIATE")
        db.execute("PRAGMA user_version = 0")
    except sqlite3.OperationalError as error:
        # Busy is no fault: another window is saving just now.
        return not (error.sqlite_errorname or "").startswith("SQLITE_READONLY")
    finally:
        if db.conn.in_transaction:
            db.execute("ROLLBACK")
        db.execute(f"PRAGMA busy_timeout = {patience}")
    return True


def _bring_up_to_date(db: Database, path: Path) -> None:
    steps = pending(db, path)
    if steps and number(db, "SELECT count(*) FROM sqlite_master"):
        # An older store is kept as it was before its shape changes.
        backups.make(db, path)
    migrate(db, path)


def _read_only_notice(path: Path) -> str:
    return (
        f"{path}: the file may not be written. Jobs can be looked at; changes are kept in this window only"
        " until you save elsewhere."
    )


def _read_only(path: Path, fault: StoreUnavailable) -> Opened:
    """Open a file in a folder that may not be written, where SQLite can't make its side files."""
    log = path.with_name(path.name + "-wal")
    if log.exists() and log.stat().st_size:
        # What stands in the log alone would be missing from what is shown.
        raise fault
    try:
        db = connect(path, mode="ro&immutable=1")
        check(db, path, whole=False)
    except (sqlite3.Error, StoreDamaged):
        raise fault from None
    if pending(db, path):
        db.conn.close()
        raise StoreReadOnly(
            f"{path}: an older store in a place that may not be written. Copy it elsewhere and open the copy."
        )
    return Opened(db, (_read_only_notice(path),), read_only=True)


def _rescued(path: Path, wait_s: float) -> Opened:
    """Open a new store with all that could be saved of the damaged one, which is set aside."""
    told = rebuild(path)
    opened = _sound(path, wait_s, new=True)
    return Opened(opened.db, (told, *opened.notices))
