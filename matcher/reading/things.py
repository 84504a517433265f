"""Words that tell what is for sale and who made it, from `data/reading/things.tsv`."""

from functools import cache

from matcher.tables import rows


@cache
def things(what: str) -> frozenset[str]:
    """Return the words of one kind from `data/reading/things.tsv`."""
    return frozenset(
        word for row in rows("reading/things") if row["what"] == what for word in row["words"].split()
    )
