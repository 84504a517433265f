"""Tables that stand on their side: the labels down the first column, one motor a column."""

from collections.abc import Iterator, Sequence

from matcher.reading.table_headers import header
from matcher.reading.table_layout import Layout, headings
from matcher.reading.table_rows import DELIMITERS, Row, split_line

_FEWEST = 4
"""Labels that a table on its side has at least."""
_MOST = 60
"""Motors in one such table; it is as wide as they are many."""


def turned(lines: Sequence[str], upright: Layout | None) -> tuple[Layout, list[Row]] | None:
    """Return the layout and rows of a table that stands on its side, `None` for any other.

    `upright` is its layout as an ordinary table: a line of as many known headers is one.
    """
    for delimiter in DELIMITERS:
        rows = [split_line(line, delimiter)[0] for line in lines if delimiter in line]
        width = max(map(len, rows), default=0)
        known = _known(rows)
        if len(known) < _FEWEST or not 1 < width <= _MOST or (upright and upright.known >= len(known)):
            continue
        if 2 * len(known) < len([row for row in rows if row[0].strip()]):
            continue
        return _layout(rows, delimiter), list(_columns(rows, width))
    return None


def _known(rows: Sequence[Sequence[str]]) -> set[str]:
    """Return the kinds of value that the first cells name, running text and what gives nothing apart."""
    found = [header(row[0]) for row in rows]
    return {known.column.name for known in found if known and known.column.how not in {"free", "nothing"}}


def _layout(rows: Sequence[Sequence[str]], delimiter: str) -> Layout:
    return Layout(delimiter, 0, headings([row[0].rstrip(": ") for row in rows]))


def _columns(rows: Sequence[Sequence[str]], width: int) -> Iterator[Row]:
    """Yield each column as a row; names of the columns alone are none of its facts."""
    for place in range(1, width):
        cells = [row[place] if place < len(row) else "" for row in rows]
        if header(rows[0][0]) is None:
            cells[0] = ""
        if any(cell.strip() for cell in cells):
            yield Row(1, tuple(cells))
