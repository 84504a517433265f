"""What a schema.org Product says, a line for each property: names, numbers, pairs of name and value."""

from collections.abc import Iterator, Mapping

from matcher.reading.cell_words import meanings
from matcher.reading.labelled import read_value
from matcher.reading.page_data import Product, Thing, items, text_of
from matcher.reading.page_offer import Said, chosen_offer, offer_lines, offers_of
from matcher.reading.table_headers import header

_LONGEST_DESCRIPTION = 6_000


def product_lines(product: Product, seen_prices: list[float]) -> Iterator[Said]:
    """Yield all that the data of one product says; `seen_prices` are the sums in its visible text."""
    thing = _product(product.thing)
    if name := text_of(thing.get("name")):
        yield Said(f"name: {name}", free=True)
    for label in ("brand", "manufacturer"):
        if (maker := text_of(thing.get(label))) and (meant := header("brand")):
            yield Said(f"{label}: {maker}", read_value(meant, maker))
            break
    yield from _numbers(thing)
    yield from _properties(thing)
    if description := text_of(thing.get("description")):
        yield Said(f"description: {description[:_LONGEST_DESCRIPTION]}", free=True)
    offer = chosen_offer(offers_of(product.thing) or offers_of(thing), seen_prices)
    if offer is not None:
        yield from offer_lines(thing, offer)


def _product(thing: Thing) -> Thing:
    """Return the product of a lone offer, or the product itself."""
    offered = thing.get("itemOffered")
    return {**thing, **offered} if isinstance(offered, Mapping) else thing


def _numbers(thing: Thing) -> Iterator[Said]:
    """The maker's number comes first; a shop's own number (`sku`, `productID`) is none of the motor's."""
    meant = header("part number")
    found = [(label, text_of(thing.get(label))) for label in ("mpn", "model")]
    model = thing.get("model")
    if isinstance(model, Mapping) and not found[0][1]:
        found.insert(0, ("model.mpn", text_of(model.get("mpn"))))
    first = ""
    for label, number in found:
        values = read_value(meant, number) if meant and number else ()
        if not values:
            continue
        if not first:
            first = number
            yield Said(f"{label}: {number}", values)
        elif number.casefold() != first.casefold():
            yield Said(f"{label}: {number}", (("other_numbers", (number,)),))


def _properties(thing: Thing) -> Iterator[Said]:
    for entry in items(thing.get("additionalProperty"))[:300]:
        if isinstance(entry, Mapping):
            label, value = text_of(entry.get("name") or entry.get("propertyID")), _value(entry)
            if label and value:
                yield labelled(label, value)


def _value(entry: Thing) -> str:
    """Return a property's value in words, with its unit."""
    given = entry.get("value")
    low, high = text_of(entry.get("minValue")), text_of(entry.get("maxValue"))
    if given is None and low and high:
        value = f"{low}-{high}"
    elif isinstance(given, Mapping) and "minValue" in given:
        value = f"{text_of(given.get('minValue'))}-{text_of(given.get('maxValue'))}"
    else:
        value = ", ".join(filter(None, map(text_of, items(given)[:20])))
    unit = text_of(entry.get("unitText")) or meanings("unit_code").get(
        text_of(entry.get("unitCode")).casefold(), ""
    )
    if unit and value and value[-1].isdigit():
        return f"{value} {unit}"
    return value


def labelled(label: str, value: str) -> Said:
    """Return a pair of name and value as a line with its facts; the reader sees what isn't known."""
    meant = header(label)
    line = f"{label}: {value}"
    if meant is None or meant.column.how == "free":
        telling = any(sign.isalpha() for sign in value)
        return Said(line, free=telling or meant is not None)
    return Said(line, read_value(meant, value, more=True))
