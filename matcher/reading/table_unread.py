"""Columns of a table whose headers nobody knows: they are named, so that no price is missed in silence."""

from collections.abc import Sequence

from matcher.reading.problem import Problem
from matcher.reading.table_layout import Layout
from matcher.record import Record

NAMED = 12
"""So many columns are named, the others counted."""
LONGEST = 40
"""Characters of a column's name that are shown."""


class Unread:
    """Looks for values that stand under unknown headers, and for a price, row by row."""

    def __init__(self) -> None:
        self._names: dict[str, None] = {}
        self._read: set[str] = set()
        self._layout: Layout | None = None
        self._open: list[int] = []
        self._has_price = False

    def see(self, cells: Sequence[str], layout: Layout, record: Record) -> None:
        """Take one row with what was read of it."""
        self._has_price = self._has_price or record.facts.price is not None
        if layout is not self._layout:
            self._layout = layout
            named = enumerate(layout.headings)
            self._open = [place for place, heading in named if heading.words and heading.header is None]
        if self._open:
            for place in self._open:
                self._find(cells, layout, record, place)

    def _find(self, cells: Sequence[str], layout: Layout, record: Record, place: int) -> None:
        """Note a filled column, and whether a fact was read out of its words all the same."""
        cell = " ".join(cells[place].split()) if place < len(cells) else ""
        if cell:
            words = layout.headings[place].words
            self._names[words[:LONGEST]] = None
            line = f"{words}: {cell}"
            start = -1 if words[:LONGEST] in self._read else record.text.find(line)
            if any(start <= mark.span[0] < start + len(line) for mark in record.where.values() if start >= 0):
                self._read.add(words[:LONGEST])

    def told(self, name: str) -> Problem | None:
        """Return what to say of the whole table, None where every filled column was understood."""
        names = [name for name in self._names if name not in self._read]
        if not names:
            return None
        more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
        columns = f"{'these columns are' if len(names) > 1 else 'this column is'} not understood"
        price = "" if self._has_price else "; no price was read in any row"
        advice = "rename what matters as price, quantity, hp ..."
        return Problem(name, f"{columns}: {', '.join(names[:NAMED])}{more}{price}; {advice}", is_note=True)
