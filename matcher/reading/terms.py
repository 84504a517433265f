"""The terms of a sale: returns, restocking, warranty, how many, the seller's rating, the condition."""

from matcher.reading.items import Items

DAYS = {"day": 1, "week": 7, "month": 30, "year": 365}
_NEAR = 7


def span_of_days(items: Items, i: int) -> int | None:
    """Return `90 days` at number `i` as days; a year is 365, a month 30."""
    unit = items.said(i + 1, "after")
    value = items.numbers[i].value
    if unit not in DAYS or value is None:
        return None
    if unit == "month":
        years, months = divmod(value, 12)
        return round(years * 365 + months * 30)
    return round(value * DAYS[unit])


def days(items: Items, i: int) -> None:
    """Give a number of days to the returns or the warranty that stand nearest in its segment."""
    count = span_of_days(items, i)
    if count is None:
        return
    items.used[i] = True
    best: tuple[int, str, int] | None = None
    for j in range(max(0, i - _NEAR), min(len(items), i + 2 + _NEAR)):
        if items.segment[j] != items.segment[i]:
            continue
        for kind in ("returns", "warranty"):
            if items.said(j, kind) == "-":
                if (
                    kind == "returns"
                    and items.clause[j] != items.clause[i]
                    and items.said(i + 1, "after") == "year"
                ):
                    continue
                distance = abs(j - i) + (4 if items.clause[j] != items.clause[i] else 0)
                if best is None or distance < best[0]:
                    best = (distance, kind, j)
    if best is None or _conditional(items, i):
        return
    items.claim("return_days" if best[1] == "returns" else "warranty_days", count, i, best[2])


def _conditional(items: Items, i: int) -> bool:
    return items.word(i - 1) in ("after", "over") if i else False


def returns(items: Items, i: int, value: str) -> None:
    """`no returns` -> 0 days."""
    if value == "0":
        items.claim("return_days", 0, i)


def warranty(items: Items, i: int, value: str) -> None:
    """`no warranty` -> 0 days."""
    if value == "0":
        items.claim("warranty_days", 0, i)


def restock(items: Items, i: int, value: str) -> None:
    """`restocking 15%`, `20% restocking fee`; one that hangs on a condition is left out."""
    if value == "0":
        items.claim("restocking_pct", 0.0, i)
        return
    for j in (
        items.skip(i + 1, 1),
        items.skip(i - 1, -1) - 1,
        *range(i + 2, i + 9),
        *range(i - 3, i - 7, -1),
    ):
        if (
            items.has(j, "num")
            and items.said(j + 1, "after") == "pct"
            and items.segment[j] == items.segment[i]
        ):
            percent = items.numbers[j].value
            if percent is not None and percent <= 100 and not _hangs(items, max(i, j + 1)):
                items.used[j] = True
                items.claim("restocking_pct", percent, i, j + 1)
            return


def _hangs(items: Items, i: int) -> bool:
    return any(
        items.word(j) in ("after", "over", "beyond", "past", "if", "on items", "on opened")
        or (items.word(j) == "on" and items.word(j + 1) not in ("all", "every", "any", "returns"))
        for j in range(i + 1, min(len(items), i + 5))
        if items.segment[j] == items.segment[i]
    )


def stock(items: Items, i: int, _value: str) -> None:
    """`6 in stock`, `11 available`."""
    if items.has(i - 1, "num"):
        _quantity(items, i - 1, i)
    elif items.has(items.skip(i + 1, 1), "num") and items.word(i) in (
        "available",
        "stock",
        "in stock",
        "on hand",
    ):
        _quantity(items, items.skip(i + 1, 1), i)


def qty(items: Items, i: int, _value: str) -> None:
    """`Qty 4`, `have 3`, `lot of 2`."""
    j = items.skip(i + 1, 1)
    if items.has(j, "num") and not items.has(j + 1, "unit") and not items.has(j + 1, "after"):
        _quantity(items, j, i)


_OF_PRICES = frozenset({"buys", "shipped"})
_NO_COUNT = frozenset({"over", "about", "from", "min", "minimum", "minimum order", "orders of", "ab"})


def _quantity(items: Items, j: int, i: int) -> None:
    """A plain whole number of pieces; shop boilerplate counts in hundreds."""
    number = items.numbers[j]
    if (
        items.used[j]
        or number.value is None
        or number.value % 1
        or not 1 <= number.value < 400
        or number.signs
    ):
        return
    if items.has(j - 1, "money") or items.word(j - 1) in _NO_COUNT if j else False:
        return
    if i < j and not _OF_PRICES.isdisjoint(items.roles[j + 1]):
        return  # `only 48 cash`
    items.used[j] = True
    items.claim("quantity", int(number.value), j, i)


def rating(items: Items, i: int, _value: str) -> None:
    """`Seller rating 97.9%`, `99.2% positive`."""
    for j in (items.skip(i + 1, 1), i - 2):
        if items.has(j, "num") and items.said(j + 1, "after") == "pct":
            percent = items.numbers[j].value
            if percent is not None and 0 <= percent <= 100:
                items.used[j] = True
                items.claim("seller_rating_pct", percent, i, j + 1)
            return


def condition(items: Items, i: int, value: str) -> None:
    """Words for the condition; which of several counts is settled later."""
    before = items.word(i - 1) if i else ""
    if before in ("not", "no", "never", "isn't") and items.clause[i - 1] == items.clause[i]:
        return
    if items.word(i) in _DOES and (before in _WILL or _does_something(items, i + 1)):
        return
    if _of_terms(items, i, value):
        return
    items.claim("condition", value, i)


_DOES = frozenset({"runs", "works", "pull", "run", "fonctionne", "tested at"})
_WILL = frozenset({"it", "to", "will", "can", "you", "ex", "ex-", "-", "that", "which", "and"})
_PLACES = frozenset(
    {
        "from",
        "off",
        "straight",
        "in",
        "as",
        "through",
        "without",
        "either",
        "both",
        "a",
        "the",
        "this",
        "any",
        "at",
    }
)


def _does_something(items: Items, j: int) -> bool:
    """`runs counterclockwise`, `works from the thermostat`: how it works, not whether."""
    kinds = ("turn", "turnview", "look", "either", "num", "fact")
    if items.word(j - 1) == "pull" and items.word(j)[:4] == "from":
        return False
    return items.word(j).split(" ")[0] in _PLACES or any(items.has(j, kind) for kind in kinds)


def _of_terms(items: Items, i: int, value: str) -> bool:
    """`90 days parts only`, `returns: unopened, 30 days`: the state in which the terms hold."""
    about = {"for_parts": ("warranty",), "new": ("returns",)}.get(value, ())
    for j in range(i - 1, max(-1, i - 1 - _NEAR), -1):
        if items.segment[j] != items.segment[i]:
            break
        if any(kind in items.roles[j] for kind in about):
            return True
    return value == "for_parts" and items.word(i) == "parts only" and items.has(i + 1, "warranty")


_NOT_THE_MOTOR = frozenset(
    [
        "a",
        "my",
        "our",
        "the",
        "your",
        "with",
        "w/",
        "needs",
        "like",
        "than",
        "another",
        "some",
        "any",
        "for",
        "put",
        "as",
        "got",
        "when",
    ]
)
_GOES_ON = frozenset(
    {
        "in",
        "with",
        "never",
        "old",
        "and",
        "-",
        "/",
        "surplus",
        "unused",
        "spare",
        "from",
        "condition",
        "without",
        "w/o",
        "no",
    }
)
_SAYS_SO = frozenset({"is", "cond", "condition", "fully", "all", "both", "are", "status", "state", "used"})


def new(items: Items, i: int, _value: str) -> None:
    """`New` said of the motor: alone, before a price or a stop; not `new bearings`, `a new unit`."""
    before, after = items.word(i - 1), items.word(i + 1)
    sold = any(items.has(i + 1, kind) for kind in ("money", "price", "warranty")) or (
        items.has(i + 1, "num") and items.said(i + 2, "after") in DAYS
    )
    if before in _NOT_THE_MOTOR and not sold:
        return
    if items.has(i + 1, "bearing"):
        return
    opens = i == 0 or items.clause[i - 1] != items.clause[i] or not before[:1].isalnum()
    closed = i + 1 >= len(items) or items.clause[i + 1] != items.clause[i] or after in _GOES_ON
    raw = items.raw(i + 1)
    names_it = items.has(i + 1, "motor") or (
        raw[:1].isupper() and not items.raw(i).isupper() and not items.roles[i + 1]
    )
    if (
        sold
        or (closed and (opens or before in _SAYS_SO))
        or (opens and (names_it or items.source == "title"))
    ):
        items.claim("condition", "new", i)


def payer(items: Items, i: int, value: str) -> None:
    """`buyer pays`, `on us`: the way back, where the sentence speaks of returns."""
    for j in range(i - 1, max(-1, i - 14), -1):
        if items.segment[j] != items.segment[i]:
            break
        if "returns" in items.roles[j] or "restock" in items.roles[j]:
            items.claim("return_shipping", value, i)
            return


HANDLERS = {
    "returns": returns,
    "warranty": warranty,
    "restock": restock,
    "stock": stock,
    "qty": qty,
    "rating": rating,
    "cond": condition,
    "newword": new,
    "payer": payer,
}
