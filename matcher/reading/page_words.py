"""The words of `data/reading/page_words.tsv`, looked up in class names, headings and titles."""

import re
from functools import cache, lru_cache
from typing import Literal

from matcher import tables
from matcher.reading.table_headers import folded

Kind = Literal[
    "name",
    "heading",
    "soft_heading",
    "own_words",
    "label",
    "struck",
    "chosen",
    "options",
    "results",
    "post",
    "goods",
]

_COUNT = re.compile(r"\s*\(?\d{1,5}\)?\s*")


@cache
def _phrases(kind: Kind) -> frozenset[tuple[str, ...]]:
    return frozenset(
        tuple(folded(phrase).split())
        for row in tables.rows("reading/page_words")
        if row["kind"] == kind
        for phrase in row["words"].split("|")
    )


@cache
def _longest(kind: Kind) -> int:
    return max(map(len, _phrases(kind)))


@lru_cache(maxsize=4_096)
def has(kind: Kind, text: str) -> bool:
    """Say whether a phrase of this kind stands anywhere in the text, whole words only."""
    words = folded(text[:2000]).split()
    known, longest = _phrases(kind), _longest(kind)
    return any(
        tuple(words[start : start + length]) in known
        for start in range(len(words))
        for length in range(1, min(longest, len(words) - start) + 1)
    )


@lru_cache(maxsize=4_096)
def is_just(kind: Kind, text: str) -> bool:
    """Say whether the whole text is one phrase of this kind, a count beside it apart."""
    return tuple(folded(_COUNT.sub(" ", text[:200])).split()) in _phrases(kind)


@lru_cache(maxsize=4_096)
def any_name(kind: Kind, names: str) -> bool:
    """Say whether one of several class names or ids holds a phrase of this kind."""
    return any(has(kind, name) for name in names.split())
