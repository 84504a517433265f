"""Which known name a misspelled one was probably meant to be."""

from collections.abc import Iterable

from rapidfuzz import process

_LIKELY = 70
"""How alike (0..100, rapidfuzz's weighted ratio) a name must be to be the one that was meant."""


def meant(name: str, known: Iterable[str]) -> str:
    """Return a hint that ends a message, `; did you mean ...?`, empty where nothing is near.

    >>> meant("shaft_diamter_in", ["volts", "shaft_diameter_in"])
    "; did you mean 'shaft_diameter_in'?"
    """
    best = process.extractOne(name[:100], list(known), score_cutoff=_LIKELY)
    return f"; did you mean {best[0]!r}?" if best else ""
