"""Part, module and program numbers, and makers' names: equal, nearly equal, or different.

Numbers are compared in upper case without spaces, dots, dashes and slashes.

>>> compact("pl-2031 k"), likeness("PL-2031K", "PL 2O31K").value
('PL2031K', 'lookalike')
"""

from enum import StrEnum
from functools import cache, lru_cache

from matcher import tables

_DROPPED = {ord(character): None for character in " .-/\\\t\n\r\u00a0\u2010\u2011\u2012\u2013\u2014\u2212"}
_LONGEST_SUFFIX = 4


class Likeness(StrEnum):
    """How alike two numbers are."""

    EQUAL = "equal"
    LOOKALIKE = "lookalike"
    """Equal but for characters that look alike: 0/O/Q, 1/I/L, 2/Z, 5/S, 6/G, 8/B."""
    SUFFIX = "suffix"
    """One is the other plus up to four characters."""
    DIFFERENT = "different"


@lru_cache(maxsize=65536)
def compact(number: str) -> str:
    """Return a number as it is compared; empty when the words name nothing ("N/A")."""
    bare = number.upper().translate(_DROPPED)
    return "" if bare in _placeholders() else bare


@lru_cache(maxsize=4096)
def _maker(brand: str) -> str:
    folded = " ".join(brand.casefold().split())
    return "" if brand.upper().translate(_DROPPED) in _placeholders() else folded


def same_brand(one: str | None, other: str | None) -> bool | None:
    """Say whether two makers' names are equal without regard to case; None when either is not said."""
    if not one or not other:
        return None
    first, second = _maker(one), _maker(other)
    return first == second if first and second else None


def same_code(one: str | None, other: str | None) -> bool | None:
    """Say whether two numbers are equal as compared; None when either is not said."""
    if not one or not other:
        return None
    first, second = compact(one), compact(other)
    return first == second if first and second else None


def likeness(one: str | None, other: str | None) -> Likeness:
    """Say how alike two numbers are; numbers that name nothing are different."""
    first, second = compact(one or ""), compact(other or "")
    if not first or not second:
        return Likeness.DIFFERENT
    if first == second:
        return Likeness.EQUAL
    if first.translate(_looks()) == second.translate(_looks()):
        return Likeness.LOOKALIKE
    short, long = sorted((first, second), key=len)
    if long.startswith(short) and len(long) - len(short) <= _LONGEST_SUFFIX:
        return Likeness.SUFFIX
    return Likeness.DIFFERENT


@cache
def _placeholders() -> frozenset[str]:
    return frozenset(row["written"] for row in tables.rows("placeholders"))


@cache
def _looks() -> dict[int, str]:
    groups = [row["characters"] for row in tables.rows("looks_alike")]
    return {ord(character): group[0] for group in groups for character in group}
