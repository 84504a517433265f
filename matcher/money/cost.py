"""What a candidate costs: landed with all that the swap needs, and what is lost when it doesn't fit.

Figures that listings leave out (shipping, the way back, a capacitor's price) stand in
`data/swap_costs.tsv` as common practice and may be changed by the user. What is only wise to replace while
the motor is apart is shown beside the landed cost and not in it, unless the settings count it in.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from matcher.finding import Finding
from matcher.motor import Offer
from matcher.settings import Settings
from matcher.tables import rows
from matcher.tally import Figure

SHIPPING = "shipping_not_said"
WAY_BACK = "way_back"
OF_THE_TABLES = "USD"
"""The currency of `data/swap_costs.tsv`."""
_WISE = "wise"


@dataclass(frozen=True, slots=True)
class Cost:
    """One candidate's money, all in the offer's currency."""

    price: float
    shipping: float
    shipping_presumed: bool
    """True when the listing doesn't say and the table's figure stands in."""
    needs: tuple[tuple[str, float], ...]
    """What the swap needs besides the motor, each with its price."""
    wise: tuple[tuple[str, float], ...]
    """What is wise to replace while it is apart; in `landed` only where the settings say so."""
    landed: float
    """Price, shipping and needs together."""
    lost: float
    """What is gone when it doesn't fit: price and shipping less what the return terms bring back."""
    notes: tuple[str, ...] = ()
    """Sentences about what was presumed or contradicts itself."""


def landed_cost(price: Figure, shipping: Figure, extras: Figure) -> Figure:
    """Return what a candidate, or each of many, costs with all that the swap needs."""
    return price + shipping + extras


@cache
def _things() -> tuple[str, ...]:
    return tuple(row["name"] for row in rows("swap_costs"))


@cache
def _wise_things() -> tuple[tuple[str, str], ...]:
    """Return name and words of what is wise to replace."""
    return tuple((row["name"], row["what"]) for row in rows("swap_costs") if row["when"] == _WISE)


def needs_mask(findings: Sequence[Finding]) -> int:
    """Return what the swap needs as a set of bits, one a row of `data/swap_costs.tsv`."""
    return _mask(need for finding in findings for need in finding.needs)


def _mask(names: Iterator[str]) -> int:
    mask = 0
    for name in names:
        mask |= 1 << _things().index(name)
    return mask


def wise_mask(settings: Settings) -> int:
    """Return what is wise to replace as such a set; nothing unless the settings count it in."""
    return _mask(name for name, _ in _wise_things()) if settings.wise_parts else 0


def comes_apart(module: str | None, item: str | None) -> bool:
    """Say whether the old motor comes out for an offer: not for a module alone, nor for a part."""
    return module != "module_only" and item is None


def needs_cost(mask: int, settings: Settings) -> float:
    """Return what a set of needs costs together."""
    return sum((settings.swap_costs[need] for need in _named(mask)), 0.0)


def _named(mask: int) -> Iterator[str]:
    return (name for place, name in enumerate(_things()) if mask >> place & 1)


def cost_of(
    offer: Offer, mask: int, settings: Settings, contradicted: frozenset[str] = frozenset()
) -> Cost | None:
    """Return what an offer costs with a set of needs; `None` when it names no price.

    `contradicted` names facts that the listing says twice and differently; they only add to the notes.
    """
    if offer.price is None:
        return None
    costs = settings.swap_costs
    shipping = costs[SHIPPING] if offer.shipping is None else offer.shipping
    apart = comes_apart(offer.module, offer.item)
    extras = needs_cost(mask | (wise_mask(settings) if apart else 0), settings)
    return Cost(
        price=offer.price,
        shipping=shipping,
        shipping_presumed=offer.shipping is None,
        needs=tuple((need, costs[need]) for need in _named(mask)),
        wise=tuple((name, costs[name]) for name, _ in _wise_things()) if apart else (),
        landed=landed_cost(offer.price, shipping, extras),
        lost=offer.price + shipping - _comes_back(offer, settings),
        notes=tuple(_notes(offer, extras, settings, contradicted)),
    )


def _comes_back(offer: Offer, settings: Settings) -> float:
    """Return what the return terms bring back: nothing when no returns, or not said."""
    if not offer.return_days:
        return 0.0
    back = (offer.price or 0.0) * (1 - (offer.restocking_pct or 0.0) / 100)
    if offer.return_shipping != "seller":
        back -= settings.swap_costs[WAY_BACK]
    return max(back, 0.0)


def _notes(offer: Offer, extras: float, settings: Settings, contradicted: frozenset[str]) -> Iterator[str]:
    """Yield what was presumed, what contradicts itself, and in which money the tables were taken."""
    for field, words in _SAID_TWICE.items():
        if field in contradicted:
            yield f"The listing says {words}."
    if offer.shipping is None:
        yield f"Shipping isn't said; {settings.swap_costs[SHIPPING]:.2f} is presumed."
    yield from _notes_on_returns(offer)
    foreign = offer.currency not in (None, OF_THE_TABLES)
    if foreign and (extras or offer.shipping is None):
        yield f"The tables' prices are in {OF_THE_TABLES}; here they are taken as {offer.currency}."
    if comes_apart(offer.module, offer.item):
        names = " and ".join(words for _, words in _wise_things())
        total = sum(settings.swap_costs[name] for name, _ in _wise_things())
        counted = "counted in" if settings.wise_parts else "not counted in"
        yield f"Wise to replace while it is apart: {names}, {total:.2f}, {counted}."


_SAID_TWICE = {
    "shipping": "two different costs of shipping",
    "return_days": "two different terms of return; counted as no returns",
    "return_shipping": "two different payers of the way back; the buyer is presumed",
    "restocking_pct": "two different restocking fees; none is counted",
    "condition": "two different conditions; counted as not said",
    "currency": "two different currencies",
}


def _notes_on_returns(offer: Offer) -> Iterator[str]:
    terms = bool(offer.restocking_pct) or offer.return_shipping is not None
    if offer.return_days == 0 and (offer.restocking_pct or offer.return_shipping == "seller"):
        yield "Says no returns, yet names terms for them; counted as no returns."
    elif offer.return_days is None and terms:
        yield "Names terms of return, but not for how many days; counted as no returns until that is said."
    elif offer.return_days and offer.return_shipping is None:
        yield "Who pays the way back isn't said; the buyer is presumed."
    if offer.return_days and offer.restocking_pct == 100:
        yield "Takes returns, yet keeps all of the price as a restocking fee."
