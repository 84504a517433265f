"""One step of a buying plan, as it is shown."""

from dataclasses import dataclass

from matcher.finding import Verdict


@dataclass(frozen=True, slots=True)
class Step:
    """One candidate of the plan; money in the fallback's currency."""

    id: str
    verdict: Verdict | None
    chance: float
    """Chance, 0 to 1, that it fits and works."""
    landed: float
    lost: float
    per_success: float
    """What it costs for each success; the plan goes up by it."""
    reached: float
    """Chance, 0 to 1, that the plan comes to this step: that all before it fail."""
    shipping_presumed: bool = False
    """Both sums count a shipping cost that the listing doesn't name."""
