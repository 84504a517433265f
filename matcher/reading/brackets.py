"""Figures beside a bracket and in one: `115 (not 230) volts`, `switch (10 A)`."""

from matcher.reading.items import Items
from matcher.reading.things import things

_BRACKET = 12  # items


def behind_bracket(items: Items, j: int) -> int:
    """Return the item behind the bracket that opens at `j`, or `j` where it doesn't close soon."""
    return next((k + 1 for k in range(j + 1, j + _BRACKET) if items.word(k) == ")"), j)


def in_parts_bracket(items: Items, i: int) -> bool:
    """`switch (4 pos. 10 A)`: in the bracket behind another part's name."""
    clause = items.clause
    for j in range(i - 1, max(-1, i - _BRACKET), -1):
        if clause[j] != clause[i]:
            return False
        if items.words[j] == "(":
            return items.words[j - 1].split(" ")[-1] in things("electric")
    return False
