"""Files, or standard input, into records: text, saved pages, tables and JSON lines in any mixture.

Tables and JSON lines are read row by row, so memory doesn't grow with their length; pages and texts
are read whole, up to a limit. Whatever is wrong with a source or a record is told in one line, and
the others go on. Nothing here opens the network.

Ids: the record's own (JSON lines, a column named `id`); else the file's name, with `#1`, `#2` ... where
it holds several.
"""

import json
import shutil
import sys
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import BinaryIO, Literal

from matcher.errors import SamespinError
from matcher.reading.decoding import decoded, text_lines
from matcher.reading.json_lines import read_json_lines, record_of
from matcher.reading.listing import read_listing, read_plate
from matcher.reading.problem import OnProblem, Problem
from matcher.reading.source_kind import HEAD, Kind, foreign, kind_of
from matcher.reading.split import split_listings
from matcher.record import Record

__all__ = ["OnProblem", "Problem", "Source", "records", "text_records"]

Source = Path | Literal["-"]

LARGEST_PAGE = 100_000_000
"""Bytes of a saved page; pictures written into it count here and are dropped before it is parsed."""
LARGEST_TEXT = 8_000_000
"""Bytes of a text file: thousands of listings."""
_IN_MEMORY = 16_000_000


def records(paths: Iterable[Source], *, plate: bool = False, on_problem: OnProblem) -> Iterator[Record]:
    """Yield the records of all sources in order; `-` is standard input.

    With `plate`, texts are nameplates. Never raises for what is in the files; problems go to `on_problem`.
    """
    for path in paths:
        name = "-" if str(path) == "-" else Path(path).name
        try:
            with _opened(path) as stream:
                yield from _source(stream, name, Path(path).suffix, on_problem, plate)
        except OSError as fault:
            on_problem(Problem(str(path), f"it can't be read ({(fault.strerror or str(fault)).lower()})"))


def _opened(path: Source) -> BinaryIO:
    if str(path) != "-":
        return Path(path).open("rb")
    # Standard input can't be read twice, a file can: first to tell what it is, then to read it.
    if sys.stdin is None:
        raise OSError("standard input is closed")
    kept = tempfile.SpooledTemporaryFile(max_size=_IN_MEMORY)  # noqa: SIM115 (the caller closes it)
    shutil.copyfileobj(sys.stdin.buffer, kept)
    kept.seek(0)
    return kept  # type: ignore[return-value]


def _source(stream: BinaryIO, name: str, ending: str, on_problem: OnProblem, plate: bool) -> Iterator[Record]:
    head = stream.read(HEAD)
    fault = "it is empty" if not head.strip(b"\0 \t\r\n\xef\xbb\xbf\xff\xfe") else foreign(head)
    if fault:
        on_problem(Problem(name, fault))
        return
    stream.seek(0)
    kind = kind_of(head, ending)
    if kind == "table" and not plate:
        # Imported late: a table needs its words, a single text doesn't.
        from matcher.reading.table import read_table

        yield from read_table(text_lines(stream), name, on_problem)
    elif kind == "json lines":
        yield from _json(stream, name, on_problem, plate)
    else:
        yield from _whole(stream, name, kind, on_problem, plate)


def _json(stream: BinaryIO, name: str, on_problem: OnProblem, plate: bool) -> Iterator[Record]:
    first = next((line.strip() for line in text_lines(stream) if line.strip()), "")
    stream.seek(0)
    if first.startswith("[") or first == "{":
        yield from _json_list(stream, name, on_problem, plate)
    else:
        yield from read_json_lines(text_lines(stream), name, on_problem, plate=plate)


def _json_list(stream: BinaryIO, name: str, on_problem: OnProblem, plate: bool) -> Iterator[Record]:
    """Read one JSON list of records, or one record over several lines."""
    data = stream.read(LARGEST_PAGE + 1)
    if len(data) > LARGEST_PAGE:
        on_problem(Problem(name, "it is too large to be one JSON list; write one record a line (.jsonl)"))
        return
    try:
        found = json.loads(decoded(data))
    except (ValueError, RecursionError):
        stream.seek(0)
        yield from read_json_lines(text_lines(stream), name, on_problem, plate=plate)
        return
    for number, entry in enumerate(found if isinstance(found, list) else [found], 1):
        try:
            if not isinstance(entry, dict):
                raise SamespinError('it is no record; write {"id": ..., "title": ..., "text": ...}')
            yield record_of(entry, f"{name}#{number}", plate=plate)
        except SamespinError as fault:
            on_problem(Problem(f"{name}, record {number}", f"{fault}; the record is left out"))


def _whole(stream: BinaryIO, name: str, kind: Kind, on_problem: OnProblem, plate: bool) -> Iterator[Record]:
    limit = LARGEST_PAGE if kind == "page" else LARGEST_TEXT
    data = stream.read(limit + 1)
    if len(data) > limit:
        what = "page" if kind == "page" else "text of listings"
        on_problem(
            Problem(name, f"it is larger than any {what} ({limit // 1_000_000} MB); split it into files")
        )
        return
    if kind == "page":
        # Imported late: the parser is needed for pages alone.
        from matcher.reading.page import read_page

        found = read_page(data, name)
        if not found:
            on_problem(Problem(name, "the page shows nothing for sale; save the page of the listing itself"))
        yield from found
        return
    text = decoded(data)
    if "\n" not in text:
        text = text.replace("\r", "\n")
    if not any(sign.isalpha() for sign in text):
        on_problem(Problem(name, "it holds figures and signs but no word; write what each figure is"))
        return
    yield from [read_plate(text, id=name)] if plate else text_records(text, name)


def text_records(text: str, name: str) -> Iterator[Record]:
    """Yield the listings of one text; a text of one listing stays whole, so that spans hold in the file."""
    spans = split_listings(text)
    if len(spans) < 2:
        yield read_listing(text, id=name)
        return
    for number, (start, end) in enumerate(spans, 1):
        yield read_listing(text[start:end], id=f"{name}#{number}")
