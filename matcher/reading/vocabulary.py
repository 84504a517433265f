"""The words that the reader knows, from `data/reading/words/`, ready to be looked up.

A phrase may play several roles (`flat` is a fact about the shaft and counts flats): all rows of the
same words are put together. Phrases are found word by word, the longest one counts.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import Enum, auto
from functools import cache
from threading import Lock

from matcher.reading.figures import FIRST_OF_NUMBER
from matcher.reading.word_rows import phrases
from matcher.tables import rows

TABLES = ("units", "facts", "control", "rotation", "labels", "scopes", "subjects", "offer")
_HEEDED = frozenset(
    {
        "mute",
        "not",
        "origin",
        "unsure",
        "apart",
        "advert",
        "asks",
        "takeback",
        "here",
        "measured",
        "affirms",
        "corrects",
    }
)
TURNS = frozenset({"but", "although", "though", "however"})
"""Words that begin another thought: they part clauses as a comma does."""
_SHAFT = frozenset({"shaft", "shafts", "shft", "shfts", "sft", "arbre", "welle", "eje", "albero", "flecha"})
_PARTS = frozenset({"wheel", "bracket", "band", "harness"})
_DIAMETERS = frozenset({"dia", "diameter", "durchmesser", "diamètre", "od", "ø"})
_OF_SHAFT = frozenset({"fact", "flats"})  # `keyed shaft`, `double shaft`: what follows is about the shaft

Roles = Mapping[str, str]


class Kind(Enum):
    """What a token is where it starts no known phrase."""

    PLAIN = auto()
    """A word, or a sign that means nothing."""
    FIGURES = auto()
    STOP = auto()
    """A sign that always ends a segment."""
    COMMA = auto()
    SIGN = auto()
    """A sign whose meaning hangs on its neighbours."""


_STOPS = frozenset("\n|;!")
_SIGNS = frozenset("?()[]+→-/*")


@dataclass(slots=True)
class Word:
    """A word in its place in phrases: the roles of the phrase that ends here, and the words that go on."""

    kind: Kind = Kind.PLAIN

    roles: dict[str, str] = field(default_factory=dict)
    longer: dict[str, "Word"] = field(default_factory=dict)
    heeded: bool = False
    """Whether the phrase that ends here turns away, doubts or denies: the rest depends on it."""


Heads = Mapping[str, Word]


def heads() -> Heads:
    """Return the first words of all phrases, each with what may follow it.

    They are the same objects for every thread: what handles a phrase is found by the identity of its roles.
    """
    with _ONE_AT_A_TIME:
        return _heads()


_ONE_AT_A_TIME = Lock()


@cache
def _heads() -> Heads:
    root = Word()
    for table in TABLES:
        for row in rows(f"reading/words/{table}"):
            for words in phrases(row["words"]):
                _learn(root, words, row["kind"], row["value"])
    for word in list(root.longer.values()):
        _allow_colons(word)
    return root.longer


def _learn(root: Word, words: list[str], kind: str, value: str) -> None:
    word = root
    for part in words:
        word = word.longer.setdefault(part, Word())
    word.roles.setdefault(kind, value)
    word.heeded = word.heeded or kind in _HEEDED
    _inherit(words, word.roles)


def _allow_colons(word: Word) -> None:
    """Let a colon stand between the words of a phrase: `returns: none` says what `returns none` does."""
    for following in word.longer.values():
        _allow_colons(following)
    further = {said: following for said, following in word.longer.items() if said != ":"}
    if further:
        colon = word.longer.setdefault(":", Word())
        colon.longer = further | colon.longer


def _inherit(words: list[str], roles: dict[str, str]) -> None:
    of_shaft = not roles.keys().isdisjoint(_OF_SHAFT) and not _SHAFT.isdisjoint(words)
    if of_shaft or roles.get("fact") == "shaft_keyed=true":
        roles.setdefault("subject", "shaft")
    if "notprice" in roles and not _PARTS.isdisjoint(words):
        roles.setdefault("subject", "other")  # `the wheel is 10 in. across`
    if "subject" in roles and len(words) > 1:
        if not _DIAMETERS.isdisjoint(words):
            roles.setdefault("aspect", "dia")
        elif roles["subject"] == "shaft_length":
            roles.setdefault("aspect", "len")
    if roles.get("fact", "").startswith("module=") and "module" in words:
        roles.setdefault("module_label", "-")  # `complete with module FD-1`
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


def _kind(said: str) -> Kind:
    first = said[0]
    if first in FIRST_OF_NUMBER or said[-1] in FIRST_OF_NUMBER:
        return Kind.FIGURES
    if first.isalnum():
        return Kind.COMMA if said in TURNS else Kind.PLAIN
    if said == ",":
        return Kind.COMMA
    if said in _STOPS:
        return Kind.STOP
    return Kind.SIGN if first == "." or said in _SIGNS else Kind.PLAIN


class Entries(dict[str, Word]):
    """What every token is: the head of known phrases, or a word that means nothing to the trade.

    The unknown ones are remembered, never more than `LIMIT` of them.
    """

    LIMIT = 20_000

    def __init__(self) -> None:
        super().__init__(heads())
        for said, word in self.items():
            word.kind = _kind(said)
        self._unknown = {kind: Word(kind) for kind in Kind}

    def __missing__(self, said: str) -> Word:
        if len(self) > self.LIMIT:
            for strange in set(self) - heads().keys():
                self.pop(strange, None)  # the known ones stay: another thread may be looking them up
        word = self[said] = self._unknown[_kind(said)]
        return word


@cache
def entries() -> Entries:
    """Return the one dictionary of entries."""
    return Entries()


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
