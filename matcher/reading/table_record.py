"""One row of a table into a record: labelled values by their headers, free text by the reader."""

from collections.abc import Sequence

from matcher.reading.cell_words import meanings
from matcher.reading.designation import designation
from matcher.reading.items import Claim
from matcher.reading.labelled import claims_of, read_value
from matcher.reading.listing import read_beside
from matcher.reading.table_headers import folded
from matcher.reading.table_layout import Heading, Layout
from matcher.record import Record


def own_id(cells: Sequence[str], layout: Layout) -> str:
    """Return what stands in a column named `id`, the only one that names listings; empty without one."""
    for heading, cell in zip(layout.headings, cells, strict=False):
        if heading.header is not None and heading.header.column.name == "id":
            return cell.strip()[:200]
    return ""


def row_record(cells: Sequence[str], layout: Layout, name: str) -> Record:
    """Read one row.

    The record's text holds a line for each filled cell, `header: cell`, then the free text. The reader
    sees the free text, and the lines whose header nobody knows unless they hold figures alone.
    """
    return _Row(layout).read(cells, name)


def _with_view(headings: Sequence[Heading], cells: Sequence[str]) -> tuple[Sequence[Heading], Sequence[str]]:
    """Put a column that says from which end a rotation is seen into the rotation's own cell."""
    names = [heading.header.column.name if heading.header else "" for heading in headings]
    if "view" not in names or "rotation" not in names:
        return headings, cells
    turn, seen = names.index("rotation"), names.index("view")
    said = cells[seen].strip() if max(turn, seen) < len(cells) else ""
    if folded(said) not in meanings("view") or not cells[turn].strip():
        return headings, cells
    viewed = f"{cells[turn].strip()} (seen from {said.replace('_', ' ')})"
    places = [place for place in range(len(headings)) if place != seen and place < len(cells)]
    return [headings[place] for place in places], [
        viewed if place == turn else cells[place] for place in places
    ]


class _Row:
    """The lines of one record while they are put together, and the claims on them."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.lines: list[str] = []
        self.seen: list[str] = []
        self.at = 0
        self.claims: list[Claim] = []
        self.low = 0

    def read(self, cells: Sequence[str], name: str) -> Record:
        """Lay the cells out and let the reader settle them."""
        title, free = "", []
        for heading, raw in zip(*_with_view(self.layout.headings, cells), strict=False):
            cell = raw.strip()
            column = heading.header.column if heading.header else None
            if not cell or (column is not None and column.name == "id"):
                continue
            if column is not None and column.how == "free":
                if column.name == "title" and not title:
                    title = " ".join(cell.split())
                else:
                    free.append(cell)
            else:
                self._label(heading, " ".join(cell.split()))
        for cell in free:
            self._add(cell, cell)
        self._name_number(title)
        self._settle_prices()
        self._join_speeds()
        text, seen = "\n".join(self.lines), "\n".join(self.seen)
        return read_beside(self.claims, seen, text, title, id=name)

    def _label(self, heading: Heading, cell: str) -> None:
        line = f"{heading.words}: {cell}"
        if heading.header is None:
            # A bare figure under a header that nobody knows may be anything.
            telling = any(sign.isalpha() for sign in cell) and any(sign.isalpha() for sign in heading.words)
            self._add(line, line if telling else " " * len(line))
            return
        values = read_value(heading.header, cell, comma=self.layout.comma)
        span = (self.at, self.at + len(line))
        if heading.header.column.name == "rpm_low":
            self.low = int(str(values[0][1])) if values else 0
        else:
            strength = 2 if heading.header.column.name == "asking" else 1
            self.claims += [
                Claim(claim.field, claim.value, claim.source, claim.span, claim.clause, strength)
                for claim in claims_of(values, span)
            ]
        self._add(line, " " * len(line))

    def _add(self, line: str, seen: str) -> None:
        self.lines.append(line)
        self.seen.append(seen)
        self.at += len(line) + 1

    def _name_number(self, title: str) -> None:
        """A title that is a number alone is the maker's, where columns name the maker and no number."""
        named = {claim.field for claim in self.claims}
        if title and "brand" in named and "part_number" not in named:
            number = designation(title)
            said = [("part_number", number)] if number else []
            self.claims += claims_of(said, (0, len(title)), "title")

    def _settle_prices(self) -> None:
        """A price asked now goes before a plain one; a currency column speaks for a price without a sign."""
        asked = [claim for claim in self.claims if claim.strength == 2]
        fields = {claim.field for claim in asked}
        self.claims = [claim for claim in self.claims if claim.strength == 2 or claim.field not in fields]
        self.claims = [
            Claim(claim.field, claim.value, claim.source, claim.span, claim.clause) for claim in self.claims
        ]

    def _join_speeds(self) -> None:
        """Columns of lowest and highest speed make a range."""
        high = next((claim for claim in self.claims if claim.field == "rpm"), None)
        if not self.low or high is None or not isinstance(high.value, tuple) or len(high.value) != 1:
            return
        self.claims.remove(high)
        if self.low < high.value[0]:
            self.claims.append(Claim("rpm_range", (self.low, high.value[0]), "text", high.span, high.clause))
