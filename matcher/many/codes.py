"""Groups of rows that are alike in several columns of codes, found without sorting."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np
import numpy.typing as npt

Codes = npt.NDArray[np.integer]
ROOM = 1 << 18
"""Up to so many combinations are told apart by a table; more are first reduced to those that occur."""

_LARGEST = 1 << 31


class Coded(Protocol):
    """A column of codes, each below the number of distinct values."""

    @property
    def values(self) -> Sequence[object]:
        """The distinct values."""

    @property
    def codes(self) -> Codes:
        """Each row's place among them."""


@dataclass(frozen=True, slots=True)
class Groups:
    """Rows grouped by what they are alike in."""

    first: Codes
    """The first row of each group."""
    of: Codes
    """Each row's group."""


def combined(columns: Sequence[Coded]) -> Groups:
    """Group rows by their combination of codes; there is at least one column."""
    room = max(ROOM, 2 * len(columns[0].codes))
    key: Codes = np.zeros(len(columns[0].codes), np.int32)
    size = 1
    for column in columns:
        many = len(column.values)
        if many <= 1:
            continue
        if size * many > room:
            groups = _told_apart(key, size, room)
            key, size = groups.of, len(groups.first)
        size *= many
        if size >= _LARGEST:
            key = key.astype(np.int64)
        key = key * many + column.codes
    return _told_apart(key, size, room)


def distinct(key: Codes) -> Groups:
    """Group rows by a single code of 0 or more."""
    size = int(key.max(initial=0)) + 1
    return _told_apart(key, size, max(ROOM, 2 * len(key)))


def _told_apart(key: Codes, size: int, room: int) -> Groups:
    if size > room:
        _, first, of = np.unique(key, return_index=True, return_inverse=True)
        return Groups(first, of.reshape(key.shape).astype(np.int32))
    first_of = np.full(size, -1, np.int32)
    first_of[key[::-1]] = np.arange(
        len(key) - 1, -1, -1, dtype=np.int32
    )  # the last one written is the first row
    used = np.flatnonzero(first_of >= 0)
    number = np.empty(size, np.int32)
    number[used] = np.arange(len(used), dtype=np.int32)
    return Groups(first_of[used], number[key])
