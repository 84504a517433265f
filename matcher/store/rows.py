"""A job's leaves as rows: read all of one job, write only what changed."""

import json
from collections.abc import Iterable, Mapping
from typing import Any

from pydantic import JsonValue
from sqlite_utils import Database

from matcher.store.leaves import ABSENT, GIVEN, Leaves, Path
from matcher.store.numbers import numbers_of_listing, numbers_of_motor

_JOB_TEXT = ("name", "place", "note")
_JOB_JSON = ("shelves", "fallback", "pictures")
_LISTING_TEXT = ("source_name", "decision", "note")
_LISTING_JSON = ("original", "pictures")


def dumps(value: object) -> str:
    """Return JSON text, short and with every character as it is."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def read_leaves(db: Database, n: int) -> Leaves:
    """Return all leaves of the job with row number `n`."""
    leaves = Leaves()
    _read_job(db, n, leaves.values)
    _read_given(db, n, leaves.values)
    for section, path, value in db.execute(
        "SELECT section, path, value FROM entry WHERE job = ? ORDER BY n", (n,)
    ):
        leaves.values[(section, *json.loads(path))] = json.loads(value)
    _read_listings(db, n, leaves)
    return leaves


def _read_job(db: Database, n: int, values: dict[Path, JsonValue]) -> None:
    row = db.execute(
        "SELECT name, place, note, shelves, fallback, pictures, plate_text"
        " FROM job JOIN old_motor ON old_motor.job = job.n WHERE job.n = ?",
        (n,),
    ).fetchone()
    values.update({(name,): row[i] for i, name in enumerate(_JOB_TEXT)})
    values.update({(name,): json.loads(row[3 + i]) for i, name in enumerate(_JOB_JSON)})
    values[("plate_text",)] = row[6]


def _given(value: str, origin: str, note: str, when: str) -> JsonValue:
    return {"value": json.loads(value), "origin": origin, "note": note, "when": when}


def _read_given(db: Database, n: int, values: dict[Path, JsonValue]) -> None:
    for subject, field, *rest in db.execute(
        "SELECT subject, field, value, origin, note, given_at FROM given WHERE job = ? ORDER BY n", (n,)
    ):
        values[(subject, field)] = _given(*rest)


def _read_listings(db: Database, n: int, leaves: Leaves) -> None:
    ids: dict[int, str] = {}
    for row in db.query("SELECT * FROM listing WHERE job = ? ORDER BY place, id", (n,)):
        at: Path = ("listings", row["id"])
        ids[row["n"]] = row["id"]
        leaves.values[(*at, "place")] = row["place"]
        leaves.values[(*at, "body")] = {"title": row["title"], "text": row["text"]}
        leaves.values.update({(*at, name): row[name] for name in _LISTING_TEXT})
        leaves.values.update({(*at, name): json.loads(row[name]) for name in _LISTING_JSON})
        leaves.readings[row["id"]] = json.loads(row["reading"])
    for listing, field, *rest in db.execute(
        "SELECT listing, field, value, origin, correction.note, given_at FROM correction"
        " JOIN listing ON listing.n = correction.listing WHERE job = ? ORDER BY correction.n",
        (n,),
    ):
        leaves.values[("listings", ids[listing], "corrections", field)] = _given(*rest)


def write_leaves(db: Database, n: int, leaves: Leaves, changed: Iterable[Path], read: Iterable[str]) -> None:
    """Write the changed leaves of the job `n`, and the readings of the listings in `read`."""
    paths = list(changed)
    listings = dict.fromkeys(path[1] for path in paths if path[0] == "listings") | dict.fromkeys(read)
    for path in paths:
        if path[0] in GIVEN:
            _write_given(db, n, path, leaves.values.get(path, ABSENT))
        elif path[0] != "listings" and len(path) > 1:
            _write_entry(db, n, path, leaves.values.get(path, ABSENT))
    for listing in listings:
        _write_listing(db, n, listing, leaves)
    for path in paths:
        if path[0] == "listings" and path[2] == "corrections":
            _write_correction(db, n, path, leaves.values.get(path, ABSENT))
    if any(len(path) == 1 or path[0] in GIVEN for path in paths):
        write_job(db, n, leaves)


def write_job(db: Database, n: int, leaves: Leaves) -> None:
    """Write what stands once in a job, and what it is found by."""
    values = leaves.values
    text: list[Any] = [values[(name,)] for name in _JOB_TEXT]
    db.execute(
        "UPDATE job SET name = ?, place = ?, note = ?, shelves = ?, fallback = ?, pictures = ? WHERE n = ?",
        (*text, *(dumps(values[(name,)]) for name in _JOB_JSON), n),
    )
    plate = str(values[("plate_text",)])
    db.execute(
        "INSERT INTO old_motor (job, plate_text) VALUES (?, ?)"
        " ON CONFLICT (job) DO UPDATE SET plate_text = excluded.plate_text",
        (n, plate),
    )
    db.execute("DELETE FROM job_search WHERE rowid = ?", (n,))
    db.execute(
        "INSERT INTO job_search (rowid, name, place, note, plate, numbers) VALUES (?, ?, ?, ?, ?, ?)",
        (n, *text, plate, numbers_of_motor(plate, _motor_numbers(leaves))),
    )


def _motor_numbers(leaves: Leaves) -> list[JsonValue]:
    entries = (leaves.values.get(("given", name)) for name in ("part_number", "other_numbers"))
    return [entry["value"] for entry in entries if isinstance(entry, dict)]


def _columns(entry: Mapping[str, JsonValue]) -> tuple[object, ...]:
    return dumps(entry["value"]), entry["origin"], entry["note"], entry["when"]


def _write_given(db: Database, n: int, path: Path, entry: object) -> None:
    if not isinstance(entry, dict):
        db.execute("DELETE FROM given WHERE job = ? AND subject = ? AND field = ?", (n, *path))
        return
    db.execute(
        "INSERT INTO given (job, subject, field, value, origin, note, given_at) VALUES (?, ?, ?, ?, ?, ?, ?)"
        " ON CONFLICT (job, subject, field) DO UPDATE SET value = excluded.value,"
        " origin = excluded.origin, note = excluded.note, given_at = excluded.given_at",
        (n, *path, *_columns(entry)),
    )


def _write_entry(db: Database, n: int, path: Path, value: object) -> None:
    key = (n, path[0], dumps(path[1:]))
    if value is ABSENT:
        db.execute("DELETE FROM entry WHERE job = ? AND section = ? AND path = ?", key)
        return
    db.execute(
        "INSERT INTO entry (job, section, path, value) VALUES (?, ?, ?, ?)"
        " ON CONFLICT (job, section, path) DO UPDATE SET value = excluded.value",
        (*key, dumps(value)),
    )


def _write_listing(db: Database, n: int, listing: str, leaves: Leaves) -> None:
    at: Path = ("listings", listing)
    body = leaves.values.get((*at, "body"))
    if not isinstance(body, dict):
        db.execute("DELETE FROM listing WHERE job = ? AND id = ?", (n, listing))
        return
    reading = leaves.readings.get(listing)
    corrections = {p[3]: v for p, v in leaves.values.items() if p[:3] == (*at, "corrections")}
    row: dict[str, object] = {
        "job": n,
        "id": listing,
        "place": leaves.values[(*at, "place")],
        **body,
        **{name: leaves.values[(*at, name)] for name in _LISTING_TEXT},
        **{name: dumps(leaves.values[(*at, name)]) for name in _LISTING_JSON},
        "reading": dumps(reading),
        "numbers": numbers_of_listing(reading, corrections),
    }
    names = ", ".join(row)
    sets = ", ".join(f"{name} = excluded.{name}" for name in row)
    db.execute(
        f"INSERT INTO listing ({names}) VALUES ({', '.join('?' * len(row))})"  # noqa: S608 names are ours
        f" ON CONFLICT (job, id) DO UPDATE SET {sets}",
        tuple(row.values()),
    )


def _write_correction(db: Database, n: int, path: Path, entry: object) -> None:
    listing = db.execute("SELECT n FROM listing WHERE job = ? AND id = ?", (n, path[1])).fetchone()
    if listing is None:
        return
    if not isinstance(entry, dict):
        db.execute("DELETE FROM correction WHERE listing = ? AND field = ?", (listing[0], path[3]))
        return
    db.execute(
        "INSERT INTO correction (listing, field, value, origin, note, given_at) VALUES (?, ?, ?, ?, ?, ?)"
        " ON CONFLICT (listing, field) DO UPDATE SET value = excluded.value,"
        " origin = excluded.origin, note = excluded.note, given_at = excluded.given_at",
        (listing[0], path[3], *_columns(entry)),
    )
