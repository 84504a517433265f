"""Lines of a table into rows of cells, with every row's line number.

The standard `csv` module lets a quote that never closes swallow the rest of the file. Here such a row
is broken and the next line is a row again. A quoted cell may still run over several lines.
"""

from collections import deque
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice

from matcher.reading.decoding import LINE_LIMIT

DELIMITERS = ("\t", ";", ",", "|")
QUOTED_LINES = 60
"""Lines that one quoted cell may run over; none in a listing is longer."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row: the number of its first line (from 1), its cells, and what is wrong with it, if anything."""

    line: int
    cells: tuple[str, ...]
    fault: str = ""

    @property
    def filled(self) -> int:
        """Number of cells that hold something."""
        return sum(1 for cell in self.cells if cell and not cell.isspace())


class _Ahead:
    """Lines with a look ahead, each with its number."""

    def __init__(self, lines: Iterable[str]) -> None:
        self._lines = iter(lines)
        self._held: deque[str] = deque()
        self.number = 0

    def next(self) -> str | None:
        """Take the next line."""
        line = self._held.popleft() if self._held else next(self._lines, None)
        self.number += line is not None
        return line

    def peek(self, count: int) -> Iterator[str]:
        """Yield up to `count` lines to come without taking them."""
        yield from islice(list(self._held), count)
        while len(self._held) < count:
            line = next(self._lines, None)
            if line is None:
                return
            self._held.append(line)
            yield line


def split_line(line: str, delimiter: str) -> tuple[list[str], bool]:
    """Return the cells of one line, and whether its last quote stays open.

    >>> split_line('1/2" shaft,"a, b",55', ",")
    (['1/2" shaft', 'a, b', '55'], False)
    >>> split_line('55,"a, b', ",")
    (['55', 'a, b'], True)
    """
    if '"' not in line:
        return line.split(delimiter), False
    cells: list[str] = []
    at = 0
    while True:
        start = at
        while line.startswith(" ", start):
            start += 1
        if line.startswith('"', start):
            cell, after = _quoted(line, start + 1, delimiter)
            cells.append(cell)
            if after < 0:
                return cells, True
        else:
            after = line.find(delimiter, at)
            after = len(line) if after < 0 else after
            cells.append(line[at:after])
        if after >= len(line):
            return cells, False
        at = after + len(delimiter)


def _quoted(line: str, at: int, delimiter: str) -> tuple[str, int]:
    """Read a quoted cell from its first character; return it and the place after it, -1 if it stays open.

    A quote in the middle that no delimiter follows is an inch mark that somebody forgot to double.
    """
    parts: list[str] = []
    while True:
        end = line.find('"', at)
        if end < 0:
            parts.append(line[at:])
            return "".join(parts), -1
        parts.append(line[at:end])
        if line.startswith('"', end + 1):
            parts.append('"')
            at = end + 2
            continue
        after = _closes(line, end + 1, delimiter)
        if after >= 0:
            return "".join(parts), after
        parts.append('"')
        at = end + 1


def _closes(line: str, at: int, delimiter: str) -> int:
    """Return the place of the delimiter or line end that follows a closing quote, -1 if none does."""
    while line.startswith(" ", at):
        at += 1
    return at if at >= len(line) or line.startswith(delimiter, at) else -1


def _tail_closes(line: str, delimiter: str) -> bool:
    """Say whether the first lone quote of a continuation line closes the cell, as it must."""
    at = 0
    while (at := line.find('"', at)) >= 0:
        if not line.startswith('"', at + 1):
            return _closes(line, at + 1, delimiter) >= 0
        at += 2
    return False


def _continued(first: str, ahead: _Ahead, delimiter: str, width: int) -> list[str] | None:
    """Return the lines that finish the row that `first` begins, `None` if a cell of it never closes.

    Several cells of one row may run on, one after the other. Lines in between that are whole rows by
    themselves betray a quote that was never meant to.
    """
    taken: list[str] = []
    length = len(first)
    rows = 0
    for line in ahead.peek(QUOTED_LINES):
        length += len(line)
        if length > LINE_LIMIT:
            return None
        taken.append(line)
        alone, left_open = split_line(line, delimiter)
        whole = not left_open and len(alone) == width > 1
        if '"' in line.replace('""', ""):
            if not _tail_closes(line, delimiter):
                return None
            # Both the first line and the last one whole: each is a row, with a stray quote in it.
            stray = whole and first.count(delimiter) + 1 >= width
            if rows or stray:
                return None
            if not split_line("\n".join([first, *taken]), delimiter)[1]:
                return taken
        rows += whole
    return None


def split_rows(lines: Iterable[str], delimiter: str, width: int) -> Iterator[Row]:
    """Yield the rows of a table whose header has `width` cells.

    A row with a NUL, an endless quote or an endless line comes with its `fault` named.
    """
    ahead = _Ahead(lines)
    while (line := ahead.next()) is not None:
        number = ahead.number
        cells, left_open = split_line(line, delimiter)
        if left_open:
            more = _continued(line, ahead, delimiter, width)
            if more is None:
                yield Row(number, tuple(line.split(delimiter)), "a quote is opened and never closed")
                continue
            for _ in more:
                ahead.next()
            line = "\n".join([line, *more])
            cells, _ = split_line(line, delimiter)
        yield Row(number, tuple(cells), _fault(line))


def _fault(line: str) -> str:
    if "\0" in line:
        return "it holds a NUL character"
    if len(line) > LINE_LIMIT:
        return "it is longer than any row can be"
    return ""
