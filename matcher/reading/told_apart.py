"""Several motors told apart in a text: `#1 ... #2 ...`, `Motor A: ... Motor B: ...`, `one is ..., the other`.

What each of them says of itself holds for that one alone: where they differ it is a conflict, or left out.
What is said before the first of them, or of both or each, holds for all.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from matcher.reading.claim import Claim
from matcher.reading.items import Items
from matcher.reading.settle import agree

_OPENS = r"(?:^|(?<=[\n.;:!?,|(\t])|(?<=[.;:!?,|(–-] )|(?<=\band )|(?<=<br>))[ ]{0,8}"
_THINGS = ("motor", "blower", "fan", "unit", "item", "number", "nr", "no", "no.")
_THING = rf"(?:{'|'.join(map(re.escape, _THINGS))})"


def _pattern(marks: str) -> re.Pattern[str]:
    return re.compile(marks, re.IGNORECASE | re.MULTILINE)


_MARKS: tuple[tuple[tuple[str, ...], re.Pattern[str], int], ...] = (
    (("#2", "# 2"), _pattern(rf"{_OPENS}(?:{_THING}[ ]?)?#[ ]?([1-9])(?![\w/.-]*\d)"), 2),
    (
        tuple(f"{thing} {second}" for thing in _THINGS for second in ("2", "b", "two")),
        _pattern(rf"{_OPENS}(?:the )?{_THING}[ ]([1-9a-d]|one|two|three)[ ]?(?=[:=)–-]|is\b|has\b|was\b|\n)"),
        1,
    ),
    (("2) ", "b) "), _pattern(rf"{_OPENS}\(?([a-d1-9])\)[ ]"), 2),
    (("\n2.", "\n2:", "\nb.", "\nb:"), _pattern(r"^[ ]{0,8}([a-d1-9])[.:][ ]"), 2),
    (
        ("second", "2nd", "other is", "other one", "other has", "other 1", ", one ", "one is"),
        _pattern(
            rf"(?:{_OPENS}(one)|\b(?:the )?(first|1st|second|2nd|third|3rd|other)"
            r"(?: one| motor| unit| blower)?)[ ](?=(?:is|has|was|reads|says)\b|\d)"
        ),
        1,
    ),
)
"""Each kind of mark: what the second one looks like, the pattern, and of how many things it must tell two
different values to tell motors."""
_NAMES_SECOND = frozenset({"2", "b", "two", "second", "nd", "2nd", "other", "one"})
_SECONDS = re.compile("|".join(re.escape(second) for seconds, _, _ in _MARKS for second in seconds))
"""Most texts hold none of them, which one look at their words or one search finds out."""
_WORDS = (
    "1 a one first 1st",
    "2 b two second 2nd other",
    "3 c three third 3rd",
    "4 d",
    "5",
    "6",
    "7",
    "8",
    "9",
)
_PLACES = {place: k for k, places in enumerate(_WORDS, 1) for place in places.split()}
_TELLING = frozenset(
    {"power_hp", "volts", "part_number", "brand", "frame", "phase", "turn", "body_diameter_in"}
    | {"shaft_diameter_in", "motor_type", "enclosure", "bearing"}
)
"""Where two motors differ; amperes and speeds may as well be those of two taps."""
_SURE = frozenset({"power_hp", "part_number"})
_OF_ALL = re.compile(
    r"\b(?:both|each(?! (?:end|side))|apiece|ea|every one|all (?:of|are|have|two|three|four))\b",
    re.IGNORECASE,
)
_OF_SALE = frozenset(
    {"currency", "shipping", "return_days", "return_shipping", "restocking_pct", "warranty_days"}
    | {"quantity", "seller_rating_pct", "item"}
)
_TWO = re.compile(
    r"\b(?:two|2|three|3|couple of|pair of)\b[^.;\n]{0,30}\b(?:motors|blowers|units)\b", re.IGNORECASE
)
_RATED = re.compile(r"\d[ ]?(?:hp|v|volts?|rpm)\b", re.IGNORECASE)
_GONE = re.compile(r"\b(?:sold|gone|keeping|went|bad|burnt|dead|not for sale)\b", re.IGNORECASE)
_STOPS = re.compile(r"[\n;!]|\.(?=\s|$)")
_LONGEST = 200
"""Characters of a sentence before a fact, and behind it."""
_MOST = 12  # marks; more are a list of something else

Section = tuple[int, int, int]
"""Which motor, and the span of the text about it."""


def tell_apart(parts: Sequence[Items], claims: list[Claim]) -> list[Claim]:
    """Return the claims without those that hold for one of several motors alone."""
    for items in parts:
        if _NAMES_SECOND.isdisjoint(items.scan.words):
            continue
        low = items.scan.text.lower()
        if not _SECONDS.search(low):
            continue
        for seconds, pattern, fewest in _MARKS:
            if any(second in low for second in seconds):
                claims = _told_apart(items, claims, pattern, fewest)
    return claims


def _told_apart(items: Items, claims: list[Claim], pattern: re.Pattern[str], fewest: int) -> list[Claim]:
    text = items.scan.text
    sections = _sections(text, pattern)
    if not sections:
        return claims
    own = _own(text, sections, [claim for claim in claims if claim.source == items.source])
    differing = {field for field in own if field in _TELLING and not _all_agree(own[field])}
    told_of_each = fewest == 1 and any(len(own[field]) > 1 for field in own if field in _TELLING)
    enough = told_of_each or len(differing) >= fewest or not _SURE.isdisjoint(differing)
    if enough or _is_told_of_two(text, sections[-1]):
        return _without_single(claims, own, max(which for which, _, _ in sections))
    return claims


def _is_told_of_two(text: str, last: Section) -> bool:
    """Say whether two motors are for sale of which the last, though passed over, has a rating of its own."""
    said = text[last[1] : last[2]]
    return bool(_TWO.search(text) and _RATED.search(said) and not _GONE.search(said))


def _sections(text: str, pattern: re.Pattern[str]) -> list[Section]:
    """Return what stands behind each mark; nothing unless they count up from the first one."""
    marks = list(pattern.finditer(text))
    if not 2 <= len(marks) <= _MOST:
        return []
    places = [_PLACES[mark[mark.lastindex or 0].lower()] for mark in marks]
    if places == [1, 1]:
        places = [1, 2]  # `one 115 V, one 230 V`
    if places[0] != 1 or sorted({*places}) != list(range(1, max(places) + 1)) or len({*places}) < 2:
        return []
    starts = [mark.start() for mark in marks]
    ends = [*starts[1:], _end(text, starts)]
    return list(zip(places, starts, ends, strict=True))


def _end(text: str, starts: list[int]) -> int:
    """Return where the last one ends: with its line where each has one, else at the next blank line."""
    lines = [text.count("\n", one, two) for one, two in pairwise(starts)]
    end = text.find("\n" if max(lines) == 1 else "\n\n", starts[-1] + 1)
    return len(text) if end < 0 else end


def _own(text: str, sections: list[Section], claims: list[Claim]) -> dict[str, dict[int, list[Claim]]]:
    """Return the claims within each section, by field and motor; not those of both or each."""
    own: dict[str, dict[int, list[Claim]]] = {}
    for claim in claims:
        for which, start, end in sections:
            if start <= claim.span[0] < end and not _OF_ALL.search(_sentence(text, start, end, claim.span)):
                own.setdefault(claim.field, {}).setdefault(which, []).append(claim)
    return own


def _sentence(text: str, start: int, end: int, span: tuple[int, int]) -> str:
    """Return the sentence of a span, within its section."""
    start = max(start, span[0] - _LONGEST)
    for stop in _STOPS.finditer(text, start, span[0]):
        start = stop.end()
    after = _STOPS.search(text, span[1], min(end, span[1] + _LONGEST))
    return text[start : after.start() if after else min(end, span[1] + _LONGEST)]


def _all_agree(own: dict[int, list[Claim]]) -> bool:
    """Say whether two motors or more say the same; one alone differs from none."""
    values = {tuple(dict.fromkeys(claim.value for claim in found)) for found in own.values()}
    return len(values) == 1


def _without_single(claims: list[Claim], own: dict[str, dict[int, list[Claim]]], count: int) -> list[Claim]:
    """Drop what one motor alone says, and names that differ; keep two that contradict each other."""
    gone: set[int] = set()
    pairs: list[Claim] = []
    for field, by_motor in own.items():
        alone = field in _OF_SALE or (field == "price" and [*by_motor] == [count])
        if (len(by_motor) == count and _all_agree(by_motor)) or (alone and len(by_motor) == 1):
            continue
        gone.update(id(claim) for found in by_motor.values() for claim in found)
        pairs += _against(by_motor)
        if len(by_motor) > 1:
            gone.update(id(claim) for claim in claims if claim.field == field)
    return [claim for claim in claims if id(claim) not in gone] + pairs


def _against(by_motor: dict[int, list[Claim]]) -> Iterator[Claim]:
    """Yield the claims of two motors that can't both be true, of equal weight."""
    first, *others = [found[0] for _, found in sorted(by_motor.items())]
    for other in others:
        if not agree(first, other):
            yield replace(first, strength=max(first.strength, other.strength), doubt="")
            yield replace(other, strength=max(first.strength, other.strength), doubt="")
            return
