"""What an offer is called in a list; nothing here knows Qt."""

from matcher.job import Listing
from matcher.judging.saying import cut
from ui.spans import shown

LONGEST = 80
"""Characters of a name; a longer one is cut after a whole word."""


def called(brand: str | None, number: str | None, words: str) -> str:
    """Return maker and number, else the first line of the title or text, plain and on one line."""
    if brand and number:
        return cut(shown(f"{brand} {number}"), LONGEST)
    lines = shown(words.strip()[: 2 * LONGEST]).splitlines()
    return cut(lines[0].strip(), LONGEST) if lines else shown(number or brand or "")


def name_of(listing: Listing) -> str:
    """Return what a listing is called: maker and number, else its title, else its first words."""
    brand, number = (_known(listing, field) for field in ("brand", "part_number"))
    return called(brand, number, listing.title.strip() or listing.text) or shown(listing.source_name)


def _known(listing: Listing, field: str) -> str | None:
    given = listing.corrections.get(field)
    value = given.value if given else getattr(listing.reading.facts, field) if listing.reading else None
    return value if isinstance(value, str) else None
