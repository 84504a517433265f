"""Numbers behind a label that are written with blanks: `PF 71`, `GZ 71 M-4`, `CL 63 B`."""

import re

from matcher.reading.code import reach, written
from matcher.reading.items import Items
from matcher.reading.vocabulary import heads

RATED = frozenset(
    ["HP", "KW", "V", "HZ", "RPM", "A", "W", "PH", "FLA", "SF", "FR", "CL", "AMB", "SER", "NO", "IP"]
)
"""Capitals that label a rating; they don't open a number."""
_FURTHER = re.compile(r"\d{1,5}[A-Z]{0,2}(?:[-/][A-Z0-9]+)*")
_LAST_PIECE = re.compile(r"[A-Z]-?\d|\dS|[B-DG-UX-Z]")


def further_pieces(items: Items, last: int) -> int:
    """`PF 71`, `GZ 71 M-4`: return the last token of a labelled number that starts with letters."""
    words, gaps = items.scan.words, items.scan.gaps
    for form in (_FURTHER, _LAST_PIECE):
        if last + 1 >= len(words) or gaps[last] != " ":
            break
        first, end = reach(items, last + 1)
        text = written(items, last + 1, end)
        unit = end + 1 < len(words) and form is _FURTHER and text.isdigit() and _is_unit(items, end + 1)
        unit = unit and reach(items, end + 1) == (end + 1, end + 1)
        ends = len(text) > 1 or end + 1 == len(words) or gaps[end] != " "
        if first != last + 1 or unit or not (form.fullmatch(text) and ends):
            break
        last = end
    return last


def _is_unit(items: Items, token: int) -> bool:
    known = heads().get(items.scan.words[token])
    return known is not None and not {"unit", "after"}.isdisjoint(known.roles)
