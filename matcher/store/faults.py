"""What can go wrong with the store, each as one line: what happened, to which file, what to do.

Whatever is raised here, the caller still holds the job in memory: nothing of it was half written.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from matcher.errors import SamespinError, StoreUnavailable


class StoreFull(StoreUnavailable):
    """No room to write."""


class StoreReadOnly(StoreUnavailable):
    """The file, or the folder it lies in, may not be written."""


class StoreLocked(StoreUnavailable):
    """Another program holds the file for itself."""


class StoreGone(StoreUnavailable):
    """The file or its folder isn't there any more, or can't be reached."""


class StoreFailing(StoreUnavailable):
    """The disk refused to read or write."""


class StoreDamaged(StoreUnavailable):
    """What stands in the file isn't what was written there."""


class StoreTooNew(StoreUnavailable):
    """A newer program has written it."""


class NotAStore(StoreUnavailable):
    """A file that holds something else; it is left alone."""


class AlreadyThere(StoreUnavailable):
    """A file stands where a new store was to go; it is left alone."""


class NotInStore(SamespinError):
    """The store has no job, shelf, offer or file of that id; it can be read all the same."""


_KEPT = "Your work is kept in this window"
_ELSEWHERE = "and try again, or save elsewhere"
_FULL = f"no room left to save. {_KEPT}: free some room {_ELSEWHERE}."
_READ_ONLY = f"the file may not be written. {_KEPT}: allow writing {_ELSEWHERE}."
_LOCKED = f"another program is using the file. {_KEPT}: close the other one {_ELSEWHERE}."
_GONE = f"the file or its folder can't be reached. {_KEPT}: bring it back {_ELSEWHERE}."
_FAILING = f"the disk refused to read or write (it may be full or failing). {_KEPT}: make room {_ELSEWHERE}."
_DAMAGED = f"the file is damaged. {_KEPT}: open the store again, and what can be saved goes into a new one."

_BY_NAME: tuple[tuple[str, type[StoreUnavailable], str], ...] = (
    # SQLite's result codes; the first whose name the error's name starts with counts.
    ("SQLITE_FULL", StoreFull, _FULL),
    ("SQLITE_READONLY_DBMOVED", StoreGone, _GONE),
    ("SQLITE_READONLY", StoreReadOnly, _READ_ONLY),
    ("SQLITE_PERM", StoreReadOnly, _READ_ONLY),
    ("SQLITE_BUSY", StoreLocked, _LOCKED),
    ("SQLITE_LOCKED", StoreLocked, _LOCKED),
    ("SQLITE_CANTOPEN", StoreGone, _GONE),
    ("SQLITE_IOERR", StoreFailing, _FAILING),
    ("SQLITE_CORRUPT", StoreDamaged, _DAMAGED),
    ("SQLITE_NOTADB", StoreDamaged, _DAMAGED),
)


def explain(error: sqlite3.Error, path: Path | None) -> StoreUnavailable:
    """Return what a person should be told of SQLite's error on the store at `path`."""
    name = getattr(error, "sqlite_errorname", "") or ""
    where = str(path) if path else "the store in memory"
    for start, kind, line in _BY_NAME:
        if name.startswith(start):
            return kind(f"{where}: {line}")
    return StoreUnavailable(f"{where}: the store refused ({error}). {_KEPT}: try again, or save elsewhere.")


def gone(path: Path) -> StoreGone:
    """Return the message for a store whose file was moved or deleted while it was open."""
    return StoreGone(f"{path}: {_GONE}")


def locked(path: Path) -> StoreLocked:
    """Return the message for a store that another program holds for too long."""
    return StoreLocked(f"{path}: {_LOCKED}")


@contextmanager
def told(path: Path | None) -> Iterator[None]:
    """Turn SQLite's and the system's errors inside the block into a `StoreUnavailable`."""
    try:
        yield
    except sqlite3.Error as error:
        raise explain(error, path) from error
    except OSError as error:
        reason = error.strerror or str(error)
        raise StoreFailing(f"{path}: {reason}. {_KEPT}: try again, or save elsewhere.") from error
