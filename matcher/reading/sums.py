"""Sums of money with a sign or code, and what says in which money they are: `$55`, `55 USD`, `EUR: 48`."""

import unicodedata

from matcher.reading.items import Items
from matcher.reading.tiers import Sum, amount, has_cents

_AFTER_ONLY = frozenset({"bucks", "bux", "dollars", "dollar", "quid", "pesos"})
# Only before these is a number in words a sum.
_SPELLED = _AFTER_ONLY | {"euro", "euros", "us dollars", "canadian dollars", "pounds sterling"}
_SHIP_WORDS = frozenset({"post", "shipping", "to ship", "s&h", "s & h", "postage", "ship", "shpg"})
# Countries behind a dollar sum: `$45 CAN`, `135.00 US`.
_COUNTRIES = {"can": "CAD", "cdn": "CAD", "ca": "CAD", "us": "USD", "aus": "AUD", "au": "AUD"}
_OR_MORE = frozenset({"or more", "and up", "up", "pcs", "pieces", "units"})
_RAISED = frozenset("⁰¹²³⁴⁵⁶⁷⁸⁹")
_FUNDS = frozenset({"dollars", "funds", "sterling"})


def signed_sums(items: Items) -> list[Sum]:
    """Return the sums with a sign or code, in order; `$55`, `55 USD`, `CAD 72.00`, `US $55`, `$9 + 5`."""
    found: list[Sum] = []
    roles, used = items.roles, items.used
    for i, number in items.numbers.items():
        if used[i] or number.value is None or number.signs:
            continue
        said = _signed(items, i)
        if said and roles[i]["num"] and items.word(i + 1) not in _SPELLED:
            said = None
        if said is None and found:
            said = _added(items, i, found[-1]) or bare_shipping(items, i)
        if said:
            found.append(said)
    return found


def _signed(items: Items, i: int) -> Sum | None:
    first, currency = _before(items, i)
    last = i
    if items.has(i + 1, "money") and not _opens_next(items, i + 1, signed=first != i):
        after = items.roles[i + 1]["money"]
        currency, last = (after if currency in (None, "USD") else currency), i + 1
    elif items.word(i + 1) == "(" and items.has(i + 2, "money") and items.word(i + 3) == ")":
        currency, last = items.roles[i + 2]["money"], i + 3
    if first == last and items.raw(i - 1) == "CAN" and has_cents(items, i):
        return Sum(amount(items, i), "CAD", i - 1, i)
    country = _COUNTRIES.get(items.word(last + 1)) if items.raw(last + 1).isupper() else None
    if country and (currency == "USD" or (first == last and has_cents(items, i))):
        currency, last = country, last + 1
    if first == last:
        return None
    value, last = _with_cents(items, i, last)
    return Sum(value, None if currency == "-" else currency, first, last)


def _opens_next(items: Items, k: int, *, signed: bool) -> bool:
    """`qty 1 $164.20`: the sign stands before the figure that it touches."""
    if not items.has(k + 1, "num"):
        return False
    gaps = items.scan.gaps
    return signed or (gaps[items.last[k]] == "" and gaps[items.first[k] - 1] != "")


def _before(items: Items, i: int) -> tuple[int, str | None]:
    """Return where the sign or code before number `i` starts and what it says; `(USD): 55`, `Dollars: 55`."""
    k = i - 1
    while items.word(k) in (":", ")"):
        k -= 1
    if not items.has(k, "money") or (items.word(k) in _AFTER_ONLY and k == i - 1):
        return i, None
    if k < i - 1 and items.has(k - 1, "num"):
        return i, None  # `12 USD: 4 pieces`
    currency = items.roles[k]["money"]
    if items.word(k) == "$" and items.raw(k - 1) == "A" and _is_australian(items, k):
        return k - 1, "AUD"
    if items.has(k - 1, "money"):
        k -= 1
        currency = items.roles[k]["money"] if currency == "USD" else currency
    return k - (items.word(k - 1) == "(" and items.word(i - 1) != "("), currency


def _is_australian(items: Items, k: int) -> bool:
    """`A$45`; not `1.3A $45`."""
    return items.scan.gaps[items.first[k] - 1] == "" and not items.has(k - 2, "num")


def _with_cents(items: Items, i: int, last: int) -> tuple[float, int]:
    """`thirty nine dollars and fifty cents`."""
    raised = items.raw(i + 1)
    if last == i and items.is_glued(i) and len(raised) == 2 and _RAISED.issuperset(raised):
        return amount(items, i) + _cents(raised), i + 1  # `$84⁹⁹`
    k = last + 1 + (items.word(last + 1) == "and")
    if k in items.numbers and items.word(k + 1) in ("cents", "cent"):
        return amount(items, i) + (items.numbers[k].value or 0.0) / 100, k + 1
    return amount(items, i), last


def _cents(raised: str) -> float:
    tens, ones = map(unicodedata.digit, raised)
    return (10 * tens + ones) / 100


def _added(items: Items, i: int, before: Sum) -> Sum | None:
    """`$22 + 8 ship`, `175 USD + 60 ground`: a bare figure right behind a sum and a plus is shipping."""
    k = i - 2
    while items.word(k) in ("each", "ea", "/", "apiece"):
        k -= 1  # `6$/each +5 ship`
    if items.word(i - 1) in ("+", "plus", "and") and k == before.last:
        if items.has(i + 1, "unit") or (items.has(i + 1, "after") and items.word(i + 1) != "ground"):
            return None
        if items.roles[i]["num"] and not names_shipping(items, i + 1):
            return None  # `$40 and one more`
        return Sum(amount(items, i), before.currency, i, i, "ship")
    return None


def bare_shipping(items: Items, i: int) -> Sum | None:
    """`shipping 12.`, `14.00 post`: a figure without sign beside a word for shipping."""
    if items.has(i + 1, "unit") or items.has(i + 1, "after"):
        return None
    if items.word(i + 1) == "+" or items.word(i + 1) in _OR_MORE:
        return None  # `free S/H on 3+`
    if not items.numbers[i].value and items.word(i - 1) == "handling":
        return None  # `shipping $14/handling 0`
    if "num" in items.roles[i + 1] and (items.roles[i]["num"] or items.numbers[i].text == "1"):
        return None  # `shipping one 7, two 9`: the figure behind is the sum
    one = items.numbers.get(i - 1)
    if one and one.value == 1 and items.has(i - 2, "ship") and not items.numbers[i].signs:
        return Sum(amount(items, i), None, i, i, "ship")
    more = items.word(i + 1) in ("more", "extra") and names_shipping(items, i + 2)
    before = items.skip(i - 1, -1)
    if items.has(before, "ship") or _is_sent(items, i, before) or items.word(i + 1) in _SHIP_WORDS or more:
        return Sum(amount(items, i), None, i, i, "ship")
    return None


def _is_sent(items: Items, i: int, k: int) -> bool:
    """`ship it for 21`, `ship PTC 21`: with the letters of who carries it; not `shipping for one`."""
    if items.word(k) == "for" and not items.roles[i]["num"]:
        k -= 1
    raw = items.raw(k)
    if 1 < len(raw) <= 5 and raw.isalpha() and raw.isupper() and not items.roles[k]:
        k -= 1
    if items.word(k) == "it":
        k -= 1
    return items.has(k, "ship")


def names_shipping(items: Items, k: int) -> bool:
    """Say whether shipping is named at item `k`, over `for the`, `to`, `in`."""
    for _ in range(3):
        if items.has(k, "ship"):
            return True
        if items.word(k) not in ("for", "the", "to", "in"):
            return False
        k += 1
    return False


def named_currency(items: Items, sums: list[Sum]) -> str | None:
    """`Prices CAD`, `in Canadian dollars`: a code that stands by no sum says what the dollars are."""
    spent = {i for said in sums for i in range(said.first, said.last + 1)}
    for i in items.active:
        code = items.roles[i].get("money")
        if code and i not in spent and code not in ("USD", "-") and _is_code(items, i):
            return code
    return None


def only_currency(items: Items) -> str | None:
    """`Prices in EUR.`: the one code of a text without signs."""
    loose = [i for i in items.active if "money" in items.roles[i] and not items.used[i]]
    codes = {items.roles[i]["money"] for i in loose if _is_code(items, i)}
    return codes.pop() if len(codes) == 1 and "-" not in codes else None


def _is_code(items: Items, i: int) -> bool:
    return items.raw(i).isupper() or items.word(i).split(" ")[-1] in _FUNDS
