"""A table of listings, row by row: comma, semicolon, tab or bar, whatever the file's ending says.

A broken row is named with its line number and the others go on. Rows are read one at a time, so that
memory doesn't grow with the table.
"""

from collections.abc import Iterable, Iterator
from itertools import chain, islice

from matcher.reading.decoding import LINE_LIMIT
from matcher.reading.listing import read_listing
from matcher.reading.problem import OnProblem, Problem
from matcher.reading.table_layout import SAMPLE, Layout, headings, sniff
from matcher.reading.table_lines import filled_cells, is_header_again, is_new_header, is_section, is_total
from matcher.reading.table_phase import with_phase_sign
from matcher.reading.table_record import own_id, row_record
from matcher.reading.table_rows import Row, split_rows
from matcher.reading.table_turned import turned
from matcher.reading.table_unread import Unread
from matcher.record import Record


def read_table(lines: Iterable[str], name: str, on_problem: OnProblem) -> Iterator[Record]:
    """Yield a record for each good row; never raises.

    Columns that nobody understands are named in a note at the end.

    Ids: what stands in a column named `id`, else `name#1`, `name#2` ... with data rows, broken ones
    included, counted from 1; a table of one row is `name`.
    """
    lines = iter(lines)
    sample = list(islice(lines, SAMPLE))
    layout = sniff(sample)
    if layout is not None:
        layout = with_phase_sign(layout, sample)
    on_its_side = turned(sample, layout) if len(sample) < SAMPLE else None
    if on_its_side is not None:
        layout, rows = on_its_side
        yield from _numbered([(row, layout) for row in rows], name, on_problem)
        return
    if layout is None:
        yield from _without_header(chain(sample, lines), name, on_problem)
        return
    yield from _numbered(_listings(chain(sample, lines), layout), name, on_problem)


def _listings(lines: Iterable[str], layout: Layout) -> Iterator[tuple[Row, Layout]]:
    """Yield the rows that hold listings, broken ones included, each with the layout that it stands under."""
    for row in split_rows(lines, layout.delimiter, layout.width):
        if row.line <= layout.line:
            continue
        if row.fault:
            yield row, layout
            continue
        filled = filled_cells(row.cells)
        if is_header_again(filled, layout) or is_total(filled):
            continue
        if is_new_header(filled, layout):
            layout = Layout(layout.delimiter, row.line, headings(row.cells), layout.comma)
        elif not is_section(filled, layout) or _is_listing(" ".join(row.cells)):
            yield row, layout


def _is_listing(cell: str) -> bool:
    """Say whether the only text of a row is a listing after all: it names a price or many facts."""
    if not any(sign.isdigit() for sign in cell):
        return False
    facts = read_listing(cell).where
    return len(facts) >= 3 and ("price" in facts or len(facts) >= 5)


def _without_header(lines: Iterable[str], name: str, on_problem: OnProblem) -> Iterator[Record]:
    """Read a table without a header: each line that says several facts is a listing's text."""
    number = 0
    for line in lines:
        number += bool(line.strip())
        record = read_listing(line[:LINE_LIMIT], id=f"{name}#{number}")
        if len(record.where) >= 2:
            yield record
    on_problem(Problem(name, "no line names its columns; write a header such as title,hp,volts,price"))


def _numbered(rows: Iterable[tuple[Row, Layout]], name: str, on_problem: OnProblem) -> Iterator[Record]:
    """Read the rows; the first one waits for the second, which decides whether it carries a number."""
    rows = iter(rows)
    first = list(islice(rows, 2))
    unread = Unread()
    several = len(first) > 1
    for number, (row, layout) in enumerate(chain(first, rows), 1):
        fault = row.fault or _overfull(row, layout)
        if fault:
            on_problem(Problem(f"{name}, line {row.line}", f"{fault}; the row is left out"))
            continue
        given = own_id(row.cells, layout)
        record = row_record(row.cells, layout, given or (f"{name}#{number}" if several else name))
        unread.see(row.cells, layout, record)
        yield record
    note = unread.told(name)
    if note is not None:
        on_problem(note)


def _overfull(row: Row, layout: Layout) -> str:
    """Name a row with more filled cells than columns: its values would stand under the wrong headers."""
    over = [cell for cell in row.cells[layout.width :] if cell.strip()]
    if not over:
        return ""
    return f"it has more filled cells than the header's {layout.width}"
