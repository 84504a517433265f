"""Listings as a table that a spreadsheet opens: a row each, the contract's field names as heads.

Listings are hostile: a cell that a spreadsheet would take for a formula gets an apostrophe in front (OWASP,
"CSV Injection": `=`, `+`, `-`, `@`, tab, carriage return, their full-width forms and line feed).
"""

import csv
from collections.abc import Iterable, Iterator
from types import SimpleNamespace

from matcher.motor import OFFER_FIELDS
from matcher.record import Record

COLUMNS = ("id", "title", *OFFER_FIELDS)
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def safe_cell(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(_FORMULA) else text


def table_lines(records: Iterable[Record]) -> Iterator[str]:
    """Yield the head and a line of comma-separated cells for each record, as it comes."""
    write = csv.writer(SimpleNamespace(write=lambda line: line), lineterminator="")
    yield str(write.writerow(COLUMNS))
    for record in records:
        yield str(write.writerow(map(safe_cell, _cells(record))))


def _cells(record: Record) -> Iterator[str]:
    known = record.facts.said()
    yield from (" ".join(words.split()) for words in (record.id, record.title))
    yield from (words_of(known[field]) if field in known else "" for field in OFFER_FIELDS)


def words_of(value: object) -> str:
    """Say a fact in one cell: `yes`, `no`, or a list parted by commas.

    With slashes a spreadsheet would take `5/16` for a day in May.
    """
    if isinstance(value, list | tuple):
        return ", ".join(map(words_of, value))
    return {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value)
