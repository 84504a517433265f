"""Finding a job: the words people remember, or a part number that is nearly right."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from sqlite_utils import Database

from matcher.store.numbers import bare, may_be_number, nearest

_WORD = re.compile(r"\w+")
_SHOWN = (
    "SELECT id, name, place, note, created, changed, version,"
    " (SELECT count(*) FROM listing WHERE listing.job = job.n),"
    " (SELECT substr(plate_text, 1, 200) FROM old_motor WHERE old_motor.job = job.n),"
    " EXISTS (SELECT 1 FROM entry WHERE entry.job = job.n AND section = 'arrival' AND"
    " path = '[\"delivered\"]')"
    " FROM job WHERE removed IS "
)


@dataclass(frozen=True, slots=True)
class JobLine:
    """One job in the list of jobs."""

    id: str
    name: str
    place: str
    note: str
    created: str
    changed: str
    version: int
    listings: int
    plate: str
    """The plate's text, shortened to one line."""
    delivered: bool = False
    """Whether something was delivered, so that a return window may run."""


def words_query(query: str) -> str:
    """Return what is typed as a full-text query: all its words, the last ones perhaps unfinished.

    Quotes and operators in it mean nothing: only its letters and digits are looked for.
    """
    return " ".join(f'"{word}"*' for word in _WORD.findall(query)[:12])


def job_lines(db: Database, query: str, *, removed: bool, limit: int) -> tuple[JobLine, ...]:
    """Return jobs, last changed first; with a query those that match, then those with a near number."""
    if not query.strip():
        return _lines(db, "1 = 1", (), removed=removed, limit=limit)
    exact = _by_words(db, query, removed=removed, limit=limit)
    seen = {line.id for line in exact}
    near = _lines_of(db, _near_numbers(db, query), removed=removed, limit=limit)
    return (*exact, *(line for line in near if line.id not in seen))[:limit]


def _lines(
    db: Database, condition: str, parameters: tuple[object, ...], *, removed: bool, limit: int
) -> tuple[JobLine, ...]:
    sql = f"{_SHOWN}{'NOT ' if removed else ''}NULL AND {condition} ORDER BY changed DESC, n DESC LIMIT ?"
    rows: Iterable[tuple[Any, ...]] = db.execute(sql, (*parameters, limit))
    return tuple(JobLine(*(*row[:8], " ".join((row[8] or "").split()), bool(row[9]))) for row in rows)


def _by_words(db: Database, query: str, *, removed: bool, limit: int) -> tuple[JobLine, ...]:
    words = words_query(query)
    if not words:
        return ()
    # A number may be typed with dashes or without; its bare form is kept in `numbers`.
    number = bare(query)
    either = f'({words}) OR ({{numbers}} : "{number}"*)' if number else words
    condition = (
        "(n IN (SELECT rowid FROM job_search WHERE job_search MATCH ?) OR n IN"
        " (SELECT listing.job FROM listing_search JOIN listing ON listing.n = listing_search.rowid"
        "  WHERE listing_search MATCH ?))"
    )
    return _lines(db, condition, (either, either), removed=removed, limit=limit)


def _near_numbers(db: Database, query: str) -> list[int]:
    """Return the row numbers of jobs that know a part number much like the query."""
    wanted = bare(query)
    if not may_be_number(wanted):
        return []
    known = "SELECT rowid, coalesce(numbers, '') FROM job_search UNION ALL SELECT job, numbers FROM listing"
    return nearest(wanted, db.execute(known))


def _lines_of(db: Database, jobs: list[int], *, removed: bool, limit: int) -> tuple[JobLine, ...]:
    if not jobs:
        return ()
    marks = ", ".join("?" * len(jobs))
    return _lines(db, f"n IN ({marks})", tuple(jobs), removed=removed, limit=limit)
