"""The short words of `data/reading/cell_words.tsv`: units, currencies, yes and no, nothing."""

from collections.abc import Mapping
from functools import cache
from typing import Literal

from matcher import tables

Kind = Literal[
    "unit",
    "currency",
    "view",
    "filler",
    "nothing",
    "none",
    "yes",
    "payer",
    "condition",
    "bearing",
    "free",
    "final",
    "motor_word",
    "total",
    "total_of",
    "unit_code",
]


@cache
def meanings(kind: Kind) -> Mapping[str, str]:
    """Return every word of a kind, in lower case, with what it means."""
    return {
        word.strip().casefold(): row["means"]
        for row in tables.rows("reading/cell_words")
        if row["kind"] == kind
        for word in row["words"].split(" | ")
    }


def is_word(kind: Kind, cell: str) -> bool:
    """Say whether a cell is a word of this kind.

    >>> is_word("nothing", "n/a"), is_word("yes", "Oui")
    (True, True)
    """
    return " ".join(cell.split()).casefold() in meanings(kind)
