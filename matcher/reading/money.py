"""Sums of money: which is the price, which the shipping, and which are neither."""

from dataclasses import dataclass

from matcher.reading.items import Items

_AHEAD = 6
_BACK = 7


@dataclass(slots=True)
class Sum:
    """A sum: its amount, its currency if any, the first and last item of it."""

    amount: float
    currency: str | None
    first: int
    last: int


def money(items: Items) -> None:
    """Claim price, currency and shipping."""
    sums = _sums(items)
    roles = [_role(items, sums, k) for k in range(len(sums))]
    if roles[:2] == [None, None] and _plus_between(items, sums[0], sums[1]):
        roles[1] = "ship"
    for said, role in zip(sums, roles, strict=True):
        _spend(items, said)
        if role == "ship":
            items.claim("shipping", said.amount, said.first, said.last)
        elif role in ("price", "shipped", None):
            strength = 1 if role is None else 2
            items.claim("price", said.amount, said.first, said.last, strength)
            if said.currency:
                items.claim("currency", said.currency, said.first, said.last, strength)
            if role == "shipped":
                items.claim("shipping", 0.0, said.last, said.last + 1)
    _unsigned(items)


def _spend(items: Items, said: Sum) -> None:
    for k in range(said.first, said.last + 1):
        items.used[k] = True


def _sums(items: Items) -> list[Sum]:
    """Return the sums with a sign or code, in order; `$55`, `55 USD`, `CAD 72.00`, `US $55`."""
    found: list[Sum] = []
    for i in sorted(items.numbers):
        number = items.numbers[i]
        if items.used[i] or number.value is None or number.signs:
            continue
        first, last, currency = i, i, None
        if items.has(i - 1, "money") and items.word(i - 1) not in ("bucks", "dollars", "quid"):
            currency, first = items.roles[i - 1]["money"], i - 1
            if first and items.has(first - 1, "money"):
                first -= 1
                currency = items.roles[first]["money"] if currency == "USD" else currency
        if (items.has(i + 1, "money") and not items.has(i + 2, "num")) or (
            first == i and items.has(i + 1, "money")
        ):
            after = items.roles[i + 1]["money"]
            currency, last = (after if currency in (None, "USD") else currency), i + 1
        if first == last:
            continue
        found.append(Sum(_cents(items, i), None if currency == "-" else currency, first, last))
    return found


def _cents(items: Items, i: int) -> float:
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
    clause, segment = items.clause[said.first], items.segment[said.first]
    stop = sums[k + 1].first if k + 1 < len(sums) else len(items)
    ahead = None
    for j in range(said.last + 1, min(stop, said.last + 1 + _AHEAD)):
        if items.clause[j] != clause or items.word(j) in ("plus", "and", "then", "+"):
            break
        ahead = _kind(items, j)
        if ahead:
            break
    start = sums[k - 1].last if k else -1
    behind = None
    for j in range(said.first - 1, max(start, said.first - 1 - _BACK), -1):
        if items.segment[j] != segment or (items.clause[j] != clause and not _opens(items, j, clause)):
            break
        behind = _kind(items, j)
        if behind:
            break
    if "not" in (behind, ahead):
        return "not"
    if behind == "ship" and ahead != "price":
        return "ship"
    return ahead or behind


def _opens(items: Items, j: int, clause: int) -> bool:
    """Say whether item `j` is the bracket or sign that opens the clause."""
    return items.clause[j] == clause


def _kind(items: Items, j: int) -> str | None:
    roles = items.roles[j]
    if "notprice" in roles or "was" in roles:
        return "not" if "price" not in roles else "price"
    if "shipped" in roles:
        return "shipped"
    if "ship" in roles:
        return "ship"
    return "price" if "price" in roles else None


def _plus_between(items: Items, one: Sum, two: Sum) -> bool:
    return any(items.word(j) in ("+", "plus") for j in range(one.last + 1, two.first))


def _unsigned(items: Items) -> None:
    """`asking 55`, `price 60`: a price without currency."""
    for i in items.numbers:
        if items.used[i] or items.numbers[i].value is None or items.numbers[i].signs:
            continue
        before = items.skip(i - 1, -1)
        if (
            items.has(before, "price")
            and items.word(before)
            not in (
                "now",
                "each",
                "ea",
                "firm",
                "obo",
                "today",
                "net",
            )
            and not items.has(i + 1, "unit")
            and not items.has(i + 1, "after")
        ):
            items.used[i] = True
            items.claim("price", _cents(items, i), before, i)


def free_shipping(items: Items, i: int, _value: str) -> None:
    """Free shipping, unless it hangs on a condition (`over $250`) or is only for pick-up."""
    for j in range(i + 1, min(len(items), i + 6)):
        if items.segment[j] != items.segment[i]:
            break
        if items.word(j) in (
            "over",
            "above",
            "orders over",
            "on",
            "if",
            "orders above",
            "with",
            "orders of",
            "when",
            "for",
        ) and any(
            items.has(k, "money") or items.has(k, "num") or items.word(k) in ("orders", "order")
            for k in range(j + 1, min(len(items), j + 4))
        ):
            return
    items.claim("shipping", 0.0, i)


HANDLERS = {"freeship": free_shipping}
