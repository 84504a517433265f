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
            self._open = [place for place in self._open if not self._found(cells, layout, place)]

    def _found(self, cells: Sequence[str], layout: Layout, place: int) -> bool:
        if place >= len(cells) or not cells[place].strip():
            return False
        self._names[layout.headings[place].words[:LONGEST]] = None
        return True

    def told(self, name: str) -> Problem | None:
        """Return what to say of the whole table, None where every filled column was understood."""
        if not self._names:
            return None
        names = list(self._names)
        more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
        columns = f"{'these columns are' if len(names) > 1 else 'this column is'} not understood"
        price = "" if self._has_price else "; no price was read in any row"
        advice = "rename what matters as price, quantity, hp ..."
        return Problem(name, f"{columns}: {', '.join(names[:NAMED])}{more}{price}; {advice}", is_note=True)
