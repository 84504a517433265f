"""`name=value` words of a command line, and what a command does with them."""

from collections.abc import Iterable

from matcher.errors import BadValue


def pairs_in(words: Iterable[str], what: str) -> dict[str, str]:
    """Return `name=value` words as a mapping.

    Raises BadValue, one line, for a word without `=`, and for a name that is given two values.
    """
    found: dict[str, str] = {}
    for word in words:
        name, sign, value = word.partition("=")
        if not sign or not name.strip():
            raise BadValue(f"{word!r:.60} is no {what}; write it as name=value, such as {_EXAMPLES[what]}")
        name, value = name.strip(), value.strip()
        if found.setdefault(name, value) != value:
            raise BadValue(
                f"{name:.60} is given twice, as {found[name]:.40} and as {value:.40}; give it once"
            )
    return found


_EXAMPLES = {
    "answer": "grinds=yes",
    "measurement": "shaft_diameter_in=1/2",
    "entry": "rise_f=25",
}
