"""Sums of money: which is the price, which the shipping, and which are neither."""

from matcher.reading.bare_sums import bare_sums
from matcher.reading.free_shipping import is_free_in_days
from matcher.reading.items import Items
from matcher.reading.other_prices import is_on_top, rule_out_others
from matcher.reading.sums import bare_shipping, named_currency, names_shipping, only_currency, signed_sums
from matcher.reading.tiers import (
    INCLUDES,
    Sum,
    by_zones,
    has_cents,
    is_for_many,
    is_new_price,
    is_superseded,
    plus_between,
    rule_out_dearer,
    rule_out_ranges,
    rule_out_struck,
)

_AHEAD = 6
_BACK = 7
_PARTING = frozenset({"plus", "and", "then", "+", "/", "or", "|", "but", "-"})
_ONLY_BEHIND = frozenset(
    {"now", "each", "ea", "firm", "obo", "today", "net", "cash", "apiece", "per piece", "vb", "vhb", "ono"}
)
_PARCELS = frozenset("📦🚚📮✉")  # right before a sum; elsewhere they are ornaments
_APART = frozenset({"or", "/", "|", "but"})
_IF_SENT = frozenset({"to your door", "if", "if i", "if you", "if we", "when"})
"""What stands behind the whole sum for who has it sent: `$40 picked up, $55 if I have to ship it`."""
_TAXES = frozenset({"iva", "vat", "mwst", "ust", "tva", "tax", "btw", "moms", "gst"})
_IN_ALL = frozenset({"total", "all in", "altogether", "in all", "all told"})
_FIRM = frozenset({"firm", "obo", "ono", "cash", "net", "each", "ea"})
_EACH = frozenset({"each", "ea", "apiece"})
_EXCLUDES = frozenset({"buyer", "excl", "excluding", "excludes", "before", "exc", "zzgl", "ex", "hors"})
_EXTRA = frozenset(
    {"not", "extra", "additional", "collect", "calculated", "quoted", "separate", "excluded", "tbd", "actual"}
)
_NAMED = ("ship", "post", "freight", "delivery", "s&h", "s & h")
_SAVES = frozenset({"save", "you save", "savings", "you saved"})
_TO_SEND = frozenset({"to ship", "to mail", "to post", "to send", "to deliver"})
_DENIES = frozenset({"payer", "no", "not"})


def money(items: Items, *, one_lot: bool = False) -> None:
    """Claim price, currency and shipping; `one_lot` where the seller parts with all or none."""
    sums = signed_sums(items)
    dollars = [said for said in sums if said.currency == "USD"]
    named = named_currency(items, sums) if dollars else None
    for said in dollars:
        said.currency = named or "USD"
    for k, said in enumerate(sums):
        for j in range(said.first, said.last + 1):
            items.used[j] = True
        said.role = said.role or _role(items, sums, k)
    rule_out_ranges(items, sums)
    rule_out_dearer(items, sums)
    rule_out_struck(items, sums)
    if len(sums) > 1:
        rule_out_others(items, sums)
    if one_lot:
        _rule_out_lots(items, sums)
    _pair(items, sums)
    prices = [said for said in sums if said.role in ("price", "shipped")]
    open_sums = [said for said in sums if said.role is None]
    for said in prices or [said for said in open_sums if not items.muted[said.first]][:1]:
        _claim_price(items, said)
    zones = by_zones(items, sums)
    for said in sums:
        if said.role == "ship" and not zones:
            items.claim("shipping", said.amount, said.first, said.last)
    if not prices and not any(said.role is None for said in sums):
        _unsigned(items, shipping_due=not any(said.role == "ship" for said in sums))


def _rule_out_lots(items: Items, sums: list[Sum]) -> None:
    """`$88.00 total, will not split`: the price of all of them, unless each has one too."""
    for said in sums:
        if said.role in (None, "price") and items.word(said.last + 1) not in _EACH:
            said.role = "not"
            if said.currency:
                items.claim("currency", said.currency, said.first, said.last)


def _pair(items: Items, sums: list[Sum]) -> None:
    """`$30 + $15`: price and shipping; `$145 picked up, $160 shipped`: the difference is the shipping."""
    if len(sums) == 1 and sums[0].role == "ship" and items.word(sums[0].last + 1) == "to your door":
        sums[0].role = "shipped"
    said = [one for one in sums if one.role != "not"]
    if len(said) < 2:
        return
    one, two = said[:2]
    if two.role == "ship" and items.word(two.last + 1) in _IN_ALL:
        two.role = "shipped"  # `$60 picked up, or I ship for $75 total`
    if two.role is None and _is_added(items, one, two):
        two.role = "ship"
    elif (
        (two.role == "shipped" or (two.role == "ship" and items.word(two.last + 1) in _IF_SENT))
        and one.role in (None, "price")
        and one.amount < two.amount
        and (_local(items, one) or items.word(one.last + 1) == "/")
    ):
        one.role, two.role, two.amount = "price", "ship", two.amount - one.amount
    elif (
        len(said) == 2 and two.role is None and one.role in (None, "price") and is_new_price(items, one, two)
    ):
        one.role = "not"


def _is_added(items: Items, one: Sum, two: Sum) -> bool:
    """`$90 firm + $20`, `asking $90 + $20`: behind a price that is named, right behind it and the plus."""
    if one.role == "price":
        k = one.last + 1 + (items.word(one.last + 1) in _FIRM)
        return k + 1 == two.first and items.word(k) in ("+", "plus")
    return one.role is None and plus_between(items, one, two)


def _local(items: Items, said: Sum) -> bool:
    """Say whether a sum is asked of who comes for it: `$145 local`, `$145 if you pick up`."""
    around = range(max(0, said.first - 3), min(len(items), said.last + 4))
    return any(items.has(j, "local") and items.clause[j] == items.clause[said.first] for j in around)


def _unsigned(items: Items, *, shipping_due: bool) -> None:
    """Claim a price without sign or code, and what stands beside it for shipping."""
    found = bare_sums(items)
    if not found:
        for said in _bare_shippings(items) if shipping_due else []:
            if _is_labelled_sum(items, said):
                items.claim("shipping", said.amount, said.first, said.last)
        return
    for said in found:
        items.used[said.first] = True
    price, *shipping = found
    price.currency = only_currency(items)
    _claim_price(items, price)
    for said in (shipping or _bare_shippings(items)) if shipping_due else []:
        items.claim("shipping", said.amount, said.first, said.last)


def _is_labelled_sum(items: Items, said: Sum) -> bool:
    """`shipping & handling: 24.99`: written as a sum behind its label, where no price is told."""
    label = items.skip(said.first - 1, -1)
    named = items.word(label).startswith(_NAMED) and items.clause[label] == items.clause[said.first]
    return named and has_cents(items, said.first)


def _bare_shippings(items: Items) -> list[Sum]:
    """Return the first sum beside a word for shipping."""
    for i, number in items.numbers.items():
        said = None if items.used[i] or not number.value or number.signs else bare_shipping(items, i)
        if said:
            return [said]
    return []


def _claim_price(items: Items, said: Sum) -> None:
    items.claim("price", said.amount, said.first, said.last)
    if said.currency:
        items.claim("currency", said.currency, said.first, said.last)
    if said.role == "shipped":
        items.claim("shipping", 0.0, said.last, said.last + 1 if said.last + 1 < len(items) else said.last)


def _role(items: Items, sums: list[Sum], k: int) -> str | None:
    """Return `price`, `ship`, `shipped`, `not` or None (nothing said) for sum `k`."""
    said = sums[k]
    if is_superseded(items, said) or is_for_many(items, said):
        return "not"
    stop = sums[k + 1].first if k + 1 < len(sums) else len(items)
    start = sums[k - 1].last if k else -1
    label = items.skip(said.first - 1, -1)
    close = _kind(items, label) if label > start else None
    if close == "not" and items.word(said.first - 1) == "=":
        close = None
    if close == "not" and items.word(label) == "cost" and items.word(label + 1) == ":":
        return None  # `cost: $27` in a list of labels
    if is_on_top(items, said, label):
        return "not"
    if _is_to_send(items, said, label, start, close, later=k > 0):
        return "ship"
    if close == "price" and items.word(label) == "you pay" and names_shipping(items, said.last + 1):
        return "ship"
    if close == "price" and "shipped" in items.roles[said.last + 1]:
        return "shipped"  # `asking $40 shipped`
    if close:
        # `shipping $15.80 expedited` is dearer than what is usual
        return "not" if close == "ship" and items.has(said.last + 1, "notprice") else close
    ahead, behind = _ahead(items, said, stop), _behind(items, said, start)
    return "not" if "not" in (behind, ahead) else ahead or behind


def _is_to_send(items: Items, said: Sum, label: int, start: int, close: str | None, *, later: bool) -> bool:
    """Say whether the words beside a sum leave only shipping: `Shipping? 20 bucks`, `costs $21 to ship`."""
    return (
        (later and items.word(label) in _PARCELS)
        or (items.word(label) == "?" and items.has(label - 1, "ship"))
        or (items.word(label) == ")" and _before_bracket(items, label, start) == "ship")
        or (items.word(said.last + 1) in _TO_SEND and close != "price")
        or (items.word(said.last + 1) in ("more", "extra") and names_shipping(items, said.last + 2))
    )


def _before_bracket(items: Items, label: int, start: int) -> str | None:
    """`Standard shipping (3-5 days): $11.99`: what stands before the bracket labels the sum."""
    for j in range(label - 1, max(start, label - 1 - _BACK), -1):
        if items.word(j) == "(":
            return _kind(items, j - 1)
    return None


def _ahead(items: Items, said: Sum, stop: int) -> str | None:
    for j in range(said.last + 1, min(stop, said.last + 1 + _AHEAD)):
        if items.clause[j] != items.clause[said.first] or items.word(j) in _PARTING:
            break
        kind = _kind(items, j)
        if items.has(j, "ship") and _announces(items, j, stop):
            break
        if kind == "ship" and _comes_on_top(items, said, j):
            break
        of_next = items.has(j, "was") or items.word(j) in _SAVES
        if of_next and items.has(items.skip(j + 1, 1), "money"):
            break  # `$30 down from $85`, `$30 you save $55`
        if (kind == "shipped" or items.word(j) in _EACH) and _kind(items, j + 1) == "not":
            return "not"  # `$90 each when you take three`, `$11 shipped for both`
        if items.word(j) in _EACH and items.has(j + 1, "ship") and "to" in items.words[j + 1].split(" "):
            return "ship"  # `$16 each to mail`
        if kind:
            return kind
    return None


def _announces(items: Items, j: int, stop: int) -> bool:
    """`$79 shipping $22`, `$79 shipping zone 1 $12`: the word belongs to the next sum of its clause."""
    if items.has(items.skip(j + 1, 1), "money"):
        return True
    if stop >= len(items) or items.clause[stop] != items.clause[j]:
        return False
    return not any(items.word(k) in _PARTING for k in range(j + 1, stop))


def _comes_on_top(items: Items, said: Sum, j: int) -> bool:
    """`$48 buyer pays shipping`, `$48 excl. freight`, `$48 shipping not included`: it pays for the motor."""
    for k in range(said.last + 1, j):
        if "unsure" in items.roles[k]:
            return True  # `$65 no idea about mailing`
        if not _DENIES.isdisjoint(items.roles[k]) or not _EXCLUDES.isdisjoint(items.word(k).split(" ")):
            return True
    return items.word(j + 1).split(" ")[0] in _EXTRA or items.has(j + 1, "payer")


def _behind(items: Items, said: Sum, start: int) -> str | None:
    for j in range(said.first - 1, max(start, said.first - 1 - _BACK), -1):
        if items.segment[j] != items.segment[said.first] or items.clause[j] != items.clause[said.first]:
            break
        if items.said(j, "after") == "pct" or items.word(j) in _APART or items.word(j) == "=":
            break  # `Save 20%: $111`, `$86 the pair = $43 each`
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
        return "not" if items.has(j - 1, "was") and items.word(j - 1) != "list" else "price"
    if "notprice" in roles or "was" in roles:
        return "not"
    if "ship" in roles:
        if is_free_in_days(items, j):
            return None  # `free 3 day shipping. $45`
        included = items.word(j - 1) in INCLUDES and items.word(j - 2) not in _TAXES
        return "shipped" if included else "ship"
    return None
