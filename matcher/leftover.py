"""Which words of a text stand behind a fact or a conflict, and which are left over."""

import re
from functools import cache

from matcher.reading.brand import ordinary
from matcher.reading.scan import scan
from matcher.reading.vocabulary import heads
from matcher.record import Record

_WORD = re.compile(r"\S+")
MANY = 12
"""Words of a leftover line; more would not be read."""
SHORTEST = 3
"""Letters of a strange word without a figure; shorter ones are labels, units and slips."""
LONGEST = 60
"""Characters of a word that are looked at."""


def understood(record: Record, source: str = "text") -> list[tuple[int, int]]:
    """Return the spans that stand behind the record's facts and conflicts, in order."""
    marks = list(record.where.values()) + [mark for one in record.conflicts for mark in one.marks]
    return sorted({mark.span for mark in marks if mark.source == source})


def leftover(record: Record) -> list[str]:
    """Return the words that no fact touches and a person may want to place.

    Those are words with a figure in them, and those that neither the trade nor ordinary plates use. Known
    labels and filler stay out.
    """
    spans, rest, at = understood(record), [], 0
    # A name that was typed over the plate's own is known, though no span of the plate stands behind it.
    names = f"{record.facts.brand or ''} {record.facts.part_number or ''}".casefold().split()
    for word in _WORD.finditer(record.text):
        while at < len(spans) and spans[at][1] <= word.start():
            at += 1
        touched = any(start < word.end() and stop > word.start() for start, stop in spans[at : at + 8])
        if not touched and word.group().casefold() not in names and _is_strange(word.group()):
            rest.append(word.group()[:LONGEST])
    return rest[:MANY]


def _is_strange(word: str) -> bool:
    if any(sign.isdigit() for sign in word):
        return True
    parts = scan(word[:LONGEST]).words
    return any(len(part) >= SHORTEST and part.isalpha() and part not in _known() for part in parts)


@cache
def _known() -> frozenset[str]:
    """Return every word of the reader's tables and the ordinary ones, folded."""
    known, waiting = set(ordinary()), list(heads().items())
    while waiting:
        said, word = waiting.pop()
        known.add(said)
        waiting += word.longer.items()
    return frozenset(known)
