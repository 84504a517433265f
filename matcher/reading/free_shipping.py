"""Shipping that costs nothing, and where that hangs on something."""

from matcher.reading.days import DAYS
from matcher.reading.items import Items

_NEARBY = frozenset({"local", "locally", "in town", "nearby", "around", "within"})
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
_OF_TIME = frozenset(
    {"to", "-", "business", "working", "or", "standard", "fast", "ground", "economy", "express"}
)


def free_shipping(items: Items, i: int, _value: str) -> None:
    """Free shipping, unless it hangs on a condition (`over $250`)."""
    for j in range(i + 1, min(len(items), i + 4)):
        if items.segment[j] != items.segment[i] or items.clause[j] != items.clause[i]:
            break
        if items.word(j).startswith("with") and items.word(j + 1).split(" ")[0] in (
            "any",
            "another",
            "purchase",
            "your",
        ):
            return
        if items.word(j) in _NEARBY and not (items.word(j) == "within" and not items.has(j + 1, "num")):
            return
        if items.word(j).split(" ")[0] in ("if", "when", "once"):
            return
        if items.word(j) in _CONDITIONS and any(
            items.has(k, "money") or items.has(k, "num") or items.word(k).startswith("order")
            for k in range(j, min(len(items), j + 4))
        ):
            return
    if items.word(i - 1) in ("no", "not") or _counts(items, i + 1) or _from_a_sum_on(items, i):
        return
    if items.word(i) in ("ship free", "ships free") and items.word(i - 1) in ("returns", "return"):
        items.claim("return_shipping", "seller", i - 1, i)
        return
    items.claim("shipping", 0.0, i)


def free_in_days(items: Items, i: int, _value: str) -> None:
    """`free 2-3 day delivery`, `free 5 to 7 business day shipping`: how long it takes stands between."""
    if is_free_in_days(items, i):
        free_shipping(items, i, "")


def is_free_in_days(items: Items, i: int) -> bool:
    """Say whether `free` and a number of days stand before a word for shipping."""
    k = i - 1
    if items.said(k, "after") != "day":
        return False
    while k >= 0 and (items.said(k, "after") == "day" or items.has(k, "num") or items.word(k) in _OF_TIME):
        k -= 1
    return items.word(k).split(" ")[-1] == "free" and items.clause[k] == items.clause[i]


def _counts(items: Items, j: int) -> bool:
    """Say whether a figure goes on with the words: `free shipping 3 or more`, not `free shipping 1 year`."""
    return items.has(j, "num") and items.said(j + 1, "after") not in DAYS


def _from_a_sum_on(items: Items, i: int) -> bool:
    """`Orders over $199 ship free`: the condition stands before."""
    before = range(i - 1, max(-1, i - 6), -1)
    return any(
        items.has(j, "money") and items.word(j - 1) in _CONDITIONS and items.clause[j] == items.clause[i]
        for j in before
    )


HANDLERS = {"freeship": free_shipping, "ship": free_in_days}
