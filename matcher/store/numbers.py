"""Part numbers as the store searches them: letters and digits alone, upper case."""

import re
from collections.abc import Iterable, Mapping

from pydantic import JsonValue

from matcher.motor import Offer

_NAMES = ("part_number", "other_numbers", "module_number", "program_number")
_WORD = re.compile(r"[^\s,;:()]{4,40}")
_LOUD = re.compile(r"[^0-9A-Z]")
_SHORTEST = 4
_NEAR_ENOUGH = 82.0
"""Likeness in per cent (rapidfuzz `ratio`) from which another number counts as nearly the same."""
_MOST = 50
"""Numbers nearly the same that are looked at."""


def bare(number: str) -> str:
    """Return a number without case, dashes, dots and blanks, as people type it from memory.

    Looser than the rules (`matcher.trade.numbers.compact`), which keep other signs: a search may offer more.
    """
    return _LOUD.sub("", number.upper())


def numbers_in(text: str) -> set[str]:
    """Return the words of a plate's text that may be part numbers."""
    return {word for word in map(bare, _WORD.findall(text)) if may_be_number(word)}


def may_be_number(word: str) -> bool:
    """Tell whether a bare word is long enough for a part number and holds a digit."""
    return len(word) >= _SHORTEST and any(sign.isdigit() for sign in word)


def nearest(wanted: str, known: Iterable[tuple[int, str]]) -> list[int]:
    """Return the rows that know a number nearly the same as the bare `wanted`, the likeliest first.

    `known` gives rows with their numbers, with blanks between.
    """
    from rapidfuzz import fuzz, process  # only a search by number pays for it

    owners: dict[str, list[int]] = {}
    for row, numbers in known:
        for one in numbers.split():
            owners.setdefault(one, []).append(row)
    hits = process.extract(wanted, list(owners), scorer=fuzz.ratio, score_cutoff=_NEAR_ENOUGH, limit=_MOST)
    return list(dict.fromkeys(row for one, _, _ in hits for row in owners[one]))


def _bare_all(values: Iterable[object]) -> set[str]:
    found: set[str] = set()
    for value in values:
        if isinstance(value, str):
            found.add(bare(value))
        elif isinstance(value, (list, tuple)):
            found |= _bare_all(value)
    return found - {""}


def numbers_of_motor(plate_text: str, given: Iterable[JsonValue]) -> str:
    """Return the old motor's numbers, with blanks between."""
    return " ".join(sorted(numbers_in(plate_text) | _bare_all(given)))


def numbers_of_facts(facts: Mapping[str, object]) -> str:
    """Return the numbers among an offer's facts, with blanks between."""
    return " ".join(sorted(_bare_all(facts.get(name) for name in _NAMES)))


def numbers_of_offer(facts: Offer) -> str:
    """Return the numbers of an offer, with blanks between."""
    return numbers_of_facts({name: getattr(facts, name) for name in _NAMES})


def numbers_of_listing(reading: JsonValue, corrections: Mapping[str, JsonValue]) -> str:
    """Return the numbers of a listing, read and corrected, with blanks between."""
    facts = reading.get("facts") if isinstance(reading, dict) else None
    known = dict(facts) if isinstance(facts, dict) else {}
    known |= {name: entry["value"] for name, entry in corrections.items() if isinstance(entry, dict)}
    return numbers_of_facts(known)
