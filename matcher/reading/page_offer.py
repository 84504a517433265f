"""What a schema.org Offer says: price, condition, shipping, returns, warranty, stock.

Terms as in schema.org release 30.0 (2026-03-19): OfferItemCondition, MerchantReturnEnumeration,
ReturnFeesEnumeration. `restockingFee` is per cent as a number and a fixed sum as a MonetaryAmount;
the sum is left out.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from matcher.reading.amounts import money
from matcher.reading.cell_special import Value
from matcher.reading.labelled import read_value
from matcher.reading.page_data import Thing, items, term, terms, text_of, types
from matcher.reading.table_headers import header

_CONDITIONS = {
    "NewCondition": "new",
    "UsedCondition": "used",
    "RefurbishedCondition": "rebuilt",
    "DamagedCondition": "for_parts",
}
_BUYER_PAYS = frozenset({"ReturnFeesCustomerResponsibility", "ReturnShippingFees"})
_NOT_ASKED = frozenset(
    {
        "ListPrice",
        "StrikethroughPrice",
        "SRP",
        "MSRP",
        "MinimumAdvertisedPrice",
        "InvoicePrice",
        "RegularPrice",
    }
)
_LASTS = {
    "DAY": "days",
    "MON": "months",
    "ANN": "years",
    "WEE": "weeks",
    "D": "days",
    "M": "months",
    "Y": "years",
}
_NONE: tuple[Value, ...] = ()


@dataclass(frozen=True, slots=True)
class Said:
    """A line of the page's data, the facts that it gives, and whether the reader should see it as text."""

    line: str
    values: tuple[Value, ...] = ()
    free: bool = False


def offers_of(thing: Thing) -> list[Thing]:
    """Return the single offers of a product: its own, or those inside an AggregateOffer."""
    if types(thing) & {"Offer", "OfferForPurchase"}:
        return [thing]
    found: list[Thing] = []
    for offer in items(thing.get("offers")):
        if not isinstance(offer, Mapping):
            continue
        inner = [entry for entry in items(offer.get("offers")) if isinstance(entry, Mapping)]
        if inner:
            found += inner
        elif "AggregateOffer" not in types(offer) or _is_one_price(offer):
            found.append(offer)
    return found


def _is_one_price(offer: Thing) -> bool:
    low, high = text_of(offer.get("lowPrice")), text_of(offer.get("highPrice"))
    return bool(low) and low == high


def offer_lines(product: Thing, offer: Thing) -> Iterator[Said]:
    """Yield what an offer says of money and terms, a line for each property."""
    price = _price(offer)
    currency = ""
    if price is not None:
        value, currency = price
        paid = f"{value:.10g} {currency}".strip()
        yield Said(f"price: {paid}", (("price", value), *((("currency", currency),) if currency else ())))
    yield from _condition(offer.get("itemCondition") or product.get("itemCondition"))
    yield from _shipping(offer.get("shippingDetails"), currency)
    yield from _returns(offer.get("hasMerchantReturnPolicy") or product.get("hasMerchantReturnPolicy"))
    yield from _warranty(offer.get("warranty"))
    level = offer.get("inventoryLevel") or offer.get("inventoryLevel".lower())
    quantity = _whole(level.get("value") if isinstance(level, Mapping) else level)
    if quantity:
        yield Said(f"inventoryLevel: {quantity}", (("quantity", quantity),))


def _figure(value: object) -> float | None:
    """Return a number of the data: a JSON number, or text with a decimal point as schema.org asks for."""
    found = money(text_of(value)) if text_of(value) else None
    return found[0] if found else None


def _whole(value: object) -> int | None:
    figure = _figure(value)
    return int(figure) if figure is not None and figure == int(figure) and figure < 10**6 else None


def _code(value: object) -> str:
    code = text_of(value).upper()
    return code if len(code) == 3 and code.isascii() and code.isalpha() else ""


def price_of(offer: Thing) -> float | None:
    """Return the asking price of an offer."""
    found = _price(offer)
    return found[0] if found else None


def _price(offer: Thing) -> tuple[float, str] | None:
    asked = [
        entry
        for entry in items(offer.get("priceSpecification"))
        if isinstance(entry, Mapping) and term(entry.get("priceType")) not in _NOT_ASKED and _is_of_one(entry)
    ]
    for source in ({**offer, "price": offer.get("price", offer.get("lowPrice"))}, *asked):
        found = money(text_of(source.get("price"))) if text_of(source.get("price")) else None
        if found and found[0] > 0:
            return found[0], _code(source.get("priceCurrency")) or _code(offer.get("priceCurrency")) or found[
                1
            ]
    return None


def _is_of_one(specification: Thing) -> bool:
    """Say whether a price holds for one piece and everybody."""
    quantity = specification.get("eligibleQuantity")
    least = (
        _figure(quantity.get("minValue") or quantity.get("value")) if isinstance(quantity, Mapping) else None
    )
    return (least is None or least <= 1) and "validForMemberTier" not in specification


def _condition(given: object) -> Iterator[Said]:
    words = terms(given)
    if len(words) != 1:
        return
    (word,) = words
    known = _CONDITIONS.get(word)
    meant = header("condition")
    values = (("condition", known),) if known else read_value(meant, word) if meant else _NONE
    yield Said(f"itemCondition: {word}", tuple(values))


def _shipping(given: object, currency: str) -> Iterator[Said]:
    """Say the rate, where all destinations have one; a rate on a condition says nothing."""
    rates: set[tuple[float, str]] = set()
    for details in items(given):
        if not isinstance(details, Mapping) or details.get("doesNotShip") in {True, "true", "True"}:
            continue
        for rate in items(details.get("shippingRate")):
            found = _rate(rate)
            if found is not None:
                rates.add(found)
    if len(rates) != 1:
        return
    rate_value, code = rates.pop()
    if not rate_value or not code or not currency or code == currency:
        yield Said(f"shippingRate: {rate_value:.10g} {code}".strip(), (("shipping", rate_value),))


def _rate(rate: object) -> tuple[float, str] | None:
    if not isinstance(rate, Mapping):
        figure = _figure(rate)
        return None if figure is None else (figure, "")
    if any(name in rate for name in ("orderValue", "eligibleTransactionVolume", "freeShippingThreshold")):
        return None
    least, most = _figure(rate.get("minValue")), _figure(rate.get("maxValue"))
    if least is not None and most is not None and least != most:
        return None
    figure = next((value for value in (_figure(rate.get("value")), most, least) if value is not None), None)
    return None if figure is None else (figure, _code(rate.get("currency")))


def _returns(given: object) -> Iterator[Said]:
    """Say the return terms, where all countries have the same ones."""
    policies = [policy for policy in items(given) if isinstance(policy, Mapping)]
    said = [tuple(_policy(policy)) for policy in policies]
    if said and all(lines == said[0] for lines in said):
        yield from said[0]


def _policy(policy: Thing) -> Iterator[Said]:
    category = term(policy.get("returnPolicyCategory"))
    days = _whole(policy.get("merchantReturnDays"))
    if category == "MerchantReturnNotPermitted":
        if not days:
            yield Said(f"returnPolicyCategory: {category}", (("return_days", 0),))
        return
    if days is not None and category != "MerchantReturnUnlimitedWindow":
        yield Said(f"merchantReturnDays: {days}", (("return_days", days),))
    fees = terms(policy.get("returnFees")) or terms(policy.get("customerRemorseReturnFees"))
    named = ", ".join(sorted(fees))
    if fees & _BUYER_PAYS:
        yield Said(f"returnFees: {named}", (("return_shipping", "buyer"),))
    elif "FreeReturn" in fees:
        yield Said(f"returnFees: {named}", (("return_shipping", "seller"),))
    restocking = policy.get("restockingFee")
    share = text_of(restocking).rstrip("% ") if not isinstance(restocking, Mapping) else ""
    figure = _figure(share) if share else None
    if figure is not None and 0 <= figure <= 100 and "$" not in share:
        yield Said(f"restockingFee: {figure:.10g} %", (("restocking_pct", figure),))


def _warranty(given: object) -> Iterator[Said]:
    meant = header("warranty")
    for promise in items(given)[:1]:
        lasting = promise.get("durationOfWarranty") if isinstance(promise, Mapping) else promise
        words = text_of(lasting)
        if isinstance(lasting, Mapping):
            unit = _LASTS.get(text_of(lasting.get("unitCode")).upper(), text_of(lasting.get("unitText")))
            words = f"{text_of(lasting.get('value'))} {unit}"
        values = read_value(meant, words) if meant else _NONE
        if values:
            yield Said(f"warranty: {words}", tuple(values))


def chosen_offer(offers: Sequence[Thing], seen_prices: Sequence[float]) -> Thing | None:
    """Return the offer that the page is about: the only one, or the only one whose price is seen on it."""
    if len(offers) == 1:
        return offers[0]
    prices = {price_of(offer) for offer in offers}
    if len(prices) == 1 and offers:
        return offers[0]
    seen = [offer for offer in offers if price_of(offer) in seen_prices]
    return seen[0] if len(seen) == 1 else None
