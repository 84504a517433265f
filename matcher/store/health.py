"""Whether what stands in a store file is what was written there."""

from pathlib import Path

from sqlite_utils import Database

from matcher.store.faults import StoreDamaged

JOB_TABLES = ("migration", "job", "old_motor", "given", "listing", "correction", "entry", "change", "shelf")
"""The tables without which no job can be shown; stock and pictures are the bulk of a large store."""


def check(db: Database, path: Path | None, *, whole: bool) -> None:
    """Check the file's structure, or only that of the jobs' tables.

    Raises `StoreDamaged` or `sqlite3.Error`.
    """
    for pragma in _pragmas(db, whole=whole):
        first = str(db.execute(pragma).fetchone()[0])
        if first != "ok":
            raise StoreDamaged(f"{path}: the file is damaged ({' '.join(first.split()):.80}).")


def _pragmas(db: Database, *, whole: bool) -> list[str]:
    if whole:
        return ["PRAGMA quick_check(1)"]
    there = set(db.table_names())
    return [f"PRAGMA quick_check({name})" for name in JOB_TABLES if name in there]
