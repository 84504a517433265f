"""How a table is laid out: its delimiter, its header, and whether its decimal sign is the comma.

All of it is told from the first lines: the delimiter and the line under which the most cells are
headers that are known (`table_headers`). Title lines above the header are skipped by that.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import zip_longest

from matcher.reading.amounts import is_continental
from matcher.reading.cell_words import meanings
from matcher.reading.table_headers import LONGEST, Header, columns, folded, header
from matcher.reading.table_rows import DELIMITERS, split_line

SAMPLE = 200
"""Lines that are looked at before the first row is read."""
_HEADER_WITHIN = 40
_HEADER_LINES = 6
_LOOSE = frozenset({"no", "nr", "num", "number", "nos"})


@dataclass(frozen=True, slots=True)
class Heading:
    """One column as the table names it, and what the name means, if anything."""

    words: str
    header: Header | None


@dataclass(frozen=True, slots=True)
class Layout:
    """A table's delimiter, the line of its header (from 1, 0 without one), its columns, its decimal sign."""

    delimiter: str
    line: int
    headings: tuple[Heading, ...]
    comma: bool = False
    names: frozenset[str] = field(init=False)
    """The header's own words, in lower case; a row of nothing else is the header again."""

    def __post_init__(self) -> None:
        words = frozenset(heading.words.casefold() for heading in self.headings if heading.words)
        object.__setattr__(self, "names", words)

    @property
    def width(self) -> int:
        """Number of columns that the header names."""
        return len(self.headings)

    @property
    def known(self) -> int:
        """Number of columns whose name means something."""
        return sum(heading.header is not None for heading in self.headings)


def headings(cells: Sequence[str]) -> tuple[Heading, ...]:
    """Return the columns that a header names; empty cells at its end are none."""
    words = [" ".join(cell.split()) for cell in cells]
    while words and not words[-1]:
        words.pop()
    return _with_loose_number([Heading(word, header(word)) for word in words])


def _with_loose_number(named: Sequence[Heading]) -> tuple[Heading, ...]:
    """`No.` beside a maker is the maker's number, where no column is called so and no title stands there."""
    names = [heading.header.column.name if heading.header else "" for heading in named]
    if "brand" not in names or not {"part_number", "title"}.isdisjoint(names):
        return tuple(named)
    loose = Header(columns()["loose_number"])
    return tuple(
        replace(heading, header=loose) if folded(heading.words) in _LOOSE else heading for heading in named
    )


def header_score(cells: Sequence[str]) -> int:
    """Return how many cells of a line are known headers; 0 where most aren't or data stands among them."""
    filled = [cell.strip() for cell in cells if cell.strip()]
    if not filled:
        return 0
    # Figures first: nearly every row of data has some, and is told from a header by that alone.
    if 4 * sum([_has_figure(cell) for cell in filled]) > len(filled):
        return 0
    known = [cell for cell in filled if header(cell) is not None]
    return len({folded(cell) for cell in known}) if 2 * len(known) >= len(filled) else 0


def _has_figure(cell: str) -> bool:
    return cell.isdecimal() or (not cell.isalpha() and any(map(str.isdigit, cell)))


def sniff(lines: Sequence[str]) -> Layout | None:
    """Return the layout of a table from its first lines, `None` if no line is a header.

    One known header makes a table only where it is the only column.
    """
    named = _named_delimiter(lines)
    best = max(
        (_best_header(lines, sign) for sign in ([named] if named else DELIMITERS)),
        key=lambda found: found[0],
    )
    score, number, delimiter = best
    if score < 2:
        return _single_column(lines) or _shaped(lines, [delimiter] if named else DELIMITERS)
    cells, taken, _ = _whole(lines, number, delimiter)
    layout = Layout(delimiter, number + taken, headings(cells))
    layout = _with_second_line(_with_unit_line(layout, lines), lines)
    return replace(layout, comma=_has_decimal_commas(layout, lines))


def _named_delimiter(lines: Sequence[str]) -> str:
    """Read the `sep=;` line that spreadsheets write."""
    first = lines[0].strip().strip('"').lower() if lines else ""
    return first[4:5].replace("\\", "\t") if first.startswith("sep=") else ""


def _best_header(lines: Sequence[str], delimiter: str) -> tuple[int, int, str]:
    best = (0, 0, delimiter)
    for number, line in enumerate(lines[:_HEADER_WITHIN]):
        if (delimiter not in line and line[:1] != '"') or len(line) > 20_000:
            continue
        cells, _, left_open = _whole(lines, number, delimiter)
        score = 0 if left_open or len(cells) > 400 else header_score(cells)
        if score > best[0]:
            best = (score, number, delimiter)
    return best


def _whole(lines: Sequence[str], number: int, delimiter: str) -> tuple[list[str], int, bool]:
    """Return the cells of a header, the lines it takes (`"Part\\nNumber"`), and whether it stays open."""
    cells, left_open = split_line(lines[number], delimiter)
    taken = 1
    while left_open and taken < _HEADER_LINES and number + taken < len(lines):
        taken += 1
        cells, left_open = split_line("\n".join(lines[number : number + taken]), delimiter)
    return cells, taken, left_open


def _shaped(lines: Sequence[str], delimiters: Sequence[str]) -> Layout | None:
    """Take a line of words for the header, though most of them are strange, where rows like it follow.

    The first line with several cells is it: all filled, none with a figure, at least two known, and the
    line below has a cell for each, some with figures.
    """
    for delimiter in delimiters:
        rows = [
            (number, split_line(line, delimiter)[0]) for number, line in enumerate(lines[:_HEADER_WITHIN])
        ]
        rows = [(number, cells) for number, cells in rows if sum(map(bool, map(str.strip, cells))) > 2]
        if len(rows) < 2:
            continue
        (number, cells), (_, under) = rows[:2]
        are_words = all(cell.strip() and not _has_figure(cell) and len(cell) <= LONGEST for cell in cells)
        known = sum(header(cell) is not None for cell in cells)
        if are_words and known >= 2 and len(under) == len(cells) and any(map(_has_figure, under)):
            layout = Layout(delimiter, number + 1, headings(cells))
            return replace(layout, comma=_has_decimal_commas(layout, lines))
    return None


def _single_column(lines: Sequence[str]) -> Layout | None:
    """A table of one column holds a listing's text in each row."""
    for number, line in enumerate(lines[:_HEADER_WITHIN]):
        words = line.strip().strip('"')
        if words:
            found = header(words)
            if found is not None and found.column.how == "free":
                return Layout(",", number + 1, (Heading(words, found),))
            return None
    return None


def _with_unit_line(layout: Layout, lines: Sequence[str]) -> Layout:
    """Take units and currencies from a line of nothing else under the header (`hp;V;A;mm;EUR`)."""
    under = lines[layout.line] if layout.line < len(lines) else ""
    cells = [folded(cell) for cell in split_line(under, layout.delimiter)[0]]
    units, currencies = meanings("unit"), meanings("currency")
    filled = [cell for cell in cells if cell]
    if len(filled) < 2 or not all(cell in units or cell in currencies for cell in filled):
        return layout
    over = [heading.header for heading, cell in zip(layout.headings, cells, strict=False) if cell]
    if sum(above is None or above.column.how == "free" for above in over) > 1:
        return layout  # a second line of headers
    cells += [""] * (layout.width - len(cells))
    named = [
        replace(heading, header=_with_unit(heading.header, units.get(cell, ""), currencies.get(cell, "")))
        for heading, cell in zip(layout.headings, cells, strict=False)
    ]
    return replace(layout, line=layout.line + 1, headings=tuple(named))


def _with_second_line(layout: Layout, lines: Sequence[str]) -> Layout:
    """Take headers from a second line below merged ones (`Electrical,,Price` over `HP,Volts,USD`).

    Each of its cells is a header of its own, or goes on with the one above (`Shaft` over `dia in`).
    """
    under = lines[layout.line] if layout.line < len(lines) else ""
    cells = [" ".join(cell.split()) for cell in split_line(under, layout.delimiter)[0]]
    if sum(bool(cell) and header(cell) is not None for cell in cells) < 2 or len(cells) > layout.width:
        return layout
    named: list[Heading] = []
    group = ""
    for heading, cell in zip_longest(layout.headings, cells, fillvalue=""):
        if not isinstance(heading, Heading):
            return layout
        group = heading.words or group
        both = _both(heading, group, str(cell)) if cell else heading
        if both is None:
            return layout
        named.append(both)
    return replace(layout, line=layout.line + 1, headings=tuple(named))


def _both(heading: Heading, group: str, cell: str) -> Heading | None:
    """Return what a header and the cell below it mean together, `None` where they don't belong together."""
    above = heading.header
    labelled = above is not None and above.column.how != "free"
    unit = folded(cell)
    if labelled and (unit in meanings("unit") or unit in meanings("currency")):
        return replace(
            heading,
            header=_with_unit(above, meanings("unit").get(unit, ""), meanings("currency").get(unit, "")),
        )
    over = header(group) if group else None
    if over is not None and over.column.how != "free":
        together = header(f"{group} {cell}")
        if together is not None:
            return Heading(f"{group} {cell}", together)
    meant = header(cell)
    return Heading(cell, meant) if meant is not None and not labelled else None


def _with_unit(known: Header | None, unit: str, currency: str) -> Header | None:
    if known is not None and unit in known.column.units:
        return replace(known, unit=unit)
    if known is not None and currency and known.column.how == "money":
        return replace(known, currency=currency)
    return known


def _has_decimal_commas(layout: Layout, lines: Sequence[str]) -> bool:
    """Say whether more cells show a decimal comma than a decimal point."""
    seen: Counter[bool] = Counter()
    for line in lines[layout.line : SAMPLE]:
        for cell in split_line(line, layout.delimiter)[0]:
            plain = cell.strip()
            if plain[:1].isdigit():
                seen[True] += is_continental(plain)
                whole, point, part = plain.rpartition(".")
                seen[False] += bool(point) and whole.isdigit() and part.isdigit() and len(part) != 3
    return seen[True] > seen[False]
