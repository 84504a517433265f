"""Which words of a text stand behind a fact or a conflict, and which are left over."""

import re

from matcher.record import Record

_WORD = re.compile(r"\S+")
MANY = 12
"""Words of a leftover line; more would not be read."""


def understood(record: Record, source: str = "text") -> list[tuple[int, int]]:
    """Return the spans that stand behind the record's facts and conflicts, in order."""
    marks = list(record.where.values()) + [mark for one in record.conflicts for mark in one.marks]
    return sorted({mark.span for mark in marks if mark.source == source})


def leftover(record: Record) -> list[str]:
    """Return the words with a figure in them that no fact touches: what a person may want to place."""
    spans, rest, at = understood(record), [], 0
    for word in _WORD.finditer(record.text):
        while at < len(spans) and spans[at][1] <= word.start():
            at += 1
        touched = any(start < word.end() and stop > word.start() for start, stop in spans[at : at + 8])
        if not touched and any(sign.isdigit() for sign in word.group()):
            rest.append(word.group())
    return rest[:MANY]
