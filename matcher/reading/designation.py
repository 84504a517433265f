"""Which words of a cell are a maker's number, though nothing calls them so."""

import re

from matcher.reading.listing import read_listing

_SERIES = re.compile(
    r"(?!(?:IP|IM|IK|IC|IE|EN|ISO|DIN|VDE|UL|CE|AC|DC|FR|HP|KW|RAL|NO|NR)\b)"
    r"[A-Z]{2,4} \d{2,4}(?:[ /-][A-Z0-9]{1,4}){0,2}"
)
"""A designation of letters and a size (`PF 71`, `PF 71-4`), as makers of standard frames name types."""


def is_number(word: str) -> bool:
    """Say whether a word can be a maker's number: it has a figure, is no sentence and no mere row number.

    >>> is_number("DM-4410"), is_number("12"), is_number("call us at 9 about this one")
    (True, False, False)
    """
    figures = sum(sign.isdigit() for sign in word)
    if not figures or len(word) > 40 or len(word.split()) > 4:
        return False
    return figures > 2 or any(sign.isalpha() for sign in word)


def designation(cell: str) -> str:
    """Return a cell that is a maker's number and nothing else; empty if it says anything more.

    >>> designation("VL 56-2"), designation("PF 71"), designation("IP 55"), designation("PSC 1/2 HP")
    ('VL 56-2', 'PF 71', '', '')
    """
    read = read_listing(f"Model {cell}", "motor")
    if not read.where:
        return cell if _SERIES.fullmatch(cell) else ""
    whole = set(read.where) == {"part_number"} and read.facts.part_number == cell
    return cell if whole and len(cell) > 3 and is_number(cell) else ""
