"""A new store of what a damaged one still holds, filled up from the newest good backup."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path

from sqlite_utils import Database

from matcher.errors import StoreUnavailable
from matcher.files import sync_folder
from matcher.job.listing import new_id
from matcher.job.text import now
from matcher.store import backups
from matcher.store import jobs as job_rows
from matcher.store.backups import Generation
from matcher.store.connection import change, connect, number
from matcher.store.faults import NotInStore
from matcher.store.migrations import migrate, taken
from matcher.store.salvage import KEYS, readable, set_aside

_UNREADABLE = (ValueError, KeyError, TypeError)


@dataclass(slots=True)
class _Rescue:
    """The new store, the newest good backup (if any), and what was lost on the way."""

    new: Database
    backup: Database | None
    lost: int = 0


def draft_of(path: Path) -> Path:
    """Return the name under which a new store is built beside a damaged one."""
    return path.with_name(f"{path.name}.rebuilding")


def finish(path: Path) -> None:
    """Put a rebuilt store in its place where a power cut came between setting aside and this step."""
    if not path.exists() and draft_of(path).exists():
        draft_of(path).replace(path)
        sync_folder(path.parent)


def rebuild(path: Path) -> str:
    """Put a new store in the place of a damaged one, which is set aside; return what to tell.

    The damaged file stays where it is until the new one is whole and on the disk, so a disk that fills
    up meanwhile costs nothing.
    """
    draft = draft_of(path)
    draft.unlink(missing_ok=True)
    generation, backup = _newest_good(path)
    try:
        lost, saved, filled = _build(draft, path, backup)
    except BaseException:
        draft.unlink(missing_ok=True)
        raise
    finally:
        if backup is not None:
            backup.conn.close()
    kept = set_aside(path)
    finish(path)
    return _told(kept, path, lost, saved, (filled, generation))


def _build(draft: Path, path: Path, backup: Database | None) -> tuple[int, tuple[int, int], list[int]]:
    """Return what was lost, what was saved from the damaged file, and what came from the backup."""
    new = connect(draft)
    with closing(new.conn):
        rescue = _Rescue(new, backup)
        migrate(new, draft)
        _copy_all(path, rescue)
        saved = _counts(new)
        if backup is not None and rescue.lost:
            _fill_up(rescue, backup)
        _index(new)
        filled = [after - before for after, before in zip(_counts(new), saved, strict=True)]
    return rescue.lost, saved, filled


def _counts(new: Database) -> tuple[int, int]:
    return number(new, "SELECT count(*) FROM job"), number(new, "SELECT count(*) FROM offer")


def _told(
    kept: Path, path: Path, lost: int, saved: tuple[int, int], more: tuple[list[int], Generation | None]
) -> str:
    line = (
        f"{path}: the store was damaged. The damaged file is kept as {kept.name}; {saved[0]} jobs and"
        f" {saved[1]} offers of stock were saved from it"
    )
    filled, generation = more
    if generation is not None and any(filled):
        made = generation.made.strftime("%d %b %Y %H:%M")
        line += f", {filled[0]} jobs and {filled[1]} offers more from the backup of {made} UTC"
    if lost:
        line += f"; {lost} places in it could not be read"
    return f"{line}. Look through your last changes."


def _newest_good(path: Path) -> tuple[Generation | None, Database | None]:
    for generation in reversed(backups.generations(path)):
        with suppress(sqlite3.Error, StoreUnavailable):
            source = connect(generation.path, mode="ro")
            try:
                backups.sound(source, generation.path)
            except BaseException:
                source.conn.close()
                raise
            return generation, source
    return None, None


def _copy_all(damaged: Path, rescue: _Rescue) -> None:
    try:
        old = connect(damaged, mode="ro")
    except sqlite3.Error:
        rescue.lost += 1
        return
    with closing(old.conn):
        for table in KEYS:
            with change(rescue.new):
                _copy_table(old, rescue, table)


def _copy_table(old: Database, rescue: _Rescue, table: str) -> None:
    names = [column.name for column in rescue.new[table].columns]
    for row in readable(old, table, names):
        if row is None or not _put(rescue, table, names, row):
            rescue.lost += 1


def _put(rescue: _Rescue, table: str, names: list[str], row: tuple[object, ...]) -> bool:
    marks = ", ".join("?" * len(names))
    sql = f"INSERT INTO {table} ({', '.join(names)}) VALUES ({marks})"  # noqa: S608 ours
    for attempt in (1, 2):
        try:
            rescue.new.execute(sql, row)
        except sqlite3.IntegrityError:
            if attempt == 2 or not _stand_in(rescue, dict(zip(names, row, strict=True))):
                return False
        else:
            return True
    return False


def _stand_in(rescue: _Rescue, row: dict[str, object]) -> bool:
    """Make a job or shelf for a part whose own one can't be read any more: the backup's, else a new one."""
    stamp = now()
    blank: dict[str, dict[str, object]] = {
        "job": {"version": 1, "place": "", "note": "", "shelves": "[]", "fallback": "null", "pictures": "[]"},
        "shelf": {"note": ""},
    }
    for table, parts in blank.items():
        n = row.get(table)
        if not isinstance(n, int):
            continue
        made = {**parts, "id": new_id(), "name": "Recovered", "created": stamp, "changed": stamp}
        _insert(rescue.new, table, {**made, **_in_backup(rescue, table, n), "n": n})
        return True
    return False


def _in_backup(rescue: _Rescue, table: str, n: int) -> dict[str, object]:
    if rescue.backup is None:
        return {}
    return next(iter(rescue.backup.query(f"SELECT * FROM {table} WHERE n = ?", (n,))), {})  # noqa: S608 ours


def _insert(new: Database, table: str, row: dict[str, object]) -> None:
    marks = ", ".join("?" * len(row))
    sql = f"INSERT OR IGNORE INTO {table} ({', '.join(row)}) VALUES ({marks})"  # noqa: S608 ours
    new.execute(sql, tuple(row.values()))


def _fill_up(rescue: _Rescue, backup: Database) -> None:
    """Take from the backup the jobs that are missing or broken, and all stock and pictures not there."""
    for (job_id,) in backup.execute("SELECT id FROM job").fetchall():
        try:
            job_rows.load(rescue.new, job_id)
        except (NotInStore, StoreUnavailable):
            with suppress(NotInStore, StoreUnavailable):
                job_rows.replace(rescue.new, job_rows.load(backup, job_id).job)
    if taken(backup) != taken(rescue.new):
        return
    with change(rescue.new):
        # An offer deleted since the backup may come back; that is better than one lost.
        for table in ("shelf", "offer", "attachment"):
            for row in backup.query(f"SELECT * FROM {table}"):  # noqa: S608 ours
                with suppress(sqlite3.IntegrityError):
                    _insert(rescue.new, table, row)


def _index(new: Database) -> None:
    with change(new):
        new.execute("INSERT OR IGNORE INTO old_motor (job, plate_text) SELECT n, '' FROM job")
        for search in ("listing_search", "offer_search"):
            new.execute(f"INSERT INTO {search} ({search}) VALUES ('rebuild')")  # noqa: S608 ours
        for n in list(_numbers(new)):
            with suppress(*_UNREADABLE):
                job_rows.index(new, n)


def _numbers(new: Database) -> Iterator[int]:
    for (n,) in new.execute("SELECT n FROM job"):
        yield n
