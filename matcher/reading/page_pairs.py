"""Labels and their values in a page's markup: pairs of elements, led-in lines, grids under headers."""

from collections.abc import Iterator

from matcher.reading.page_tree import Element
from matcher.reading.page_words import any_name
from matcher.reading.table_headers import header
from matcher.reading.table_layout import header_score

Pair = tuple[str, Element | str]
"""A label, and its value as text or as the element that holds it."""
_HEADINGS = frozenset({"h1", "h2", "h3", "h4", "h5", "h6"})
LONGEST_LABEL = 45
_LONGEST_VALUE = 240


def pairs(element: Element) -> list[Pair]:
    """Return the label and value that an element's children are, or the pairs that they alternate in."""
    if (
        element.tag in {"table", "tbody", "tr", "thead", "dl", "select", "html", "body"}
        or element.tag in _HEADINGS
    ):
        return []
    parts = list(element.elements())
    if (
        not parts
        or len(parts) > 80
        or any(part.tag in _HEADINGS or part.tag in {"br", "table", "dl", "ul", "ol"} for part in parts)
    ):
        return []
    if len(parts) == 1:
        return _led_by(element, parts[0])
    if len(parts) % 2 or _own_text(element).strip(" :\n\t\r-–—|"):
        return []
    texts = [part.text(_LONGEST_VALUE + 10) for part in parts]
    found = list(zip(texts[::2], texts[1::2], strict=True))
    if not all(_is_label(part, label, value) for part, (label, value) in zip(parts[::2], found, strict=True)):
        return []
    return [(label.rstrip(" :"), part) for label, part in zip(texts[::2], parts[1::2], strict=True)]


def _own_text(element: Element) -> str:
    return "".join(child for child in element.children if isinstance(child, str))


def _is_label(element: Element, label: str, value: str) -> bool:
    if (
        not label
        or not value
        or len(label) > LONGEST_LABEL
        or len(value) > _LONGEST_VALUE
        or element.tag == "a"
    ):
        return False
    if any(part.tag in _HEADINGS for part in element.near()):
        return False
    return label.endswith(":") or header(label) is not None or _is_named_label(element)


def _is_named_label(element: Element) -> bool:
    return element.tag in {"dt", "th"} or any_name("label", element.attributes.get("class", ""))


def _led_by(element: Element, first: Element) -> list[Pair]:
    """Return a pair of a marked-up word and the text behind it: `<b>Voltage</b> 208-230 V`."""
    if first.tag not in {"b", "strong", "span", "em", "i", "u", "label", "div", "small"}:
        return []
    texts = [child for child in element.children if not isinstance(child, str) or child.strip()]
    if len(texts) != 2 or texts[0] is not first or not isinstance(texts[1], str):
        return []
    label, value = first.text(100), " ".join(texts[1].split())
    if value.startswith(":"):
        return []
    is_known = header(label.rstrip(" :")) is not None and len(value) <= _LONGEST_VALUE
    return [(label.rstrip(" :"), value.lstrip("-–—= "))] if is_known else []


def are_labels(cells: list[Element], texts: list[str]) -> bool:
    """Say whether every other cell of a row is a label: all are headings, or half are known."""
    known = sum(bool(text) and header(text.rstrip(" :")) is not None for text in texts)
    return all(cell.tag == "th" for cell in cells) or 2 * known >= len([text for text in texts if text]) > 0


def inside_groups(listed: Element) -> Iterator[Element]:
    """Yield the terms and definitions of a list, whatever groups them."""
    for child in listed.elements():
        if child.tag in {"div", "span", "section", "li"}:
            yield from inside_groups(child)
        else:
            yield child


def grid(table: Element) -> list[list[Element]]:
    """Return the rows of cells of a table whose first row are headers that are known; else none."""
    rows = [
        [cell for cell in row.elements() if cell.tag in {"td", "th"}]
        for row in table.near(600)
        if row.tag == "tr"
        and next((above for above in row.ancestors() if above.tag == "table"), None) is table
    ]
    rows = [row for row in rows if row]
    if len(rows) < 2 or len(rows[0]) < 3 or len(rows[0]) > 60:
        return []
    heads = [cell.text(LONGEST_LABEL + 10) for cell in rows[0]]
    telling = [found for found in map(header, heads) if found and found.column.fields]
    return rows if len(telling) >= 2 and header_score(heads) >= 2 else []
