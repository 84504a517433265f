"""schema.org data in a saved page: JSON-LD and microdata, as plain mappings, and the products in them.

Property names and types as in schema.org release 30.0 (2026-03-19).
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice

from matcher.reading.page_tree import Element

Thing = Mapping[str, object]

_LARGEST = 3_000_000
_MOST_THINGS = 5_000
_WRAPPED = re.compile(r"^\s*(?://\s*)?(?:<!\[CDATA\[|<!--)|(?:(?://\s*)?\]\]>|-->)\s*$")
_SPARE_COMMA = re.compile(r",(\s{0,200}[\]}])")
_PRODUCTS = frozenset({"Product", "IndividualProduct", "ProductModel", "SomeProducts"})
_OFFERS = frozenset({"Offer", "AggregateOffer", "OfferForPurchase"})
_LISTS = frozenset({"ItemList", "OfferCatalog", "SearchResultsPage", "CollectionPage"})
_FROM_ATTRIBUTE = {
    "meta": "content",
    "link": "href",
    "a": "href",
    "img": "src",
    "time": "datetime",
    "data": "value",
}


@dataclass(frozen=True, slots=True)
class Product:
    """A product (or lone offer) of the page, and the element that holds it, if it stands in microdata."""

    thing: Thing
    element: Element | None = None

    @property
    def name(self) -> str:
        """What the data calls it."""
        return text_of(self.thing.get("name") or self.thing.get("title"))

    @property
    def url(self) -> str:
        """Where its own page is."""
        return text_of(self.thing.get("url") or self.thing.get("@id"))


@dataclass(frozen=True, slots=True)
class PageData:
    """The products that stand at the top of the page's data, and those in its lists."""

    products: tuple[Product, ...]
    listed: tuple[Product, ...]


def page_data(root: Element) -> PageData:
    """Return the products of a page, JSON-LD first."""
    products: list[Product] = []
    listed: list[Product] = []
    things = [Product(thing) for thing in islice(_json_ld(root), _MOST_THINGS)]
    for product in (*things, *_microdata(root)):
        kinds = types(product.thing)
        if kinds & _PRODUCTS or kinds & _OFFERS:
            products.append(product)
        elif "ProductGroup" in kinds:
            products.append(_only_variant(product))
        elif kinds & _LISTS:
            listed += [Product(thing, product.element) for thing in _listed(product.thing)]
        else:
            main = product.thing.get("mainEntity")
            if isinstance(main, Mapping) and types(main) & (_PRODUCTS | _OFFERS):
                products.append(Product(main, product.element))
            elif isinstance(main, Mapping) and types(main) & _LISTS:
                listed += [Product(thing, product.element) for thing in _listed(main)]
    return PageData(tuple(products), tuple(listed))


def types(thing: Thing) -> frozenset[str]:
    """Return the types of a thing, without the vocabulary before them."""
    return frozenset(term(kind) for kind in items(thing.get("@type")))


def term(value: object) -> str:
    """Return the last word of a schema.org address: `https://schema.org/NewCondition` is `NewCondition`.

    A mapping with an `@id` stands for that address.
    """
    if isinstance(value, Mapping):
        value = value.get("@id") or value.get("url") or value.get("name")
    words = value.strip() if isinstance(value, str) else ""
    return re.split(r"[/#:]", words)[-1] if " " not in words else words


def terms(value: object) -> frozenset[str]:
    """Return the last words of one schema.org address or of several."""
    return frozenset(filter(None, (term(entry) for entry in items(value))))


def items(value: object) -> list[object]:
    """Return a value as a list: schema.org lets any property hold one or many."""
    if value is None:
        return []
    if isinstance(value, Sequence) and not isinstance(value, str):
        return list(value)
    return [value]


def text_of(value: object) -> str:
    """Return the words of a value: text, a number, or the name of a thing; empty for anything else."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return f"{value:.10g}"
    if isinstance(value, str):
        return " ".join(value.split())
    if isinstance(value, Mapping):
        return text_of(value.get("name") or value.get("@value") or value.get("value"))
    for item in items(value)[:1]:
        return text_of(item)
    return ""


def _listed(thing: Thing) -> Iterator[Thing]:
    """Yield the products of a list in its order."""
    entries = items(thing.get("itemListElement") or thing.get("itemOffered"))
    main = thing.get("mainEntity")
    if not entries and isinstance(main, Mapping):
        entries = items(main.get("itemListElement"))
    for entry in entries:
        inner = entry.get("item") if isinstance(entry, Mapping) and "item" in entry else entry
        if isinstance(inner, Mapping) and types(inner) & (_PRODUCTS | _OFFERS):
            yield inner


def _only_variant(product: Product) -> Product:
    """Take the one variant of a group with what the group says; several variants say nothing of one."""
    variants = [entry for entry in items(product.thing.get("hasVariant")) if isinstance(entry, Mapping)]
    if len(variants) == 1:
        return Product({**product.thing, **variants[0]}, product.element)
    common = {name: value for name, value in product.thing.items() if name not in {"hasVariant", "offers"}}
    return Product(common, product.element)


# JSON-LD


def _json_ld(root: Element) -> Iterator[Thing]:
    things: list[Thing] = []
    for element in root.walk():
        if element.tag == "script":
            text = "".join(child for child in element.children if isinstance(child, str))
            things += [thing for thing in _graph(_parsed(text)) if isinstance(thing, Mapping)]
    known = {str(thing["@id"]): thing for thing in _everything(things) if "@id" in thing and len(thing) > 1}
    for thing in things:
        yield {name: _resolved(value, known) for name, value in thing.items()}


def _parsed(text: str) -> object:
    text = _WRAPPED.sub("", text[:_LARGEST])
    for attempt in (text, _SPARE_COMMA.sub(r"\1", text)):
        try:
            return json.loads(attempt, strict=False)
        except (ValueError, RecursionError):
            continue
    return None


def _graph(found: object) -> Iterator[object]:
    for entry in items(found):
        graph = entry.get("@graph") if isinstance(entry, Mapping) else None
        if graph is not None:
            yield from items(graph)
        elif isinstance(entry, list):
            yield from entry
        else:
            yield entry


def _everything(things: Sequence[object]) -> Iterator[Thing]:
    """Yield all mappings in the data, at most some thousands, without recursion."""
    stack: list[object] = list(things)
    seen = 0
    while stack and seen < 10 * _MOST_THINGS:
        entry = stack.pop()
        seen += 1
        if isinstance(entry, Mapping):
            yield entry
            stack.extend(value for value in entry.values() if isinstance(value, Mapping | list))
        elif isinstance(entry, list):
            stack.extend(value for value in entry if isinstance(value, Mapping | list))


def _resolved(value: object, known: Mapping[str, Thing]) -> object:
    """Replace a mere reference (`{"@id": ...}`) by the thing that it names, one level deep."""
    if isinstance(value, Mapping) and set(value) == {"@id"}:
        return known.get(str(value["@id"]), value)
    if isinstance(value, list):
        return [_resolved(entry, known) for entry in value if isinstance(entry, Mapping)] or value
    return value


# Microdata


def _microdata(root: Element) -> Iterator[Product]:
    """Yield the top-level items of a page's microdata with their elements."""
    for element in root.walk():
        if "itemscope" in element.attributes and "itemprop" not in element.attributes:
            yield Product(_item(element), element)


def _item(scope: Element) -> Thing:
    """Return one item as a mapping; nested items are mappings in it. The tree is never deep."""
    found: dict[str, object] = {
        "@type": [term(kind) for kind in scope.attributes.get("itemtype", "").split()]
    }
    stack = list(reversed(list(scope.elements())))
    while stack:
        element = stack.pop()
        names = element.attributes.get("itemprop", "").split()
        is_item = "itemscope" in element.attributes
        for name in names:
            value = _item(element) if is_item else _value(element)
            if name in found:
                found[name] = [*items(found[name]), value]
            else:
                found[name] = value
        if not is_item:
            stack.extend(reversed(list(element.elements())))
    return found


def _value(element: Element) -> str:
    if "content" in element.attributes:
        return element.attributes["content"]
    attribute = _FROM_ATTRIBUTE.get(element.tag)
    if attribute and element.attributes.get(attribute):
        return element.attributes[attribute]
    return element.text(2_000)
