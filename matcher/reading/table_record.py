"""One row of a table into a record: labelled values by their headers, free text by the reader."""

import re
from collections.abc import Sequence
from dataclasses import replace

from matcher.reading.cell_words import shown
from matcher.reading.claim import Claim
from matcher.reading.code import is_code
from matcher.reading.designation import designation
from matcher.reading.labelled import claims_of, read_value
from matcher.reading.listing import read_beside, read_listing
from matcher.reading.table_headers import Header
from matcher.reading.table_layout import Heading, Layout
from matcher.reading.table_view import with_view
from matcher.record import Record

_PLACE = re.compile(r"[A-Z]{1,3}(?:-?\d{1,3}){1,4}[A-Z]?")
_METRIC = frozenset({"kw", "w"})
_FIRST = 2
"""Strength, while the row is put together, of a price that is asked now and of a power in hp: `1/4` beside
`0.18` kW is the rating, the other one its rounding."""


def own_id(cells: Sequence[str], layout: Layout) -> str:
    """Return what stands in a column named `id`, the only one that names listings; empty without one."""
    for heading, cell in zip(layout.headings, cells, strict=False):
        if heading.header is not None and heading.header.column.name == "id":
            return cell.strip()[:200]
    return ""


def row_record(cells: Sequence[str], layout: Layout, name: str) -> Record:
    """Read one row.

    The record's text holds the free text, then a line for each other filled cell, `header: cell`. The
    reader sees the free text, and lines whose header nobody knows unless they hold figures alone.
    """
    row = _Row(layout)
    for heading, cell in zip(*with_view(layout.headings, cells), strict=False):
        stripped = cell.strip()
        if stripped[:1] == "=":
            stripped = shown(stripped)
        if stripped:
            row.add(heading, stripped)
    return row.record(name)


class _Row:
    """The parts of one record while they are put together."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.title = ""
        self.free: list[str] = []
        self.labelled: list[tuple[str, Header | None, str]] = []

    def add(self, heading: Heading, cell: str) -> None:
        """Take one filled cell."""
        header = heading.header
        if header is not None and header.column.how == "free":
            if header.column.name == "title" and not self.title:
                self.title = " ".join(cell.split())
            else:
                self.free.append(cell)
        elif header is None or header.column.name != "id":
            cell = " ".join(cell.split())
            line = f"{heading.words}: {cell}"
            # A bare figure or a number alone under a header that nobody knows may be anything: a rack, a bin.
            if header is None and _tells(cell) and _tells(heading.words) and not _is_number(cell):
                self.free.append(line)
            else:
                self.labelled.append((line, header, cell))

    def record(self, name: str) -> Record:
        """Let the reader settle the free text and what the labels claim."""
        seen = "\n".join(self.free)
        lines = [seen] if seen else []
        at = len(seen) + 1 if seen else 0
        claims: list[Claim] = []
        for line, header, cell in self.labelled:
            if header is not None:
                claims += self._claims(header, cell, (at, at + len(line)))
            lines.append(line)
            at += len(line) + 1
        claims = _with_maker([*_without_second(_joined_speeds(claims)), *_number_in(self.title, claims)])
        return read_beside(claims, seen, "\n".join(lines), self.title, id=name)

    def _claims(self, header: Header, cell: str, span: tuple[int, int]) -> list[Claim]:
        claims = claims_of(read_value(header, cell, comma=self.layout.comma), span)
        column = header.column.name
        if column == "asking" or (column == "power" and header.unit not in _METRIC):
            for claim in claims:
                claim.strength = _FIRST
        return claims


def _number_in(title: str, claims: Sequence[Claim]) -> list[Claim]:
    """A title that is a number alone is the maker's, where columns name the maker and no number."""
    named = {claim.field for claim in claims}
    if not title or "brand" not in named or "part_number" in named:
        return []
    number = designation(title)
    return claims_of([("part_number", number)], (0, len(title)), "title") if number else []


def _with_maker(claims: list[Claim]) -> list[Claim]:
    """`Mfr / Model: Oxterby OX 211A14`: a maker before the number, named by another column or by none."""
    number = next((claim for claim in claims if claim.field == "part_number"), None)
    if number is None or " " not in str(number.value):
        return claims
    given = next((str(claim.value) for claim in claims if claim.field == "brand"), "")
    said = read_listing("", str(number.value)).facts
    if not said.brand or f"{said.brand} {said.part_number}" != number.value:
        return claims
    if given and given.casefold() != said.brand.casefold():
        return claims
    rest = [claim for claim in claims if claim is not number]
    maker = [] if given else [replace(number, field="brand", value=said.brand)]
    return [*rest, *maker, replace(number, value=said.part_number)]


def _is_number(cell: str) -> bool:
    """Say whether a cell is one word of letters and figures: `QZ-881`, `B-1`, `S-2-4`."""
    return is_code(cell) or _PLACE.fullmatch(cell) is not None


def _tells(words: str) -> bool:
    return any(map(str.isalpha, words))


def _without_second(claims: list[Claim]) -> list[Claim]:
    """A price asked now goes before a plain one, a power in hp before one in kW."""
    first = {claim.field for claim in claims if claim.strength == _FIRST}
    if not first:
        return claims
    kept = [claim for claim in claims if claim.strength == _FIRST or claim.field not in first]
    for claim in kept:
        claim.strength = 1  # against the free text all columns weigh the same
    return kept


def _joined_speeds(claims: list[Claim]) -> list[Claim]:
    """Columns of lowest and highest speed make a range; the lowest alone says nothing."""
    low = next(
        (claim for claim in claims if claim.field == "rpm_range" and isinstance(claim.value, int)), None
    )
    if low is None:
        return claims
    claims.remove(low)
    high = next((claim for claim in claims if claim.field == "rpm"), None)
    if high is None or not isinstance(high.value, tuple) or len(high.value) != 1:
        return claims
    claims.remove(high)
    if low.value < high.value[0]:
        claims.append(replace(high, field="rpm_range", value=(low.value, high.value[0])))
    return claims
