"""What markup a printed page may hold: whatever a listing brings must have stayed text."""

import re

PRINTED = frozenset(
    ["html", "head", "meta", "title", "style", "body", "h1", "h2", "p", "table", "tr", "td", "th", "b", "br"]
)


def tags(page: str) -> set[str]:
    """Return the names of all tags in a page."""
    return set(re.findall(r"<(\w+)", page))
