"""A table in a page that lists motors, one a row, under headers that are known."""

from matcher.reading.page_text import flat
from matcher.reading.page_tree import Element
from matcher.reading.table_layout import Layout, header_score, headings
from matcher.reading.table_lines import filled_cells, is_header_again, is_section, is_total

Rows = list[tuple[tuple[str, ...], Layout]]


def listing_rows(root: Element) -> Rows:
    """Return the rows of the page's largest table of listings, none if there is no such table."""
    best: Rows = []
    for table in root.walk():
        if table.tag == "table":
            rows = _rows(table)
            if len(rows) > len(best):
                best = rows
    return best


def _rows(table: Element) -> Rows:
    """Return the rows below a table's header; rows of tables inside it are not its own."""
    layout: Layout | None = None
    found: Rows = []
    for row in table.walk():
        if row.tag != "tr" or _table_of(row) is not table:
            continue
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


def _table_of(row: Element) -> Element | None:
    return next((above for above in row.ancestors() if above.tag == "table"), None)


def _sells(layout: Layout) -> bool:
    """Say whether a table's columns are those of listings: a price, and a name or number of the thing."""
    names = {heading.header.column.name for heading in layout.headings if heading.header is not None}
    return bool(names & {"price", "asking"}) and bool(
        names & {"title", "part_number", "brand", "power", "volts", "text"}
    )
