"""Spans of time in the terms of a sale: to send it back, under warranty, or what something else took."""

from matcher.reading.items import Items

DAYS = {"day": 1, "week": 7, "month": 30, "year": 365}
_NEAR = 7
_ANOTHER_CLAUSE = 4
_TERMS = {"returns": "return_days", "warranty": "warranty_days"}
_AND = frozenset({"and", "plus", "+", "then", "&", "with", "/"})
_UNDER_CONDITION = frozenset({"after", "over", "optional", "extended", "up to", "for orders"})
_PART_OF_IT = frozenset(
    {"balance", "remainder", "rest", "remaining", "optional", "extended", "left", "until"}
)
_KEPT = ("not transferable", "non transferable", "nontransferable", "doesn't transfer", "does not transfer")
_AGO = frozenset(
    {
        "ago",
        "old",
        "after",
        "later",
        "shipping",
        "delivery",
        "handling",
        "lead",
        "in business",
        "once",
        "left",
        "left on",
        "a week",
    }
)
_ON = frozenset({"on", "for"})


def span_of_days(items: Items, i: int) -> int | None:
    """Return `90 days` at number `i` as days; a year is 365, a month 30."""
    unit = items.said(i + 1, "after")
    value = items.numbers[i].value
    if unit not in DAYS or value is None or (unit == "day" and value % 1):
        return None  # `1/2 D` is a diameter
    if unit == "month":
        years, months = divmod(value, 12)
        return round(years * 365 + months * 30)
    return round(value * DAYS[unit])


def days(items: Items, i: int) -> None:
    """Give a number of days to the returns or the warranty that it belongs to."""
    count = span_of_days(items, i)
    if count is not None:
        items.used[i] = True
        _claim(items, i, i + 1, count)


def period(items: Items, i: int, value: str) -> None:
    """`a week to return it`: a span without a figure; not `7 days a week`."""
    if not items.has(i - 1, "after") and not items.has(i - 1, "num"):
        _claim(items, i, i, int(value))


def _claim(items: Items, first: int, last: int, count: int) -> None:
    """Claim `count` days said by the items `first` to `last`."""
    found = _label(items, first, last) or _otherwise(items, first) or _limited(items, last)
    if found is None or _is_of_something_else(items, first, last):
        return
    kind, j = found
    if kind == "warranty" and (
        _is_kept(items, j) or _is_partial(items, min(first, j), max(last, j)) or _of_others(items, j)
    ):
        return
    items.claim(_TERMS[kind], count, first, j)
    if kind == "returns" and items.word(first - 1) == "free":
        items.claim("return_shipping", "seller", first - 1, j)


def _label(items: Items, first: int, last: int) -> tuple[str, int] | None:
    """Return the kind of the nearest label in the segment and where it stands; nothing when none is near."""
    best: tuple[float, str, int] | None = None
    for j in (*range(max(0, first - _NEAR), first), *range(last + 1, min(len(items), last + 1 + _NEAR))):
        kind = next((kind for kind in _TERMS if items.roles[j].get(kind) == "-"), None)
        if kind is None or items.segment[j] != items.segment[first]:
            continue
        elsewhere = items.clause[j] != items.clause[first]
        if kind == "returns" and elsewhere and items.said(last, "after") == "year":
            continue
        distance = _distance(items, first, last, j) + _ANOTHER_CLAUSE * elsewhere
        if best is None or distance < best[0]:
            best = (distance, kind, j)
    return best and best[1:]


def _otherwise(items: Items, first: int) -> tuple[str, int] | None:
    """`No returns once wired; otherwise 30 days`: the sentence before names what they are for."""
    if items.word(first - 1) not in ("otherwise", "else", "if not"):
        return _asked(items, first)
    before = range(first - 2, max(-1, first - 2 - 2 * _NEAR), -1)
    j = next((j for j in before if "returns" in items.roles[j]), None)
    return None if j is None or items.segment[first] - items.segment[j] > 1 else ("returns", j)


def _asked(items: Items, first: int) -> tuple[str, int] | None:
    """`Returns? sure, two weeks`: the question right before names what they are for."""
    for j in range(first - 1, max(0, first - 1 - _ANOTHER_CLAUSE), -1):
        if items.word(j) == "?":
            kind = next((kind for kind in _TERMS if items.roles[j - 1].get(kind) == "-"), None)
            return None if kind is None else (kind, j - 1)
    return None


def _limited(items: Items, last: int) -> tuple[str, int] | None:
    """`2-year limited`, `1 yr parts only`: only a warranty is either."""
    behind = items.word(last + 1).split(" ")[0]
    parts = behind in ("part", "parts") and not items.has(last + 2, "num")
    return ("warranty", last + 1) if behind == "limited" or parts else None


def _distance(items: Items, first: int, last: int, j: int) -> float:
    """Count the items between a span and its label; another span between them owns the label first."""
    between = range(last + 1, j) if j > last else range(j + 1, first)
    steps = float(len(between))
    steps += 2 * any(items.word(k) in _AND for k in between)
    steps += 3 * any(items.said(k, "after") in DAYS for k in between)
    if j < first and items.said(j - 1, "after") in DAYS:
        steps += 0.5  # `1Y WARR 30D RTN`: the label has its span already
    return steps


def _is_of_something_else(items: Items, first: int, last: int) -> bool:
    """`3 years ago`, `ships in 2 days`, `refund within 3 days after we get it`, `report within 48 hours`."""
    before = items.word(first - 1)
    if before in _UNDER_CONDITION or items.word(last + 1) in _AGO:
        return True
    k = first - 1 - (before in ("within", "in", "for", "takes", "inside of", "about"))
    if "spends" in items.roles[k] and items.segment[k] == items.segment[first]:
        return True
    for_what = items.word(last + 1), items.word(last + 2)
    return for_what in (("for", "delivery"), ("for", "shipping"), ("of", "getting"))


def _is_partial(items: Items, first: int, last: int) -> bool:
    """`balance of a 5 year warranty`, `optional 2 year warranty`, `3 year warranty for $20 more`."""
    around = (*range(max(0, first - 3), first), *range(last + 1, min(len(items), last + 3)))
    if any(items.word(k) in _PART_OF_IT and items.segment[k] == items.segment[first] for k in around):
        return True
    return items.word(last + 1) == "for" and items.has(last + 2, "money")


def _is_kept(items: Items, j: int) -> bool:
    """`6 mo. guarantee from them, not transferable`: the next owner has none of it."""
    return any(
        items.word(k).startswith(_KEPT) and items.segment[k] == items.segment[j]
        for k in range(j + 1, min(len(items), j + 1 + 2 * _NEAR))
    )


def _of_others(items: Items, j: int) -> bool:
    """`our compressors have a 5 year warranty`, `5 year warranty on compressors`."""
    behind = range(j + 2, j + 5) if items.word(j + 1) in _ON else range(0)
    before = range(j - 1, max(-1, j - 1 - _NEAR), -1)
    for k in behind:
        if "motor" in items.roles[k]:
            return False
        if "goods" in items.roles[k]:
            return True
    for k in before:
        if items.segment[k] != items.segment[j] or "motor" in items.roles[k]:
            return False
        if "goods" in items.roles[k]:
            return True
    return False
