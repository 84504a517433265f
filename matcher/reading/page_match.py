"""Which product of the page's data a card shows: by its own markup, its link, or its name."""

from collections.abc import Sequence

from rapidfuzz import fuzz

from matcher.reading.page_data import PageData, Product
from matcher.reading.page_tree import Element

ALIKE = 80
"""How alike (0..100, `rapidfuzz.fuzz`) a title and a product's name must be to speak of one thing."""
_MOST = 1_500
"""Products without markup of their own that each card is held against."""


class Catalogue:
    """The products of a page's data; each is given to one card."""

    def __init__(self, data: PageData, cards: Sequence[Element]) -> None:
        products = [*data.listed, *data.products]
        self._marked_up = {product.element: product for product in products if product.element is not None}
        self._free = [product for product in products if product.element not in self._marked_up][:_MOST]
        self._by_place = list(self._free) if len(self._free) == len(cards) else []

    def take(self, card: Element, title: str, place: int) -> Product | None:
        """Return the product that a card shows and take it out; `None` if the data says nothing of it."""
        own = self._marked_up.get(card)
        if own is not None:
            return own
        links = {element.attributes.get("href", "") for element in card.near() if element.tag == "a"}
        found = self._linked({link for link in links if len(link) > 3}) or self._named(title)
        if found is None and not title and self._by_place:
            found = self._by_place[place]
        if found in self._free:
            self._free.remove(found)
        return found

    def _linked(self, links: set[str]) -> Product | None:
        for product in self._free if links else ():
            url = product.url
            if len(url) > 3 and any(url.endswith(link) or link.endswith(url) for link in links):
                return product
        return None

    def _named(self, title: str) -> Product | None:
        if not title:
            return None
        likeness = [fuzz.ratio(title.casefold(), product.name.casefold()) for product in self._free]
        best = max(likeness, default=0)
        return self._free[likeness.index(best)] if best >= ALIKE else None
