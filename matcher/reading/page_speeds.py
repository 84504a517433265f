"""A table in a page whose rows are the speeds, or the supplies, of one motor: each column makes one list."""

import re
from collections.abc import Sequence
from itertools import pairwise

from matcher.reading.speed_lines import is_speed
from matcher.reading.table_headers import header

_LISTED = {"power": "-", "rpm": "/", "amps": "/", "volts": "/"}
"""Columns that differ from row to row of one motor, and what stands between their figures."""
_SAME = frozenset({"hertz", "phase", "capacitor"})
_MOST_ROWS = 12
_FIGURE = re.compile(r"(?:\d+[- ])?\d+(?:[./]\d+)?|\.\d+")
_BEHIND = re.compile(r"\s*\([^()]{0,40}\)|\s*(?:speed|tap)$", re.IGNORECASE)
_APART = 1.25
"""Two supplies of one motor lie farther apart than the two ends of one rating (common practice)."""


def lists_of_one(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> list[tuple[str, str]]:
    """Return labels with a list each; none where the rows may be several motors.

    :param heads: the headers.
    :param rows: the cells of each row below them.
    """
    if not 2 <= len(rows) <= _MOST_ROWS or any(len(row) != len(heads) for row in rows):
        return []
    columns = list(zip(*rows, strict=True))
    named = all(is_speed(_BEHIND.sub("", name).strip()) for name in columns[0])
    kinds = [found.column.name if (found := header(head)) else "" for head in heads]
    rest = range(1 if named else 0, len(heads))
    if not all(kinds[k] in _LISTED or kinds[k] in _SAME for k in rest):
        return []
    volts = [columns[k] for k in rest if kinds[k] == "volts" and len(set(columns[k])) > 1]
    if not named and not (volts and all(map(_are_supplies, volts))):
        return []
    lists = [(heads[k], _listed(kinds[k], columns[k])) for k in rest]
    return [(label, listed) for label, listed in lists if listed]


def _listed(kind: str, cells: Sequence[str]) -> str:
    """Return the figures of a column as one list; a value that all rows share as it stands."""
    told = list(dict.fromkeys(cell.strip() for cell in cells if cell.strip()))
    if len(told) < 2:
        return told[0] if told else ""
    if kind not in _LISTED or not all(_FIGURE.fullmatch(cell) for cell in told):
        return ""
    if kind == "volts" and not _are_supplies(cells):
        return ""
    return _LISTED[kind].join(told)


def _are_supplies(cells: Sequence[str]) -> bool:
    if not all(cell.strip().isdecimal() for cell in cells):
        return False
    figures = sorted({float(cell) for cell in cells})
    return all(two > _APART * one for one, two in pairwise(figures))
