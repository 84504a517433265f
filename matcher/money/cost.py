"""What a candidate costs: landed with all that the swap needs, and what is lost when it doesn't fit.

Figures that listings leave out (shipping, the way back, a capacitor's price) stand in
`data/swap_costs.tsv` as common practice and may be changed by the user.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from matcher.finding import Finding
from matcher.motor import Offer
from matcher.settings import Settings
from matcher.tables import rows

SHIPPING = "shipping_not_said"
WAY_BACK = "way_back"


@dataclass(frozen=True, slots=True)
class Cost:
    """One candidate's money, all in the offer's currency."""

    price: float
    shipping: float
    shipping_presumed: bool
    """True when the listing doesn't say and the table's figure stands in."""
    needs: tuple[tuple[str, float], ...]
    """What the swap needs besides the motor, each with its price."""
    landed: float
    """Price, shipping and needs together."""
    lost: float
    """What is gone when it doesn't fit: price and shipping less what the return terms bring back."""
    notes: tuple[str, ...] = ()
    """Sentences about what was presumed or contradicts itself."""


@cache
def _things() -> tuple[str, ...]:
    return tuple(row["name"] for row in rows("swap_costs"))


def needs_mask(findings: Sequence[Finding]) -> int:
    """Return what the swap needs as a set of bits, one a row of `data/swap_costs.tsv`."""
    mask = 0
    for finding in findings:
        for need in finding.needs:
            mask |= 1 << _things().index(need)
    return mask


def things_in(mask: int) -> tuple[str, ...]:
    """Return the names of the things in a set of bits, in the order of their table."""
    return tuple(name for place, name in enumerate(_things()) if mask >> place & 1)


def needs_cost(mask: int, settings: Settings) -> float:
    """Return what a set of needs costs together."""
    return sum((settings.swap_costs[need] for need in things_in(mask)), 0.0)


def cost_of(offer: Offer, mask: int, settings: Settings) -> Cost | None:
    """Return what an offer costs with a set of needs; `None` when it names no price."""
    if offer.price is None:
        return None
    shipping = settings.swap_costs[SHIPPING] if offer.shipping is None else offer.shipping
    needs = tuple((need, settings.swap_costs[need]) for need in things_in(mask))
    landed = offer.price + shipping + needs_cost(mask, settings)
    lost, notes = _lost(offer, shipping, settings)
    if offer.shipping is None:
        notes = (f"Shipping isn't said; {shipping:.2f} is presumed.", *notes)
    return Cost(offer.price, shipping, offer.shipping is None, needs, landed, lost, notes)


def _lost(offer: Offer, shipping: float, settings: Settings) -> tuple[float, tuple[str, ...]]:
    """Return what a misfit costs, with notes on how the return terms were read."""
    if not offer.return_days:
        return (offer.price or 0.0) + shipping, _contradictions(offer)
    back = (offer.price or 0.0) * (1 - (offer.restocking_pct or 0.0) / 100)
    notes: tuple[str, ...] = ()
    if offer.return_shipping != "seller":
        back -= settings.swap_costs[WAY_BACK]
    if offer.return_shipping is None:
        notes = ("Who pays the way back isn't said; the buyer is presumed.",)
    return (offer.price or 0.0) + shipping - max(back, 0.0), notes


def _contradictions(offer: Offer) -> tuple[str, ...]:
    """Say so when terms of return are named though nothing goes back."""
    if offer.return_days == 0 and (offer.restocking_pct or offer.return_shipping == "seller"):
        return ("Says no returns, yet names terms for them; counted as no returns.",)
    return ()
