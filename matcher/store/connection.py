"""One connection to a store file: how it is opened, how a change becomes durable.

Every change runs between `BEGIN IMMEDIATE` and `COMMIT`; `synchronous=FULL` with a write-ahead log
means that a commit has returned only when the change is on the disk (SQLite, "PRAGMA synchronous"
and "Write-Ahead Logging").
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlite_utils import Database

APPLICATION_ID = 0x53616D65
"""Stands in the head of every store file, so that no other program's file is taken for one."""
MAGIC = b"SQLite format 3\x00"
"""The first 16 bytes of every SQLite file (SQLite, "Database File Format", 1.3.1)."""

_PRAGMAS = (
    "PRAGMA foreign_keys = ON",
    "PRAGMA synchronous = FULL",
    "PRAGMA temp_store = MEMORY",
    "PRAGMA cell_size_check = ON",
)


def _address(path: Path, mode: str) -> str:
    return f"{path.absolute().as_uri()}?mode={mode}"


def connect(path: Path | None, *, mode: str = "rwc", wait_s: float = 5.0) -> Database:
    """Open a file (`mode` as in SQLite's URIs: `ro`, `rw`, `rwc`), or a store in memory for `None`.

    The connection may be used from any thread as long as only one uses it at a time. Raises
    `sqlite3.Error`.
    """
    address = "file::memory:" if path is None else _address(path, mode)
    conn = sqlite3.connect(address, uri=True, timeout=wait_s, isolation_level=None, check_same_thread=False)
    try:
        for pragma in _PRAGMAS:
            conn.execute(pragma)
        return Database(conn, execute_plugins=False)
    except BaseException:
        conn.close()
        raise


def write_ahead(db: Database) -> None:
    """Switch to a write-ahead log; where the file system can't share memory the old journal stays."""
    db.execute("PRAGMA journal_mode = WAL").fetchone()


@contextmanager
def change(db: Database) -> Iterator[Database]:
    """Run the block as one transaction: all of it is durable at the end, or nothing happened."""
    db.execute("BEGIN IMMEDIATE")
    try:
        yield db
        db.execute("COMMIT")
    except BaseException:
        # An error such as a full disk may have ended the transaction already.
        if db.conn.in_transaction:
            db.execute("ROLLBACK")
        raise


@contextmanager
def glance(db: Database) -> Iterator[Database]:
    """Run the block on one unchanging view of the store."""
    db.execute("BEGIN")
    try:
        yield db
    finally:
        if db.conn.in_transaction:
            db.execute("ROLLBACK")


def scalar(db: Database, sql: str, parameters: tuple[object, ...] = ()) -> object:
    """Return the first column of the first row, or `None`."""
    row = db.execute(sql, parameters).fetchone()
    return row[0] if row else None


def number(db: Database, sql: str, parameters: tuple[object, ...] = ()) -> int:
    """Return the first column of the first row as a whole number, 0 where there is none."""
    value = scalar(db, sql, parameters)
    return value if isinstance(value, int) else 0
