"""Whether a page shows one listing or several, and where each one of several stands.

A card is one of a row of like elements that each carry a title of something for sale and a price or
facts. A page with a main heading and a price (or facts) outside its cards is about one thing, whatever
cards stand around.
"""

import re
from collections import defaultdict
from collections.abc import Sequence

from rapidfuzz import fuzz

from matcher.reading.page_tree import Element
from matcher.reading.page_words import any_name, has

MONEY = re.compile(
    r"[$€£]\s?\d|\d\s?[€£]|\b(?:USD|EUR|GBP|CAD|AUD|CHF)\s?\d|\d\s?(?:USD|EUR|GBP|CAD|AUD|CHF)\b"
)
_RATING = re.compile(r"\d\s?(?:hp|v|volts?|vac|kw|w|rpm|amps?|a|mfd|uf|µf|hz)\b", re.IGNORECASE)
_NUMBER = re.compile(
    r"\b(?!\d+(?:HP|V|W|RPM)\b)(?=[A-Z0-9-]{0,12}\d{2})(?=[A-Z0-9-]{0,12}[A-Z])[A-Z0-9]{1,8}-?[A-Z0-9-]{1,10}\b"
)
"""A maker's number in a heading: such a page is about that one thing."""
_ALIKE = 80
"""How alike (0..100) a heading and the thing's name in the data must be to speak of one thing."""
_HEADINGS = frozenset({"h1", "h2", "h3", "h4", "h5", "h6"})
_CARD_TAGS = frozenset(
    {"li", "article", "div", "section", "tr", "a", "dd", "figure", "p", "td", "tbody", "ul", "ol", "table"}
)
_TITLE_NAMES = ("title", "name", "heading", "headline", "subject")
_TITLE_WITHIN = 200
"""Elements of a card among which its title is looked for."""


def title_of(card: Element) -> Element | None:
    """Return the title of a listing: a heading, else what is named so, else a link or bold words."""
    near = [element for element in card.near(_TITLE_WITHIN) if element is not card]
    for heading in near:
        if heading.tag in _HEADINGS and heading.text(300):
            return heading
    for element in near:
        names = element.names.lower()
        named = element.attributes.get("itemprop") == "name" or any(word in names for word in _TITLE_NAMES)
        if named and 4 < len(element.text(300)) < 250 and not MONEY.fullmatch(element.text(300)):
            return element
    for tags in ({"a"}, {"b", "strong"}):
        for element in near:
            words = element.text(300)
            if element.tag in tags and len(words) > 7 and has("goods", words):
                return element
    return None


def cards(root: Element) -> list[Element]:
    """Return the cards of a page in reading order, the innermost ones where rows hold cards."""
    verdicts: dict[Element, bool] = {}
    found: list[Element] = []
    stack = [root]
    while stack:
        element = stack.pop()
        group = _group(element, verdicts)
        inner = set(group)
        stack.extend(child for child in reversed(list(element.elements())) if child not in inner)
        for card in group:
            deeper = cards_within(card, verdicts)
            found += deeper or [card]
    order = {element: place for place, element in enumerate(root.walk())}
    return sorted(found, key=lambda card: order[card])


def cards_within(row: Element, verdicts: dict[Element, bool]) -> list[Element]:
    """Return the cards inside a row of cards, none if the row is itself a card."""
    level = row
    while True:
        children = list(level.elements())
        group = _group(level, verdicts)
        if len(group) >= 2:
            return group if _titles(group) >= 2 else []
        if len(children) != 1:
            return []
        level = children[0]


def _titles(group: list[Element]) -> int:
    return len({title.text(200) for title in map(title_of, group) if title is not None})


def _group(parent: Element, verdicts: dict[Element, bool]) -> list[Element]:
    """Return the children of an element that are cards of one kind, if there are two or more."""
    kinds: dict[str, list[Element]] = defaultdict(list)
    for child in parent.elements():
        if child.tag in _CARD_TAGS:
            kinds[child.tag].append(child)
    best: list[Element] = []
    for children in kinds.values():
        if len(children) < 2:
            continue
        group = [child for child in children if _is_card(child, verdicts)]
        if len(group) > len(best):
            best = group
    return best if len(best) >= 2 and any(MONEY.search(card.text(3000)) for card in best) else []


def _is_card(element: Element, verdicts: dict[Element, bool]) -> bool:
    known = verdicts.get(element)
    if known is None:
        known = verdicts[element] = _looks_like_card(element)
    return known


def _looks_like_card(element: Element) -> bool:
    words = element.text(3000)
    if len(words) < 12 or not any(sign.isdigit() for sign in words):
        return False
    title = title_of(element)
    head = title.text(300) if title is not None else words[:120]
    if (
        title is None
        and element.tag not in {"tr", "li", "article"}
        and not any_name("results", element.names)
    ):
        return False
    return has("goods", head) and (MONEY.search(words) is not None or len(_RATING.findall(words)) >= 2)


def main_heading(root: Element, found: list[Element], named: str = "") -> Element | None:
    """Return the page's main heading outside its cards; `named` is what its data or window calls the thing.

    An `h1` that names goods with a figure is it; a shop that puts its own name there has it in an `h2`.
    """
    inside = set(found)
    best: tuple[int, Element] | None = None
    for element in root.walk():
        if element.tag not in {"h1", "h2"} or not element.text(300):
            continue
        if any(above in inside for above in (element, *element.ancestors())):
            continue
        weight = _heading_weight(element, named)
        if best is None or weight > best[0]:
            best = (weight, element)
    return best[1] if best and (best[1].tag == "h1" or best[0] >= 5) else None


def _heading_weight(heading: Element, named: str) -> int:
    words = heading.text(300)
    alike = bool(named) and fuzz.token_set_ratio(words.casefold(), named.casefold()) >= _ALIKE
    is_told = 2 * has("goods", words) + 3 * any(sign.isdigit() for sign in words)
    return is_told + 3 * alike + 2 * (heading.tag == "h1")


def is_about_one(heading: Element | None, outside: list[str]) -> bool:
    """Say whether a page with cards is still about one thing, named by its heading, with a price or facts.

    `outside` are the visible lines that stand in no card.
    """
    if heading is None:
        return False
    words = heading.text(300)
    if not has("goods", words) or has("results", words):
        return False
    if _NUMBER.search(words):
        return True
    text = "\n".join(outside)[:20_000]
    return MONEY.search(text) is not None or len(_RATING.findall(text)) >= 3


def are_listings(lines: Sequence[str]) -> bool:
    """Say whether lines that nothing else parts are listings, one a line, each with a price and a rating."""
    told = [line for line in lines if has("goods", line) and MONEY.search(line) and _RATING.search(line)]
    return len(told) >= 2 and len(told) == len([line for line in lines if MONEY.search(line)])


def wrap_flat_sections(root: Element) -> None:
    """Wrap listings that only headings part, each heading with what follows it, so that they are cards."""
    for parent in list(root.walk()):
        for tag in ("h2", "h3", "h4"):
            heads = [child for child in parent.elements() if child.tag == tag]
            if len(heads) >= 2 and all(has("goods", head.text(300)) for head in heads):
                _wrap(parent, tag)
                break


def _wrap(parent: Element, tag: str) -> None:
    before: list[Element | str] = []
    sections: list[Element] = []
    for child in parent.children:
        if isinstance(child, Element) and child.tag == tag:
            sections.append(Element("section", {}, parent))
        if not sections:
            before.append(child)
            continue
        sections[-1].children.append(child)
    if all(MONEY.search(section.text(5_000)) for section in sections):
        for section in sections:
            for inner in section.elements():
                inner.parent = section
        parent.children = [*before, *sections]


def drop_links_away(root: Element, title: str) -> None:
    """Take out links that name other goods: on a page about one thing they lead to others."""
    for element in root.walk():
        if any(child.tag == "a" for child in element.elements()):
            element.children = [child for child in element.children if not _leads_away(child, title)]


def _leads_away(child: Element | str, title: str) -> bool:
    if isinstance(child, str) or child.tag != "a" or child.attributes.get("href", "#").startswith("#"):
        return False
    words = child.text(300)
    told = has("goods", words) and any(sign.isdigit() for sign in words) and len(words) > 8
    return told and fuzz.ratio(words.casefold(), title.casefold()) < _ALIKE
