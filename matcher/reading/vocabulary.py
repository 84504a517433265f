"""The words that the reader knows, from `data/reading/words/`, ready to be looked up.

A phrase may play several roles (`flat` is a fact about the shaft and counts flats): all rows of the
same words are put together. Phrases are found word by word, the longest one counts.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache

from matcher.reading.scan import scan
from matcher.tables import rows

TABLES = ("units", "facts", "control", "rotation", "labels", "scopes", "subjects", "offer")
_HEEDED = frozenset({"mute", "not", "origin", "unsure", "apart", "asks", "takeback"})
_SHAFT = frozenset({"shaft", "shafts"})
_OF_SHAFT = frozenset({"fact", "flats"})  # `keyed shaft`, `double shaft`: what follows is about the shaft

Roles = Mapping[str, str]


@dataclass(slots=True)
class Word:
    """A word in its place in phrases: the roles of the phrase that ends here, and the words that go on."""

    roles: dict[str, str] = field(default_factory=dict)
    longer: dict[str, "Word"] = field(default_factory=dict)
    heeded: bool = False
    """Whether the phrase that ends here turns away, doubts or denies: the rest depends on it."""


Heads = Mapping[str, Word]


@cache
def heads() -> Heads:
    """Return the first words of all phrases, each with what may follow it."""
    root = Word()
    for table in TABLES:
        for row in rows(f"reading/words/{table}"):
            word = root
            words = scan(row["words"]).words
            for part in words:
                word = word.longer.setdefault(part, Word())
            word.roles.setdefault(row["kind"], row["value"])
            word.heeded = word.heeded or row["kind"] in _HEEDED
            _inherit(words, word.roles)
    return root.longer


def _inherit(words: list[str], roles: dict[str, str]) -> None:
    of_shaft = not roles.keys().isdisjoint(_OF_SHAFT) and not _SHAFT.isdisjoint(words)
    if of_shaft or roles.get("fact") == "shaft_keyed=true":
        roles.setdefault("subject", "shaft")
    if roles.get("fact", "").startswith("return_shipping"):
        roles.setdefault("returns", "-")


def all_roles() -> Iterator[Roles]:
    """Yield the roles of every phrase."""
    waiting = list(heads().values())
    while waiting:
        word = waiting.pop()
        waiting += word.longer.values()
        if word.roles:
            yield word.roles


def longest(entry: Word, words: list[str], token: int) -> tuple[Word, int]:
    """Return the end of the longest known phrase that starts at a token, and how many tokens it takes."""
    found = entry
    length = 1
    for k in range(token + 1, len(words)):
        following = entry.longer.get(words[k])
        if following is None:
            break
        entry = following
        if entry.roles:
            found, length = entry, k - token + 1
    return found, length
