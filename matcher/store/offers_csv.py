"""Offers as a table that a spreadsheet opens, and back again exactly.

Comma-separated, UTF-8 with a byte order mark, one row an offer: `id`, `title`, every field of the
contract, `text`. Lists, numbers and yes/no stand as JSON. A cell that a spreadsheet would take for a
formula gets an apostrophe in front (OWASP, "CSV Injection": `=`, `+`, `-`, `@`, tab, carriage return,
their full-width forms and line feed); a cell that begins with an apostrophe gets another one. Reading
takes exactly one away, so that a table written here comes back as it was.
"""

import csv
import io
import json
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import Any, get_args

from pydantic import ValidationError

from matcher.errors import UnreadableInput
from matcher.job.listing import plain_record
from matcher.job.part import first_fault
from matcher.job.text import LONGEST_TEXT, without_halves
from matcher.motor import OFFER_FIELDS, Offer
from matcher.reading.problem import Problem
from matcher.record import Record
from matcher.store.files import read_limited, write_whole

COLUMNS = ("id", "title", *OFFER_FIELDS, "text")
LARGEST_FILE = 1024 * 1024 * 1024
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20", "'")


def safe_cell(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(_FORMULA) else text


def plain_cell(cell: str) -> str:
    """Return what stood in a cell before `safe_cell`."""
    return cell.removeprefix("'")


@cache
def _is_text(field: str) -> bool:
    """Whether a fact is written as it is; all others are JSON."""

    def kinds(annotation: object) -> Iterator[object]:
        yield annotation
        for inner in get_args(annotation):
            yield from kinds(inner)

    found = list(kinds(Offer.model_fields[field].annotation))
    return not any(kind in (int, float, bool) or isinstance(kind, int) or _is_list(kind) for kind in found)


def _is_list(kind: object) -> bool:
    return getattr(kind, "__origin__", None) is tuple


def _cells(record: Record) -> list[str]:
    plain, known = plain_record(record), record.facts.said()
    facts = [
        "" if (value := known.get(field)) is None else str(value) if _is_text(field) else json.dumps(value)
        for field in OFFER_FIELDS
    ]
    return [safe_cell(cell) for cell in (without_halves(plain.id), plain.title, *facts, plain.text)]


def dump_offers(records: Iterable[Record]) -> str:
    """Return the offers as a table."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, quoting=csv.QUOTE_ALL)
    writer.writerow(COLUMNS)
    writer.writerows(_cells(record) for record in records)
    return text.getvalue()


def write_offers(path: Path, records: Iterable[Record]) -> None:
    """Write the offers' table, whole or not at all. Raises `OSError`."""
    write_whole(path, dump_offers(records).encode("utf-8-sig"))


def read_offers(path: Path, on_problem: Callable[[Problem], None]) -> Iterator[Record]:
    """Yield the offers of a table that was written here; a bad row is told of and left out.

    Raises `UnreadableInput` for a file that is no such table.
    """
    try:
        text = read_limited(path, LARGEST_FILE).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise UnreadableInput(f"{path}: not a table of offers (it isn't UTF-8 text)") from None
    yield from parse_offers(text, path.name, on_problem)


def parse_offers(text: str, name: str, on_problem: Callable[[Problem], None]) -> Iterator[Record]:
    """Yield the offers in a table's text; `name` is what problems call it. Raises `UnreadableInput`."""
    csv.field_size_limit(LONGEST_TEXT * 2)
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    header = _header(rows, name)
    while True:
        try:
            row = next(rows)
            yield _record(header, row)
        except StopIteration:
            return
        except ValidationError as fault:
            on_problem(Problem(f"{name} line {rows.line_num}", first_fault(fault)))
        except (csv.Error, ValueError) as fault:
            on_problem(Problem(f"{name} line {rows.line_num}", " ".join(str(fault).split())[:200]))


def _header(rows: Iterator[list[str]], name: str) -> list[str]:
    try:
        header = next(rows, [])
    except csv.Error:
        header = []
    unknown = [column for column in header if column not in COLUMNS]
    if not header or unknown or len(set(header)) < len(header):
        what = f"column {unknown[0]!r:.40} isn't known" if unknown else "its header isn't one"
        raise UnreadableInput(f"{name}: no table of offers from Samespin ({what}); open it as listings")
    return header


def _record(header: list[str], row: list[str]) -> Record:
    if len(row) != len(header):
        raise ValueError(f"{len(row)} cells under {len(header)} columns")
    cells = dict(zip(header, map(plain_cell, row), strict=True))
    words = {name: cells.pop(name, "") for name in ("id", "title", "text")}
    facts: dict[str, Any] = {
        field: cell if _is_text(field) else _json(field, cell) for field, cell in cells.items() if cell
    }
    return Record(words["id"], Offer.model_validate(facts), title=words["title"], text=words["text"])


def _json(field: str, cell: str) -> object:
    try:
        return json.loads(cell)
    except (ValueError, RecursionError):
        raise ValueError(f"{field}: {cell!r:.40} isn't written as Samespin writes it") from None
