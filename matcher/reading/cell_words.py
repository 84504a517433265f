"""The short words of `data/reading/cell_words.tsv`: units, currencies, yes and no, nothing."""

import re
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
    "about_end",
    "loose",
    "about_inch",
]


_SHOWN = re.compile(r'=\s*(?:HYPERLINK\(\s*"[^"]*"\s*[,;]\s*)?"([^"=]{0,300})"\s*\)?', re.IGNORECASE)


def shown(cell: str) -> str:
    """Return what a spreadsheet shows of a cell: the text of a link; nothing of any other formula.

    >>> shown('=HYPERLINK("page.html","DM-4410")'), shown('="0420"'), shown('=B2&C2'), shown("DM-4410")
    ('DM-4410', '0420', '', 'DM-4410')
    """
    if not cell.startswith("="):
        return cell
    found = _SHOWN.fullmatch(cell)
    return found[1].strip() if found else ""


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
