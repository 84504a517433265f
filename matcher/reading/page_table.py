"""A table in a page that lists motors, one a row, under headers that are known."""

from matcher.reading.page_text import flat
from matcher.reading.page_tree import Element
from matcher.reading.table_layout import Layout, header_score, headings
from matcher.reading.table_lines import filled_cells, is_header_again, is_section, is_total

Rows = list[tuple[tuple[str, ...], Layout]]


def listing_rows(root: Element) -> Rows:
    """Return the rows of the page's largest table of listings, none if there is no such table."""
    best: Rows = []
    for table_rows in _tables(root):
        rows = _rows(table_rows)
        if len(rows) > len(best):
            best = rows
    return best


def _tables(root: Element) -> list[list[Element]]:
    """Return the rows of each table in one walk; a row that holds a table lays a page out and lists none."""
    tables: list[list[Element]] = []
    laid_out: set[Element] = set()
    stack: list[tuple[Element, list[Element] | None, Element | None]] = [(root, None, None)]
    while stack:
        element, rows, row = stack.pop()
        if element.tag == "table":
            if row is not None:
                laid_out.add(row)
            rows, row = [], None
            tables.append(rows)
        elif element.tag == "tr" and rows is not None:
            rows.append(element)
            row = element
        stack += [(child, rows, row) for child in reversed(element.children) if isinstance(child, Element)]
    return [[row for row in rows if row not in laid_out] for rows in tables]


def _rows(table_rows: list[Element]) -> Rows:
    """Return the rows below a table's header."""
    layout: Layout | None = None
    found: Rows = []
    for row in table_rows:
        parts = [child for child in row.elements() if child.tag in {"td", "th"}]
        if layout is None:
            heads = [part.text(80) for part in parts[:100]]
            if header_score(heads) >= 2:
                layout = Layout("\t", 0, headings(heads))
            continue
        cells = tuple(map(flat, parts))
        filled = filled_cells(cells)
        if not (is_header_again(filled, layout) or is_total(filled) or is_section(filled, layout)):
            found.append((cells[: layout.width], layout))
    return found if layout is not None and _sells(layout) else []


def _sells(layout: Layout) -> bool:
    """Say whether a table's columns are those of listings: a price, and a name or number of the thing."""
    names = {heading.header.column.name for heading in layout.headings if heading.header is not None}
    return bool(names & {"price", "asking"}) and bool(
        names & {"title", "part_number", "brand", "power", "volts", "text"}
    )
