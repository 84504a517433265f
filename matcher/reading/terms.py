"""The terms of a sale: returns, restocking, warranty, how many, the seller's rating."""

from matcher.reading.days import period
from matcher.reading.items import Items
from matcher.reading.others import are_others
from matcher.reading.phrases import alone
from matcher.reading.things import things

_NEAR = 7
_SENTENCE = 14  # items
_FEW = 4
_EXCEPTIONS = frozenset({"unless", "except", "except if", "only if", "apart from", "once", "after"})
_CONDITIONS = frozenset({"once", "if", "when", "after"})


def returns(items: Items, i: int, value: str) -> None:
    """`no returns` -> 0 days; `no returns unless it is dead` is left out."""
    if value == "-":
        _deducted(items, i)
    elif value == "0" and not _has_exception(items, i):
        items.claim("return_days", 0, i, though_muted=True)  # `I'm not a store, so no returns`


def _deducted(items: Items, i: int) -> None:
    """`returns 14 days less 10%`: what is kept back of the price."""
    for k in range(i + 1, min(len(items), i + 1 + _SENTENCE)):
        if items.segment[k] != items.segment[i]:
            return
        if items.word(k) in ("less", "minus") and items.has(k + 1, "num"):
            percent = items.numbers[k + 1].value
            if items.said(k + 2, "after") == "pct" and percent is not None and percent <= 50:
                items.claim("restocking_pct", percent, k, k + 2)
            return


def _has_exception(items: Items, i: int) -> bool:
    """`no returns unless dead`, `works or no refund`."""
    if items.word(i - 1) == "or" or items.word(i + 1) in _CONDITIONS:
        return True
    following = range(i + 1, min(len(items), i + 1 + _NEAR))
    return any(
        items.word(k) in _EXCEPTIONS
        and items.segment[k] == items.segment[i]
        and (
            items.word(k) != "after" or items.clause[k] == items.clause[i]
        )  # `no returns / no texts after 10`
        for k in following
    )


def warranty(items: Items, i: int, value: str) -> None:
    """`no warranty` -> 0 days; `no guarantee that it runs` is a doubt, alone it is a term."""
    if value == "0":
        if items.doubted and alone(items, i):
            items.doubted.discard(items.clause[i])
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
            if items.word(j - 1) in ("up to", "-"):
                return
            if percent is not None and percent <= 100 and not _hangs(items, max(i, j + 1)):
                items.used[j] = True
                items.claim("restocking_pct", percent, i, j + 1)
            return


_HANGS = frozenset(
    {"after", "over", "beyond", "past", "if", "unless", "may", "might", "on items", "on opened"}
)


def _hangs(items: Items, i: int) -> bool:
    return any(
        items.word(j) in _HANGS
        or (items.word(j) == "on" and items.word(j + 1) not in ("all", "every", "any", "returns"))
        for j in range(i + 1, min(len(items), i + 5))
        if items.segment[j] == items.segment[i]
    )


_STOCK_LABELS = frozenset({"available", "stock", "in stock", "on hand"})


def stock(items: Items, i: int, value: str) -> None:
    """`6 in stock`, `(3) available`, `11 ea. on hand`; `1`: a count alone in its clause, `2!`: a sure one."""
    if value != "-":
        if value[-1] == "!" or (alone(items, i) and items.word(i - 1) != ":"):
            items.claim("quantity", int(value.rstrip("!")), i)
        return
    j = items.skip(i + 1, 1)
    counted = _count_before(items, i)
    if counted < i - 1:
        _quantity(items, counted, i)
    elif items.has(i - 1, "num"):
        priced = items.word(i + 1) == ":" and (items.has(i + 2, "money") or items.has(i + 3, "money"))
        if not priced and not ("of " in items.word(i) and are_others(items, i)):
            _quantity(items, i - 1, i)  # `10 pcs: $31.10` tells a price
    elif items.has(j, "num") and items.word(i) in _STOCK_LABELS and not items.has(j + 1, "after"):
        _quantity(items, j, i)


_COUNTERS = frozenset({")", "x", "ea", "pcs", "pc", "units"})


def _count_before(items: Items, i: int) -> int:
    """Return the item that counts what stands at `i`, over `)`, `x`, `ea.`; `i - 1` where there is none."""
    j = i - 1 - (items.word(i - 1) == "." and items.word(i - 2) in _COUNTERS)
    while i - j < _FEW and items.word(j) in _COUNTERS and items.segment[j] == items.segment[i]:
        j -= 1
    bracket = items.word(j + 1) == ")"
    return j if j in items.numbers and (not bracket or items.word(j - 1) == "(") else i - 1


def qty(items: Items, i: int, _value: str) -> None:
    """`Qty 4`, `have 3`, `lot of 2`."""
    j = items.skip(i + 1, 1)
    if items.word(j) == "(" and items.word(j + 2) == ")":
        j += 1  # `lot of (6)`, `we have (2)`
    if items.has(j, "num") and not items.has(j + 1, "unit") and not items.has(j + 1, "after"):
        if items.word(i) == "only" and items.word(j - 1) == "the":
            return  # `only the 5 is for the fan`
        if "kept" in items.word(i) and items.clause[j + 1 : j + 2] == [items.clause[j]]:
            return  # `I kept 2 for myself`
        if not _counts_another(items, j, i):
            _quantity(items, j, i)


_OWNS = frozenset({"have", "got", "i have", "we have", "i've got", "set of", "lot of"})
_GOES_ON = frozenset(
    {"more", "here", "total", "spare", "spares", "extra", "like", "at", "in", "on", "and", "that"}
    | {"if", "to", "altogether", "now", "still", "which", "so", "but", "both", "all", "same", "currently"}
    | {"with", "from", "as", "or", "the", "exactly", "just", "is", "are", "will", "can", "i", "we"}
    | {"because", "going", "each"}
)


def _counts_another(items: Items, j: int, i: int) -> bool:
    """`have 2 kids`, `set of two brackets`: the figure counts what stands behind it, and that is no motor."""
    following = items.word(j + 1)
    if items.word(i) not in _OWNS or j + 1 >= len(items) or items.clause[j + 1] != items.clause[j]:
        return False
    if following.split(" ")[-1] in things("part") and not items.has(j + 2, "motor"):
        return True
    if items.word(i) in ("set of", "lot of"):
        return False
    plain = following.isalpha() and items.raw(j + 1).islower() and not items.roles[j + 1]
    return plain and following not in _GOES_ON and following not in _DESCRIBES


_OF_PRICES = frozenset({"buys", "shipped"})
_DESCRIBES = frozenset(
    {")", "x", "ea", "identical", "matching", "of", "the", "same", "new", "used", "fan", "blower"}
)
_OF_MOTORS = frozenset({"subject", "fact", "cond", "newword"})
_NO_COUNT = frozenset(
    {
        "over",
        "about",
        "from",
        "min",
        "minimum",
        "minimum order",
        "orders of",
        "ab",
        "more than",
        "sold",
        "have sold",
        "limit",
        "at least",
        "up to",
    }
)


def _quantity(items: Items, j: int, i: int, strength: int = 1) -> None:
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
    if items.word(j + 1) in ("up", "and up", "or more"):
        return  # `qty 6 up`
    if items.word(j + 1) == "+" and not items.has(j + 2, "num"):
        return  # `60+ in stock`, `qty 6+ call`
    if i < j and items.word(j + 1) in ("different", "other", "others"):
        return  # `I have two different ones`
    if i < j and (not _OF_PRICES.isdisjoint(items.roles[j + 1]) or _is_tier(items, j)):
        return  # `only 48 cash`, `qty 1 $164, qty 2-5 $157`
    items.used[j] = True
    items.claim("quantity", int(number.value), j, i, strength)


def _is_tier(items: Items, j: int) -> bool:
    """Say whether a price stands right behind the count of one piece."""
    one = items.numbers[j].value == 1
    return one and items.word(j + 1) in ("$", "€", "£") and items.has(j + 2, "num")


def rating(items: Items, i: int, _value: str) -> None:
    """`Seller rating 97.9%`, `99.2% positive`."""
    for j in (items.skip(i + 1, 1), i - 2):
        if items.has(j, "num") and items.said(j + 1, "after") == "pct":
            percent = items.numbers[j].value
            if percent is not None and 0 <= percent <= 100:
                items.used[j] = True
                items.claim("seller_rating_pct", percent, i, j + 1)
            return


def payer(items: Items, i: int, value: str) -> None:
    """`buyer pays`, `on us`: the way back, where the sentence speaks of returns."""
    for j in range(i - 1, max(-1, i - 14), -1):
        if items.segment[j] != items.segment[i]:
            break
        if "returns" in items.roles[j] or "restock" in items.roles[j]:
            items.claim("return_shipping", value, i)
            return


def pieces(items: Items, i: int, _value: str) -> None:
    """`(6) Kestrivane fan motors`, `4 x Crowspire 1/4 HP motors`, `three identical motors`."""
    for j in range(i - 1, max(-1, i - 9), -1):
        if items.segment[j] != items.segment[i]:
            return
        if j in items.numbers:
            if not (items.has(j + 1, "unit") or items.has(j + 1, "after")):
                if _opens_count(items, j) and items.word(i + 1) != "sold" and not _differ(items, i):
                    _quantity(items, j, i, strength=0)
                return
        elif not _describes(items, j):
            return


def _differ(items: Items, i: int) -> bool:
    """`2x fan motors, different!!`: which of them the rest speaks of, nothing says."""
    return any(items.word(j) in ("different", "differ") for j in range(i + 1, i + 4))


def _describes(items: Items, j: int) -> bool:
    """Say whether an item may stand between a count and `motors`."""
    known = items.roles[j]
    rating = ("unit" in known or "after" in known) and j - 1 in items.numbers
    word = items.word(j)
    return (
        rating or word in _DESCRIBES or items.raw(j)[:1].isupper() or not known.keys().isdisjoint(_OF_MOTORS)
    )


def _opens_count(items: Items, j: int) -> bool:
    """Say whether a figure is the first thing said, or stands behind a word that counts."""
    before = items.word(j - 1)
    if items.numbers[j].value == 2 and items.word(j + 1) not in (")", "x", "identical", "matching"):
        return False  # `two motors`: often two that differ
    opens = j == 0 or items.segment[j - 1] != items.segment[j] or not before[:1].isalnum()
    return opens or before in ("get", "lot", "selling", "sale", "for sale", "have", "got")


HANDLERS = {
    "pieces": pieces,
    "returns": returns,
    "period": period,
    "warranty": warranty,
    "restock": restock,
    "stock": stock,
    "qty": qty,
    "rating": rating,
    "payer": payer,
}
