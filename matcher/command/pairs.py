"""`name=value` words of a command line, and what a command does with them."""

from collections.abc import Iterable

from matcher.errors import BadValue


def pairs_in(words: Iterable[str], what: str) -> dict[str, str]:
    """Return `name=value` words as a mapping; the last one of a name counts.

    Raises BadValue, one line that shows the form, for a word without `=`.
    """
    found: dict[str, str] = {}
    for word in words:
        name, sign, value = word.partition("=")
        if not sign or not name.strip():
            raise BadValue(f"{word!r:.60} is no {what}; write it as name=value, such as {_EXAMPLES[what]}")
        found[name.strip()] = value.strip()
    return found


_EXAMPLES = {
    "answer": "grinds=yes",
    "measurement": "shaft_diameter_in=1/2",
    "entry": "rise_f=25",
}
