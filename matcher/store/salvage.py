"""Reading what can still be read of a damaged store; the damaged file is never written to.

Row by row, what is whole is given out; where a stretch of a table can't be read it is stepped over.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from sqlite_utils import Database

from matcher.files import sync_folder
from matcher.job.text import now

KEYS = {
    # Parents before children, since a child without its parent can't be kept.
    "job": "n",
    "old_motor": "job",
    "given": "n",
    "listing": "n",
    "correction": "n",
    "entry": "n",
    "change": "n",
    "shelf": "n",
    "offer": "n",
    "attachment": "n",
}
"""The tables and the column that orders each."""
_SIDE_FILES = ("", "-wal", "-shm")
_LAST = 2**62


def set_aside(path: Path) -> Path:
    """Rename a damaged store with its side files, so that nothing ever writes to it again."""
    stamp = now().replace(":", "").replace("-", "")
    kept = path.with_name(f"{path.stem}.damaged-{stamp}{path.suffix}")
    for n in range(2, 1000):
        if not kept.exists():
            break
        kept = path.with_name(f"{path.stem}.damaged-{stamp}-{n}{path.suffix}")
    for side in _SIDE_FILES:
        with suppress(FileNotFoundError):
            path.with_name(path.name + side).rename(kept.with_name(kept.name + side))
    sync_folder(path.parent)
    return kept


def readable(old: Database, table: str, names: list[str]) -> Iterator[tuple[object, ...] | None]:
    """Yield the rows that can be read in the order of their keys, `None` for each stretch that can't."""
    key = KEYS[table]
    sql = f"SELECT {', '.join(names)} FROM {table} WHERE {key} > ? ORDER BY {key}"  # noqa: S608 ours
    at, last = names.index(key), -1
    while last < _LAST:
        try:
            for row in old.execute(sql, (last,)):
                yield row
                last = row[at]
            return
        except (sqlite3.DatabaseError, TypeError):
            yield None
            last = _past_the_bad(old, f"{sql} LIMIT 1", last)


def _past_the_bad(old: Database, sql: str, last: int) -> int:
    """Return the smallest key that was found after which a row can be read, else `_LAST`."""

    def good(key: int) -> bool:
        try:
            old.execute(sql, (key,)).fetchone()
        except sqlite3.DatabaseError:
            return False
        return True

    step = 1
    while not good(last + step):
        step *= 2
        if last + step >= _LAST:
            return _LAST
    bad = last + step // 2
    found = last + step
    while found - bad > 1:
        middle = (found + bad) // 2
        found, bad = (middle, bad) if good(middle) else (found, middle)
    return found
