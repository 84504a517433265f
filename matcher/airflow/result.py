"""What one line of a proof run says, and the limits of `data/proof_limits.tsv` that it is held against."""

from dataclasses import dataclass
from functools import cache
from typing import Literal

from matcher.limit import over, under
from matcher.tables import number, rows

Outcome = Literal["good", "watch", "bad", "note"]
"""`note` holds nothing against a limit."""
_IS_RIGHT: dict[Outcome, str] = {"good": "right", "watch": "look again", "bad": "not right", "note": ""}


@dataclass(frozen=True, slots=True)
class Result:
    """One thing that was worked out, and whether it is as it should be."""

    name: str
    label: str
    value: float
    unit: str
    outcome: Outcome
    says: str
    source: str

    @property
    def words(self) -> str:
        """Return the value as people write it, with its unit."""
        return f"{figure(self.value)} {self.unit}".strip()

    @property
    def is_right(self) -> str:
        """Return in words whether it is as it should be; empty where nothing was held against a limit."""
        return _IS_RIGHT[self.outcome]


@dataclass(frozen=True, slots=True)
class Limit:
    """The span that is right, either end may be open."""

    name: str
    low: float | None
    high: float | None
    unit: str
    says: str
    source: str

    def outcome(self, value: float) -> Outcome:
        """Return `good` inside the span, limits included, else `watch`."""
        too_low = self.low is not None and under(value, self.low)
        too_high = self.high is not None and over(value, self.high)
        return "watch" if too_low or too_high else "good"

    def span(self) -> str:
        """Return the span in words."""
        if self.low is not None and self.high is not None:
            return f"{self.low:g} to {self.high:g} {self.unit}"
        return (
            f"at least {self.low:g} {self.unit}"
            if self.high is None
            else f"at most {self.high:g} {self.unit}"
        )


@cache
def limits() -> dict[str, Limit]:
    """Return every limit by its name."""
    return {
        row["name"]: Limit(
            row["name"],
            number(row, "low") if row["low"] else None,
            number(row, "high") if row["high"] else None,
            row["unit"],
            row["says"],
            row["source"],
        )
        for row in rows("proof_limits")
    }


def figure(value: float) -> str:
    """Return a number with as many digits as a reading is worth: three or so."""
    if abs(value) >= 100:
        return f"{value:,.0f}"
    if abs(value) >= 10:
        return f"{value:.1f}".removesuffix(".0")
    return f"{value:.2f}"
