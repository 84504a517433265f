"""Plates that print one line for 50 Hz and one for 60 Hz: both are facts, not a contradiction."""

from collections.abc import Iterable
from dataclasses import replace

from matcher.reading.items import Claim

_BOTH = frozenset({"50", "60"})


def merge_frequencies(claims: list[Claim]) -> list[Claim]:
    """Return the claims with the speeds and currents of both frequencies in one list each."""
    if {claim.value for claim in claims if claim.field == "hertz"} != _BOTH:
        return claims
    merged = [claim for claim in claims if claim.field not in ("hertz", "rpm", "amps")]
    merged = [claim for claim in merged if claim.field != "speeds" or claim.strength]
    hertz = next(claim for claim in claims if claim.field == "hertz")
    merged.append(replace(hertz, value="50/60"))
    for field in ("rpm", "amps"):
        said = [claim for claim in claims if claim.field == field]
        if said:
            merged.append(replace(said[0], value=_together(said)))
    return merged


def _together(claims: Iterable[Claim]) -> tuple[float, ...]:
    values = {value for claim in claims if isinstance(claim.value, tuple) for value in claim.value}
    return tuple(sorted(values, reverse=True))
