"""The words that the reader knows, from `data/reading/words/`, ready to be looked up.

A phrase may play several roles (`flat` is a fact about the shaft and counts flats): all rows of the
same words are put together. Phrases are found by their first word, the longest first.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from matcher.reading.scan import scan
from matcher.tables import rows

TABLES = ("units", "facts", "control", "rotation", "labels", "scopes", "subjects", "offer")

_SHAFT = frozenset({"shaft", "shafts"})
_OF_SHAFT = frozenset({"fact", "flats"})  # `keyed shaft`, `double shaft`: what follows is about the shaft


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase: the words after its first one, and the roles it may play (kind: value)."""

    tail: tuple[str, ...]
    roles: Mapping[str, str]


Heads = Mapping[str, tuple[Phrase, ...]]


@cache
def heads() -> Heads:
    """Return all phrases by their first word, longest first."""
    roles: dict[tuple[str, ...], dict[str, str]] = {}
    for table in TABLES:
        for row in rows(f"reading/words/{table}"):
            roles.setdefault(scan(row["words"]).words, {}).setdefault(row["kind"], row["value"])
    for words, plays in roles.items():
        of_shaft = not plays.keys().isdisjoint(_OF_SHAFT) and not _SHAFT.isdisjoint(words)
        if of_shaft or plays.get("fact") == "shaft_keyed=true":
            plays.setdefault("subject", "shaft")
    found: dict[str, list[Phrase]] = {}
    for words in sorted(roles, key=len, reverse=True):
        found.setdefault(words[0], []).append(Phrase(words[1:], roles[words]))
    return {head: tuple(phrases) for head, phrases in found.items()}
