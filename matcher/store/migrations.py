"""The store's shape, as named steps that each store file has taken in order.

A step runs in one transaction with the row that records it. A released step never changes; a new
shape is a new step at the end, and a store file of each release is kept under `tests/store_versions/`.
"""

from collections.abc import Callable
from pathlib import Path

from sqlite_utils import Database

from matcher.job.text import now
from matcher.store.connection import APPLICATION_ID, change
from matcher.store.faults import StoreTooNew
from matcher.store.shape import FIRST_SHAPE

Step = Callable[[Database], None]


def _first_shape(db: Database) -> None:
    for statement in FIRST_SHAPE:
        db.execute(statement)
    db.execute(f"PRAGMA application_id = {APPLICATION_ID}")


STEPS: tuple[tuple[str, Step], ...] = (("0.1.0 first shape", _first_shape),)
"""Name and step, oldest first."""


def taken(db: Database) -> tuple[str, ...]:
    """Return the names of the steps that this file has taken, in order."""
    if not db["migration"].exists():
        return ()
    return tuple(row[0] for row in db.execute("SELECT name FROM migration ORDER BY id"))


def pending(db: Database, path: Path | None = None) -> tuple[tuple[str, Step], ...]:
    """Return the steps still to take. Raises `StoreTooNew` for a step that this program doesn't know."""
    done = taken(db)
    if done != tuple(name for name, _ in STEPS[: len(done)]):
        raise StoreTooNew(
            f"{path}: a newer Samespin has written this store. Update this one; the file is left as it is."
        )
    return STEPS[len(done) :]


def migrate(db: Database, path: Path | None = None) -> tuple[str, ...]:
    """Take all pending steps, each whole or not at all, and return their names."""
    names = []
    for name, step in pending(db, path):
        with change(db):
            # Two windows may open an old store at once: the second finds the step taken.
            if name in taken(db):
                continue
            db.execute(
                "CREATE TABLE IF NOT EXISTS migration"
                " (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, taken TEXT NOT NULL)"
            )
            step(db)
            db.execute("INSERT INTO migration (name, taken) VALUES (?, ?)", (name, now()))
        names.append(name)
    return tuple(names)
