"""Motors for two frequencies or two voltages, told one after the other: both are facts, no contradiction.

`60 Hz: 1740 rpm (50 Hz: 1440 rpm)`; `at 115 V it draws 6.8 A, at 230 V 3.4 A`.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from matcher.numeral import Numeral
from matcher.reading.claim import Claim
from matcher.reading.items import Items
from matcher.reading.quantities import Given, amps

_BOTH = frozenset({"50", "60"})
_LISTS = ("rpm", "amps")
_CLOSE = 0.12
"""Twice the volts, half the amperes: both ratios agree within this share (common practice)."""
_NEAR = 40
"""Characters; farther apart the two may be those of two versions."""
_LEAST = 200
"""Volts; 115 and 120 V are told of one motor's plate and another one's outlet."""
_RATIOS = (1.05, 2.45)
_RATED = frozenset(
    {100, 110, 115, 120, 127, 200, 208, 220, 230, 240, 277, 380, 400, 415, 440, 460, 480, 575, 690}
)
_FEWER = 1.4
"""At least so much of the amperes at half the volts; an electronic motor takes somewhat less than half."""
_TWO = 1.7
"""230/400 V to 208/460 V: the windings of one motor joined in two ways; 208 and 230 V are one range."""


def merge_frequencies(claims: list[Claim], *, plate: bool) -> list[Claim]:
    """Return the claims with the figures of both frequencies in one list each.

    A plate that prints both always means both; a listing does when its figures differ as well.
    """
    told = _without_doubt(claims, "hertz")
    for source in dict.fromkeys([claim.source for claim in told]) if len(told) > 1 else ():
        here = [claim for claim in claims if claim.source == source and not claim.doubt]
        if not {claim.value for claim in here if claim.field == "hertz"} >= _BOTH:
            continue
        if not plate and not any(len(_values(here, field)) > 1 for field in _LISTS):
            continue
        gone = set(here)
        kept = [claim for claim in claims if claim not in gone or _is_single(claim)]
        return [*kept, *_merged(here)]
    return claims


def _is_single(claim: Claim) -> bool:
    """Say whether a claim is of no field that changes with the frequency; a count of speeds does."""
    if claim.field == "speeds":
        return claim.strength > 0
    return claim.field not in ("hertz", "volts", "power_hp", *_LISTS)


def _merged(claims: Sequence[Claim]) -> list[Claim]:
    hertz = next(claim for claim in claims if claim.field == "hertz")
    merged = [replace(hertz, value="50/60")]
    merged += [
        replace(_first(claims, field), value=_together(claims, field))
        for field in _LISTS
        if _values(claims, field)
    ]
    power = [claim for claim in claims if claim.field == "power_hp"]
    return [*merged, *_of_both_volts(claims), *_largest(power)]


def _largest(power: Sequence[Claim]) -> list[Claim]:
    top = max((claim.strength for claim in power), default=0)
    rated = [claim for claim in power if claim.strength == top]
    return [max(rated, key=lambda claim: float(str(claim.value)))] if rated else []


def _of_both_volts(claims: Sequence[Claim]) -> list[Claim]:
    """Return one claim on two voltages of one figure each; more of them have no one way to be told."""
    told = [claim for claim in claims if claim.field == "volts"]
    said = sorted({str(claim.value) for claim in told})
    if len(said) < 2:
        return told
    if not all(volts.isdigit() for volts in said):
        return []
    return [replace(told[0], value="/".join(sorted(said, key=int)), span=_whole(told))]


def merge_voltages(claims: list[Claim], parts: Sequence[Items]) -> list[Claim]:
    """Return the claims with two voltages in one, where the amperes or the words say that both are meant."""
    told = _without_doubt(claims, "volts")
    for items in parts if len(told) > 1 else ():
        here = [claim for claim in told if claim.source == items.source]
        ratio = _ratio([str(claim.value) for claim in here]) if len(here) > 1 else 0.0
        if not ratio:
            continue
        amps = [claim for claim in claims if claim.field == "amps" and claim.source == items.source]
        near = any(_gap(one, two) <= _NEAR for one, two in pairwise(here) if one.value != two.value)
        rows = items.plate and ratio > _TWO and _in_rows(here, amps, items.scan.text)
        if not ((near and _halves(amps, ratio)) or rows or (ratio > _TWO and _says_both(items))):
            continue
        both = replace(here[0], value=_alternatives(here), span=_whole(here))
        merged = [replace(amps[0], value=_together(amps, "amps"), span=_whole(amps))] if amps else []
        gone = {*here, *amps}
        return [*[claim for claim in claims if claim not in gone], both, *merged]
    return claims


def amps_of_volts(items: Items, number: Numeral) -> Given | None:
    """`208-230/460, three phase, 6.6-6.2/3.1`: tenths in step with the volts, upside down, are amperes."""
    if "." not in number.text or len(number.atoms) < 2 or not number.atoms[-1]:
        return None
    told = next((str(claim.value) for claim in reversed(items.claims) if claim.field == "volts"), "")
    volts = [float(figure) for figure in told.replace("-", "/").split("/") if figure]
    if len(volts) != len(number.atoms):
        return None
    ratio = number.atoms[0] / number.atoms[-1] * volts[0] / volts[-1]
    return amps(number) if abs(ratio - 1) <= _CLOSE else None


def _says_both(items: Items) -> bool:
    return any("dualvolts" in items.roles[i] for i in items.active)


def _alternatives(told: Sequence[Claim]) -> str:
    """Return ratings of one motor as alternatives: `230/460`, `208-230/460`."""
    ratings = {rating for claim in told for rating in str(claim.value).split("/")}
    fuller = {r for r in ratings if not any(r != other and r in other.split("-") for other in ratings)}
    figures = sorted(fuller, key=lambda rating: int(rating.split("-")[0]))
    top = int(figures[-1].split("-")[-1])
    return ("/" if top >= _TWO * int(figures[0].split("-")[0]) else "-").join(figures)


def _ratio(said: Sequence[str]) -> float:
    """Return how many times the lowest of two ratings goes into the other, nought where they are no pair."""
    tops = sorted({float(rating.split("-")[-1]) for ratings in said for rating in ratings.split("/")})
    if len(tops) != 2 or not _RATED.issuperset(tops) or not _RATIOS[0] <= tops[1] / tops[0] <= _RATIOS[1]:
        return 0.0
    return tops[1] / tops[0] if tops[0] >= _LEAST or tops[1] >= _TWO * tops[0] else 0.0


def _in_rows(volts: Sequence[Claim], amps: Sequence[Claim], text: str) -> bool:
    """`V 120  A 11.2` over `V 240  A 6.4`: each rating on a line with its amperes, fewer for more volts."""
    if not len(volts) == len(amps) == 2:
        return False
    lines = [text.count("\n", 0, claim.span[0]) for claim in (*volts, *amps)]
    rated = sorted(zip(volts, amps, strict=True), key=lambda row: _figure(row[0]))
    fewer = _figure(rated[0][1]) > _FEWER * _figure(rated[1][1])
    return lines[:2] == lines[2:] and lines[1] == lines[0] + 1 and fewer


def _figure(claim: Claim) -> float:
    """Return the first figure of a claim on volts or amperes."""
    return float(str(claim.value).strip("(").replace("-", "/").replace(",", "/").split("/")[0])


def _halves(amps: Sequence[Claim], ratio: float) -> bool:
    """Say whether the amperes of one rating are to those of the other as its volts are, upside down."""
    figures = _together(amps, "amps")
    return len(figures) > 1 and abs(figures[0] / figures[-1] / ratio - 1) <= _CLOSE


def _without_doubt(claims: Iterable[Claim], field: str) -> list[Claim]:
    return [claim for claim in claims if claim.field == field and not claim.doubt]


def _first(claims: Iterable[Claim], field: str) -> Claim:
    return next(claim for claim in claims if claim.field == field)


def _gap(one: Claim, two: Claim) -> int:
    return max(one.span[0], two.span[0]) - min(one.span[1], two.span[1])


def _whole(claims: Sequence[Claim]) -> tuple[int, int]:
    return min(claim.span[0] for claim in claims), max(claim.span[1] for claim in claims)


def _values(claims: Iterable[Claim], field: str) -> set[float]:
    return set(_together(claims, field))


def _together(claims: Iterable[Claim], field: str) -> tuple[float, ...]:
    said = [claim.value for claim in claims if claim.field == field]
    values = {value for figures in said if isinstance(figures, tuple) for value in figures}
    return tuple(sorted(values, reverse=True))
