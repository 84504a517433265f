"""Rated voltages as a plate prints them, and what they tolerate.

>>> [str(rating) for rating in ratings("115/208-230")]
['115', '208-230']
"""

from dataclasses import dataclass
from functools import cache, lru_cache

from matcher import tables
from matcher.limit import at_most

TOLERANCE = 0.10
"""NEMA MG 1 12.44: +-10 % of the rated voltage at rated frequency."""


@dataclass(frozen=True, slots=True)
class Rating:
    """One rated voltage or range, in V; `low` equals `high` for a single voltage."""

    low: float
    high: float

    def __str__(self) -> str:
        return f"{self.low:g}" if self.low == self.high else f"{self.low:g}-{self.high:g}"

    @property
    def ends(self) -> tuple[float, ...]:
        """The two ends of a range, or the one voltage, in V."""
        return (self.low,) if self.low == self.high else (self.low, self.high)

    @property
    def least(self) -> float:
        """The lowest voltage that it tolerates, in V."""
        return (1 - TOLERANCE) * self.low

    @property
    def most(self) -> float:
        """The highest voltage that it tolerates, in V."""
        return (1 + TOLERANCE) * self.high

    def tolerates(self, low: float, high: float) -> bool:
        """Say whether the whole band low .. high (V) lies inside the tolerance, limits included."""
        return at_most(self.least, low) and at_most(high, self.most)

    def away(self, volts: float) -> float:
        """Return how far a voltage is from the nearest end of the rating, in V."""
        return min(abs(end - volts) for end in self.ends)

    def overlaps(self, low: float, high: float) -> bool:
        """Say whether the rated range itself and the band low .. high (V) have a voltage in common."""
        return at_most(self.low, high) and at_most(low, self.high)


@lru_cache(maxsize=4096)
def ratings(volts: str) -> tuple[Rating, ...]:
    """Return the alternatives of a plate's volts, ascending, each once."""
    found = set()
    for alternative in volts.split("/"):
        low, _, high = alternative.partition("-")
        found.add((float(low), float(high or low)))
    return tuple(Rating(low, high) for low, high in sorted(found))


def equal_ratings(one: str | None, other: str | None) -> bool:
    """Say whether two plates carry the same rated voltages."""
    return one is not None and other is not None and (one == other or ratings(one) == ratings(other))


@lru_cache(maxsize=4096)
def only_sixty_hertz(volts: str) -> bool:
    """Say whether every alternative is a rating that only 60 Hz motors carry (NEMA MG 1 10.30)."""
    return all(rating in _sixty_hertz_ratings() for rating in ratings(volts))


@cache
def _sixty_hertz_ratings() -> frozenset[Rating]:
    rows = tables.rows("sixty_hertz_ratings")
    return frozenset(rating for row in rows for rating in ratings(row["rating"]))
