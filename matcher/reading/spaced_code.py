"""Numbers behind a label that are written with blanks: `PF 71`, `GZ 71 M-4`, `CL 63 B`."""

import re

from matcher.reading.code import reach, written
from matcher.reading.items import Items
from matcher.reading.vocabulary import heads

RATED = frozenset(
    ["HP", "KW", "V", "HZ", "RPM", "A", "W", "PH", "FLA", "SF", "FR", "CL", "AMB", "SER", "NO", "IP"]
)
"""Capitals that label a rating; they don't open a number."""
_FURTHER = re.compile(r"\d{1,5}(?:[A-Z]{1,2}|[a-z](?=-))?(?:[-/][A-Z0-9]+)*")
_RATING = re.compile(r"(?:1[12][05]|20[08]|2[234]0|277|4[468]0)V(?:AC)?|[56]0HZ|[13]PH")
_MIXED = re.compile(r"\d{2,5}[A-Z]{1,3}\d{1,5}[A-Z]{0,2}(?:[-/][A-Z0-9]{1,6}){0,3}")  # `OX 312X34`
_LAST_LETTER = re.compile(r"[B-DG-UX-Z]")
_LAST_PIECE = re.compile(r"[A-Z]-?\d|\dS|[B-DG-UX-Z]")


def further_pieces(items: Items, last: int) -> int:
    """`PF 71`, `GZ 71 M-4`, `OX 312X34`: return the last token of a number that starts with letters."""
    mixed = _piece(items, last, _MIXED)
    if mixed != last:
        return mixed
    for form in (_FURTHER, _LAST_PIECE):
        further = _piece(items, last, form)
        if further == last:
            break
        last = further
    return last


def last_piece(items: Items, last: int) -> int:
    """`AX 450 R`: return the last token of a number, with a letter behind its figures."""
    return _piece(items, last, _LAST_LETTER)


def _piece(items: Items, last: int, form: re.Pattern[str]) -> int:
    """Return the last token of the piece behind a blank, or `last` where none follows."""
    words, gaps = items.scan.words, items.scan.gaps
    if last + 1 >= len(words) or gaps[last] != " ":
        return last
    first, end = reach(items, last + 1)
    text = written(items, last + 1, end)
    unit = end + 1 < len(words) and form is _FURTHER and text.isdigit() and _is_unit(items, end + 1)
    unit = unit and reach(items, end + 1) == (end + 1, end + 1)
    unit = unit or _RATING.fullmatch(text) is not None
    ends = len(text) > 1 or end + 1 == len(words) or gaps[end] != " "
    return end if first == last + 1 and not unit and form.fullmatch(text) and ends else last


def _is_unit(items: Items, token: int) -> bool:
    known = heads().get(items.scan.words[token])
    return known is not None and not {"unit", "after"}.isdisjoint(known.roles)
