"""A saved web page into records: schema.org data first, visible text second.

A page about one product gives that one, whatever stands around it; a page of several listings gives
each one in reading order. Work grows with the page's length; no page raises.
"""

from collections.abc import Sequence

from rapidfuzz import fuzz

from matcher.reading.amounts import sums
from matcher.reading.cell_words import shown
from matcher.reading.decoding import decoded
from matcher.reading.page_cards import (
    MONEY,
    are_listings,
    cards,
    drop_links_away,
    is_about_one,
    main_heading,
    title_of,
    wrap_flat_sections,
)
from matcher.reading.page_data import PageData, Product, page_data
from matcher.reading.page_hidden import styles
from matcher.reading.page_match import ALIKE, Catalogue
from matcher.reading.page_product import product_lines
from matcher.reading.page_record import page_record
from matcher.reading.page_sift import sift
from matcher.reading.page_table import listing_rows
from matcher.reading.page_text import visible_lines
from matcher.reading.page_tree import Element, remove, stylesheets, tree
from matcher.reading.page_words import has, is_just
from matcher.reading.table_record import row_record
from matcher.record import Record

_CLEARLY = 5
"""How much more alike (0..100) a heading is to the product that it names than to the next one."""


def read_page(page: str | bytes, name: str) -> list[Record]:
    """Return the listings of a saved page; none if nothing on it is for sale.

    One listing has the id `name`, several have `name#1`, `name#2` ... in reading order.
    """
    text = decoded(page) if isinstance(page, bytes) else page
    root = tree(text)
    data = page_data(root)
    window_title = _window_title(root)
    main = _main_product(data, root)
    several = _scopes(data, main)
    if main is not None:
        _drop_other_scopes(root, data, main)
    sift(root, styles(stylesheets(text)), about_one=main is not None)
    if main is None:
        wrap_flat_sections(root)
    found = several or cards(root)
    heading = main_heading(root, found, main.name if main is not None else "")
    if main is None and len(found) < 2 and not several:
        rows = listing_rows(root)
        if len(rows) > 1:
            return [
                row_record(cells, layout, f"{name}#{number}")
                for number, (cells, layout) in enumerate(rows, 1)
            ]
    outside = _outside(root, found, heading)
    one = main is not None or len(found) < 2 or (not several and is_about_one(heading, outside))
    if one and heading is not None:
        drop_links_away(root, heading.text(400))
    if one and not (main is None and max(len(data.listed), len(data.products)) > 1):
        return _single(
            heading, outside if len(found) > 1 else _outside(root, [], heading), main, name, window_title
        )
    return _several(found, data, name)


def _window_title(root: Element) -> str:
    """Return the page's own title without the shop's name behind it."""
    element = next((element for element in root.walk() if element.tag == "title"), None)
    words = element.text(300) if element is not None else ""
    for sign in (" | ", " · ", " — ", " – "):
        words = words.split(sign)[0]
    head, dash, tail = words.rpartition(" - ")
    return head if dash and not any(letter.isdigit() for letter in tail) else words


def _main_product(data: PageData, root: Element) -> Product | None:
    """Return the product that the page is about: the only one, or the one that the main heading names."""
    if len(data.products) == 1:
        return data.products[0]
    if not data.products:
        return None
    heading = main_heading(root, [])
    words = heading.text(300).casefold() if heading is not None else ""
    alike = [
        product
        for product in data.products
        if product.name and fuzz.token_set_ratio(words, product.name.casefold()) >= ALIKE
    ]
    best = sorted(alike, key=lambda product: -fuzz.ratio(words, product.name.casefold()))
    if not best or has("results", words) or (len(best) > 1 and not _names_one(words, best[0], best[1])):
        return None
    return best[0]


def _names_one(words: str, best: Product, second: Product) -> bool:
    """Say whether a heading names one product rather than what several have in common (`Rebuilt motors`)."""
    likeness = fuzz.ratio(words, best.name.casefold())
    return likeness >= ALIKE or likeness - fuzz.ratio(words, second.name.casefold()) >= _CLEARLY


def _scopes(data: PageData, main: Product | None) -> list[Element]:
    """Return the microdata elements of several listings."""
    if main is not None:
        return []
    elements = [product.element for product in data.products if product.element is not None]
    return elements if len(elements) > 1 else []


def _drop_other_scopes(root: Element, data: PageData, main: Product) -> None:
    """Take other products' microdata out of the tree: they are related goods."""
    around = {main.element, *main.element.ancestors()} if main.element is not None else set()
    others = {
        product.element
        for product in data.products
        if product.element is not None and product.element not in around and product.element.tag != "main"
    }
    titled = {above for heading in root.walk() if heading.tag == "h1" for above in heading.ancestors()}
    remove(root, {element for element in others if element not in titled})


def _outside(root: Element, found: Sequence[Element], heading: Element | None) -> list[str]:
    """Return the visible lines that stand in no card, without the heading."""
    remove(root, set(found))
    return visible_lines(root, heading)


def _single(
    heading: Element | None, lines: Sequence[str], main: Product | None, name: str, window_title: str
) -> list[Record]:
    title = shown(heading.text(400)) if heading is not None else ""
    lines = [line for line in lines if not _leads_to_others(line)]
    if main is None and not has("goods", title) and are_listings(lines):
        return _line_by_line(lines, name)
    if not has("goods", title):
        named = (main.name if main else "", window_title)
        title = next((words for words in named if has("goods", words)), title)
    data = list(product_lines(main, sums("\n".join(lines)))) if main is not None else []
    record = page_record(title, list(lines), data, name)
    return [record] if record.where or record.conflicts else []


def _leads_to_others(line: str) -> bool:
    """`Vous aimerez aussi : ...`: what stands behind such a label is another thing."""
    label, colon, _ = line.partition(":")
    return colon != "" and is_just("heading", label)


def _line_by_line(lines: Sequence[str], name: str) -> list[Record]:
    """Read a page that lists one thing a line."""
    told = [line for line in lines if MONEY.search(line)]
    return [page_record("", [line], [], f"{name}#{number}") for number, line in enumerate(told, 1)]


def _several(found: Sequence[Element], data: PageData, name: str) -> list[Record]:
    """Read each card with the data about it; data alone where there are no cards."""
    if found:
        catalogue = Catalogue(data, found)
        records = [_card(card, place, catalogue) for place, card in enumerate(found)]
    else:
        products = [*data.listed, *data.products]
        records = [page_record(product.name, [], product_lines(product, []), "") for product in products]
    records = [record for record in records if record.where or record.conflicts]
    for number, record in enumerate(records, 1):
        record.id = f"{name}#{number}" if len(records) > 1 else name
    return records


def _card(card: Element, place: int, catalogue: Catalogue) -> Record:
    heading = title_of(card)
    title = shown(heading.text(400)) if heading is not None else ""
    lines = visible_lines(card, heading)
    product = catalogue.take(card, title, place)
    said = product_lines(product, sums("\n".join(lines))) if product is not None else ()
    return page_record(title, lines, said, "")
