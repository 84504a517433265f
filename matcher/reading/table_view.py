"""A column that says from which end a rotation is seen speaks for the rotation's own column."""

from collections.abc import Sequence

from matcher.reading.cell_words import meanings
from matcher.reading.table_headers import folded
from matcher.reading.table_layout import Heading


def with_view(headings: Sequence[Heading], cells: Sequence[str]) -> tuple[Sequence[Heading], Sequence[str]]:
    """Return the columns of a row with the view put into the rotation's cell: `CW (seen from lead end)`."""
    names = [heading.header.column.name if heading.header else "" for heading in headings]
    if "view" not in names or "rotation" not in names:
        return headings, cells
    turn, seen = names.index("rotation"), names.index("view")
    said = cells[seen].strip() if max(turn, seen) < len(cells) else ""
    if folded(said) not in meanings("view") or not cells[turn].strip():
        return headings, cells
    viewed = f"{cells[turn].strip()} (seen from {said.replace('_', ' ')})"
    places = [place for place in range(min(len(headings), len(cells))) if place != seen]
    said_so = [viewed if place == turn else cells[place] for place in places]
    return [headings[place] for place in places], said_so
