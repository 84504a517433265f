"""A column headed `Ø` beside volts is the phase where only 1 and 3 stand in it, else a diameter."""

from collections.abc import Sequence
from dataclasses import replace

from matcher.reading.table_headers import Header, columns
from matcher.reading.table_layout import Heading, Layout
from matcher.reading.table_rows import split_line

_SIGNS = frozenset("ØøΦφϕ⌀")
_PHASES = frozenset({"1", "3"})
_SUPPLIES = frozenset({"volts", "supply"})


def with_phase_sign(layout: Layout, lines: Sequence[str]) -> Layout:
    """Return the layout with such a column named for what its cells in the first lines say."""
    signs = [place for place, heading in enumerate(layout.headings) if heading.words in _SIGNS]
    names = {heading.header.column.name for heading in layout.headings if heading.header}
    if not signs or names.isdisjoint(_SUPPLIES) or "phase" in names:
        return layout
    rows = [split_line(line, layout.delimiter)[0] for line in lines[layout.line :]]
    named = list(layout.headings)
    for place in signs:
        said = {row[place].strip().rstrip("ØøΦφϕ⌀ ") for row in rows if place < len(row)} - {""}
        if said and said <= _PHASES:
            named[place] = Heading(named[place].words, Header(columns()["phase"]))
    return replace(layout, headings=tuple(named))
