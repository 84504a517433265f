"""Sums of money: which is the price, which the shipping, and which are neither."""

from matcher.reading.items import Items
from matcher.reading.tiers import Sum, by_zones, is_for_many, is_superseded, rule_out_ranges

_AHEAD = 6
_BACK = 7
_PARTING = frozenset({"plus", "and", "then", "+", "/", "or", "|", "but", "-"})
_AFTER_ONLY = frozenset({"bucks", "bux", "dollars", "dollar", "quid", "pesos"})
_ONLY_BEHIND = frozenset(
    {"now", "each", "ea", "firm", "obo", "today", "net", "cash", "apiece", "per piece", "vb", "vhb", "ono"}
)
_SHIP_WORDS = frozenset({"post", "shipping", "to ship", "s&h", "s & h", "postage", "ship", "shpg"})
_CONDITIONS = frozenset(
    {
        "over",
        "above",
        "on",
        "if",
        "with",
        "when",
        "for",
        "orders",
        "orders over",
        "orders above",
        "orders of",
        "from",
        "dès",
        "ab",
    }
)


# Countries behind a dollar sum: `$45 CAN`, `135.00 US`.
_COUNTRIES = {"can": "CAD", "cdn": "CAD", "ca": "CAD", "us": "USD", "aus": "AUD", "au": "AUD"}


def money(items: Items) -> None:
    """Claim price, currency and shipping."""
    sums = _sums(items) or _bare_pair(items)
    dollars = [said for said in sums if said.currency == "USD"]
    named = _named_currency(items, sums) if dollars else None
    for said in dollars:
        said.currency = named or "USD"
    for k, said in enumerate(sums):
        for j in range(said.first, said.last + 1):
            items.used[j] = True
        said.role = said.role or _role(items, sums, k)
    rule_out_ranges(items, sums)
    if (
        len(sums) > 1
        and sums[0].role is None
        and sums[1].role is None
        and _plus_between(items, sums[0], sums[1])
    ):
        sums[1].role = "ship"
    prices = [said for said in sums if said.role in ("price", "shipped")]
    for said in prices or [said for said in sums if said.role is None][:1]:
        _claim_price(items, said)
    zones = by_zones(items, sums)
    for said in sums:
        if said.role == "ship" and not zones:
            items.claim("shipping", said.amount, said.first, said.last)
    if not prices and not any(said.role is None for said in sums):
        _unsigned(items)


def _named_currency(items: Items, sums: list[Sum]) -> str | None:
    """`Prices CAD`: a code that stands by no sum says what the dollars are."""
    spent = {i for said in sums for i in range(said.first, said.last + 1)}
    for i in items.active:
        code = items.roles[i].get("money")
        if code and i not in spent and code not in ("USD", "-") and items.raw(i).isupper():
            return code
    return None


def _claim_price(items: Items, said: Sum) -> None:
    items.claim("price", said.amount, said.first, said.last)
    if said.currency:
        items.claim("currency", said.currency, said.first, said.last)
    if said.role == "shipped":
        items.claim("shipping", 0.0, said.last, said.last + 1 if said.last + 1 < len(items) else said.last)


def _sums(items: Items) -> list[Sum]:
    """Return the sums with a sign or code, in order; `$55`, `55 USD`, `CAD 72.00`, `US $55`, `$9 + 5`."""
    found: list[Sum] = []
    roles, used = items.roles, items.used
    for i, number in items.numbers.items():
        if used[i] or number.value is None or number.signs:
            continue
        said = _signed(items, i)
        if said is None and found:
            said = _added(items, i, found[-1]) or _bare_shipping(items, i)
        if said and not (roles[i]["num"] and items.word(i + 1) not in ("bucks", "quid")):
            found.append(said)
    return found


def _signed(items: Items, i: int) -> Sum | None:
    first, last, currency = i, i, None
    if items.has(i - 1, "money") and items.word(i - 1) not in _AFTER_ONLY:
        currency, first = items.roles[i - 1]["money"], i - 1
        if items.has(first - 1, "money"):
            first -= 1
            currency = items.roles[first]["money"] if currency == "USD" else currency
    if items.has(i + 1, "money") and (first == i or not items.has(i + 2, "num")):
        after = items.roles[i + 1]["money"]
        currency, last = (after if currency in (None, "USD") else currency), i + 1
    country = _COUNTRIES.get(items.word(last + 1)) if items.raw(last + 1).isupper() else None
    if country and (currency == "USD" or (first == last and items.numbers[i].text[-3:-2] == ".")):
        currency, last = country, last + 1
    return (
        None if first == last else Sum(_amount(items, i), None if currency == "-" else currency, first, last)
    )


def _added(items: Items, i: int, before: Sum) -> Sum | None:
    """`$22 + 8 ship`, `175 USD + 60 ground`: a bare figure right behind a sum and a plus is shipping."""
    if items.word(i - 1) in ("+", "plus", "and") and i - 2 == before.last:
        if items.has(i + 1, "unit") or (items.has(i + 1, "after") and items.word(i + 1) != "ground"):
            return None
        return Sum(_amount(items, i), before.currency, i, i, "ship")
    return None


def _bare_shipping(items: Items, i: int) -> Sum | None:
    """`shipping 12.`, `14.00 post`: a figure without sign beside a word for shipping."""
    if items.has(i + 1, "unit") or items.has(i + 1, "after"):
        return None
    if items.has(items.skip(i - 1, -1), "ship") or items.word(i + 1) in _SHIP_WORDS:
        return Sum(_amount(items, i), None, i, i, "ship")
    return None


def _bare_pair(items: Items) -> list[Sum]:
    """`12.00 + 6.00`: two amounts with cents and a plus are price and shipping."""
    for i in items.numbers:
        if items.word(i + 1) in ("+", "plus") and items.has(i + 2, "num") and not items.used[i]:
            one, two = items.numbers[i], items.numbers[i + 2]
            cents = one.text[-3:-2] == "." and two.text[-3:-2] == "."
            if (cents or items.word(i + 3) in _SHIP_WORDS) and not items.has(i + 3, "unit"):
                return [
                    Sum(_amount(items, i), None, i, i),
                    Sum(_amount(items, i + 2), None, i + 2, i + 2, "ship"),
                ]
    return []


def _amount(items: Items, i: int) -> float:
    """Read an amount; `1.200` and `1,200` are thousands, `12,50` is decimal."""
    number = items.numbers[i]
    value = number.value or 0.0
    figures = number.text
    if "." in figures and "," not in figures and len(figures.rsplit(".", 1)[1]) == 3:
        return value * 1000
    return value


def _role(items: Items, sums: list[Sum], k: int) -> str | None:
    """Return `price`, `ship`, `shipped`, `not` or None (nothing said) for sum `k`."""
    said = sums[k]
    if is_superseded(items, said) or is_for_many(items, said):
        return "not"
    stop = sums[k + 1].first if k + 1 < len(sums) else len(items)
    start = sums[k - 1].last if k else -1
    label = items.skip(said.first - 1, -1)
    close = _kind(items, label) if label > start else None
    if close:
        return close
    ahead = _ahead(items, said, stop)
    behind = _behind(items, said, start)
    if "not" in (behind, ahead):
        return "not"
    return ahead or behind


def _ahead(items: Items, said: Sum, stop: int) -> str | None:
    for j in range(said.last + 1, min(stop, said.last + 1 + _AHEAD)):
        if items.clause[j] != items.clause[said.first] or items.word(j) in _PARTING:
            break
        kind = _kind(items, j)
        if kind == "ship" and items.has(items.skip(j + 1, 1), "money"):
            break  # `$79 shipping $22`: the word announces the next sum
        if kind:
            return kind
    return None


def _behind(items: Items, said: Sum, start: int) -> str | None:
    for j in range(said.first - 1, max(start, said.first - 1 - _BACK), -1):
        if items.segment[j] != items.segment[said.first] or items.clause[j] != items.clause[said.first]:
            break
        if items.said(j, "after") == "pct":
            break  # `Save 20%: $111`
        kind = _kind(items, j)
        if kind and not (kind == "price" and items.word(j) in _ONLY_BEHIND):
            return kind
    return None


def _kind(items: Items, j: int) -> str | None:
    if not 0 <= j < len(items):
        return None
    roles = items.roles[j]
    if "shipped" in roles:
        return "shipped"
    if "price" in roles:
        return "price"
    if "notprice" in roles or "was" in roles:
        return "not"
    return "ship" if "ship" in roles else None


def _plus_between(items: Items, one: Sum, two: Sum) -> bool:
    return any(items.word(j) in ("+", "plus", "/") for j in range(one.last + 1, two.first))


def _unsigned(items: Items) -> None:
    """`asking 55`, `price 60`, `45 obo`, `Net: 52.80`: a price without currency."""
    for i in items.numbers:
        number = items.numbers[i]
        if items.used[i] or number.value is None or number.signs or number.value < 1:
            continue
        before = items.skip(i - 1, -1)
        labelled = items.has(before, "price") and items.word(before) not in _ONLY_BEHIND - {"net"}
        if items.word(before) == "net" and "." not in number.text:
            labelled = False
        behind = items.word(i + 1) in ("obo", "firm", "ono", "each", "vb", "vhb", "or best offer")
        if behind or (labelled and not items.has(i + 1, "unit") and not items.has(i + 1, "after")):
            items.used[i] = True
            items.claim("price", _amount(items, i), i, i)
            return


def free_shipping(items: Items, i: int, _value: str) -> None:
    """Free shipping, unless it hangs on a condition (`over $250`)."""
    for j in range(i + 1, min(len(items), i + 4)):
        if items.segment[j] != items.segment[i] or items.clause[j] != items.clause[i]:
            break
        if items.word(j) in _CONDITIONS and any(
            items.has(k, "money") or items.has(k, "num") or items.word(k).startswith("order")
            for k in range(j, min(len(items), j + 4))
        ):
            return
    if items.word(i - 1) in ("no", "not") or items.has(i + 1, "num") or _from_a_sum_on(items, i):
        return
    items.claim("shipping", 0.0, i)


def _from_a_sum_on(items: Items, i: int) -> bool:
    """`Orders over $199 ship free`: the condition stands before."""
    before = range(i - 1, max(-1, i - 6), -1)
    return any(
        items.has(j, "money") and items.word(j - 1) in _CONDITIONS and items.clause[j] == items.clause[i]
        for j in before
    )


HANDLERS = {"freeship": free_shipping}
