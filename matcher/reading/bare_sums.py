"""Prices without sign or code: `asking 55`, `45 obo`, `80 shipped`, `90 plus ship`, `was 120, now 95`.

A bare figure is a price only where the words right before it and behind it leave nothing else to be
meant; where they do, it stands at the opening of its clause or behind a word that asks for money.
"""

from matcher.reading.items import Items
from matcher.reading.sums import names_shipping
from matcher.reading.tiers import INCLUDES, Sum, amount, has_cents

_ONLY_BEHIND = frozenset(
    {
        "now",
        "each",
        "ea",
        "firm",
        "obo",
        "today",
        "cash",
        "apiece",
        "per piece",
        "vb",
        "vhb",
        "ono",
        "single",
        "for one",
    }
)
_TAILS = frozenset({"obo", "firm", "ono", "each", "vb", "vhb", "or best offer"})
_PLUS = frozenset({"+", "plus", "and"})
_GOES_BEFORE = frozenset(
    {"for", "at", "is", "it's", "only", "just", "and", "or", "so", "then", "now", "first"}
)
_CLOSES = frozenset({"or", "and", "plus", "+", "but", "if", "then", "today", "local", "locally", "out", "("})
_FOR_WHAT = frozenset({"it", "this", "him", "her", "mine", "one", "that", "each"})
_TO_WHERE = frozenset({"to", "anywhere", "in", "within", "or", "obo", "firm", "free", "to your door"})
_LOWERS = frozenset({"drop", "dropped", "reduced", "lowered", "cut", "marked", "was", "down"})
_CLOSING = frozenset({"price", "shipped", "freeship", "buys"})
_SELLS = frozenset({"buys", "freeship"})
_FAR = 8
_NEAR = 4
_SMALLEST_SHARE = 0.2  # of the old price
_SUPPLIES = frozenset({110.0, 115.0, 120.0, 208.0, 220.0, 230.0, 240.0, 277.0, 440.0, 460.0, 480.0})
_PARTS = frozenset({";", ",", ".", "|", "-", "\n"})
_ABOVE_AMPERES = 20.0
_LEAST = 5.0  # smaller bare figures count things


def bare_sums(items: Items) -> list[Sum]:
    """Return the first bare price with the bare shipping beside it; nothing when none is sure."""
    for i in items.numbers:
        if items.used[i] or items.muted[i]:
            continue
        found = _price_at(items, i)
        if found:
            return found
    return []


def _price_at(items: Items, i: int) -> list[Sum]:
    number = items.numbers[i]
    if not number.atoms or _is_counted(items, i) or _touched(items, i):
        return []
    if number.value is None or number.signs:
        return _of_two(items, i)
    if number.value < 1:
        return []
    said = Sum(amount(items, i), None, i, i, "price")
    named = _is_named(items, i)
    if not named and (number.value < _LEAST or not _looks_like_money(number.text)):
        return []
    # `price 36 shipped`, `80 shipped`
    if _is_sent(items, i) if named else _is_shipped(items, i):
        said.role = "shipped"
        return [said]
    if named or _is_sold_for(items, i) or _is_lower(items, i):
        return [said, *_added(items, i)]
    return _with_shipping(items, i, said)


def _is_counted(items: Items, i: int) -> bool:
    """Say whether a unit stands behind the figure; not in `price 60 flat`."""
    counts = items.has(i + 1, "unit") or items.has(i + 1, "after") or items.has(i + 1, "aspect")
    return counts and not (items.word(i + 1) == "flat" and _labelled(items, i))


def _is_named(items: Items, i: int) -> bool:
    """Say whether words right beside a figure call it a price: `asking 55`, `45 obo`, `6.95 ea`."""
    behind = items.word(i + 1)
    if _labelled(items, i) or behind in _TAILS or (behind == "," and items.word(i + 2) in _TAILS):
        return True
    if behind == "ea" and (i == 0 or items.word(i - 1) in ("\n", ".", ";")):
        return True
    each = behind in ("ea", "each") or (behind == "/" and items.word(i + 2) in ("ea", "each"))
    return has_cents(items, i) and (each or _is_first_tier(items, i) or _closes_listing(items, i))


def _closes_listing(items: Items, i: int) -> bool:
    """`on the shelf since 2016; 245.00`: with its cents, alone and last; less might be amperes."""
    alone = i > 0 and items.word(i - 1) in _PARTS
    return alone and i + 1 == len(items) and (items.numbers[i].value or 0.0) >= _ABOVE_AMPERES


def _is_sent(items: Items, i: int) -> bool:
    return "shipped" in items.roles[i + 1] and _to_somewhere(items, i + 2)


def _is_first_tier(items: Items, i: int) -> bool:
    """`Qty 1-24: 6.95`: the price of one."""
    many = items.numbers.get(i - 1 - (items.word(i - 1) == ":"))
    return many is not None and many.signs == "-" and many.atoms[0] == 1 and many.whole


def _is_shipped(items: Items, i: int) -> bool:
    """`80 shipped`, `55 incl. shipping`."""
    if items.word(i + 1) in INCLUDES and items.has(i + 2, "ship"):
        return True
    return _opens(items, i) and (
        _is_sent(items, i) or (items.word(i + 1) == "even" and _is_sent(items, i + 1))
    )


def _is_sold_for(items: Items, i: int) -> bool:
    """`I'd take 70`, `55 takes it`, `55 with free shipping`."""
    wanted = items.has(items.skip(i - 1, -1), "wants") and _closes(items, i + 1)
    if wanted or (_opens(items, i) and not _SELLS.isdisjoint(items.roles[i + 1])):
        return True
    # `60 and u come get it`
    return _opens(items, i) and items.word(i + 1) == "and" and items.has(i + 2, "local")


def _touched(items: Items, i: int) -> bool:
    """Say whether letters or signs touch a figure: it is part of a number."""
    behind = items.is_glued(i) and (items.word(i + 1)[0].isalnum() or items.word(i + 1) == "-")
    return behind or (items.is_glued(i - 1) and (items.word(i - 1)[-1].isalnum() or items.word(i - 1) == "-"))


def _looks_like_money(figures: str) -> bool:
    """Say whether a figure is written as sums are: whole, or with two digits for the cents."""
    whole, point, cents = figures.replace(",", ".").rpartition(".")
    return figures.isalpha() or (len(cents) == 2 if point and whole else len(figures) < 5)


def _labelled(items: Items, i: int) -> bool:
    """`asking 55`, `price 60`, `Net: 52.80`; not `was asking 55`."""
    before = items.skip(i - 1, -1)
    if items.has(before - 1, "was"):
        return False
    if items.word(before) == "net" and "." not in items.numbers[i].text:
        return False
    return items.has(before, "price") and items.word(before) not in _ONLY_BEHIND


def _opens(items: Items, i: int) -> bool:
    return (
        i == 0
        or items.clause[i - 1] != items.clause[i]
        or not items.word(i - 1)[:1].isalnum()
        or items.word(i - 1) in _GOES_BEFORE
        or items.has(i - 1, "price")
    )


def _closes(items: Items, k: int) -> bool:
    """Say whether nothing follows that the figure could count."""
    if k >= len(items) or items.clause[k] != items.clause[k - 1] or not items.word(k)[:1].isalnum():
        return True
    if items.word(k) == "for":
        return items.word(k + 1) in _FOR_WHAT or items.has(k + 1, "motor") or items.has(k + 2, "motor")
    known = items.roles[k]
    return items.word(k) in _CLOSES or not _CLOSING.isdisjoint(known)


def _to_somewhere(items: Items, k: int) -> bool:
    """`80 shipped`, `80 shipped to your door`; not `80 shipped last week`."""
    return (
        k >= len(items)
        or items.clause[k] != items.clause[k - 1]
        or not items.word(k)[:1].isalnum()
        or items.word(k) in _TO_WHERE
    )


def _is_lower(items: Items, i: int) -> bool:
    """`was 120, now 95`, `price drop 120 → 95`: the new price behind the old one."""
    if items.word(i - 1) != "→" and items.word(items.skip(i - 1, -1)) != "now":
        return False
    old = next((items.numbers[j].value for j in range(i - 1, i - 1 - _NEAR, -1) if j in items.numbers), None)
    new = items.numbers[i].value
    if old is None or new is None or not _SMALLEST_SHARE * old < new < old or {old, new} <= _SUPPLIES:
        return False
    return _lowers(items, i - 1) and _closes(items, i + 1)


def _lowers(items: Items, i: int) -> bool:
    """Say whether words before item `i` tell of a price that falls."""
    for j in range(i - 1, max(-1, i - 1 - _FAR), -1):
        if items.segment[j] != items.segment[i]:
            return False
        if items.word(j).split(" ")[0] in _LOWERS or items.has(j, "was") or items.has(j, "price"):
            return True
    return False


def _of_two(items: Items, i: int) -> list[Sum]:
    """Take the price out of figures laid together: `2 for 80 or 45 each`, `dropped from 120 to 95`."""
    number = items.numbers[i]
    if len(number.atoms) != 2 or not number.whole:
        return []
    one, two = number.atoms
    said = Sum(two, None, i, i, "price")
    if "|" in number.text and items.word(i + 1) in ("each", "ea") and items.word(i - 1) == "for":
        return [said]
    if number.signs == "-" and one > two >= _LEAST and items.word(i - 1)[-4:] == "from" and _lowers(items, i):
        return [said] if _closes(items, i + 1) else []
    if number.signs == "/" and one > two and _opens(items, i) and names_shipping(items, i + 1):
        said.amount = one  # `60 and 15 for shipping`
        return [said, Sum(two, None, i, i, "ship")]
    return []


def _added(items: Items, i: int) -> list[Sum]:
    """`asking 60 + 12 ship`: a bare figure behind the price is shipping when a plus or its name says so."""
    j = i + 2 + (items.word(i + 1) in _TAILS)
    plus = items.word(j - 1) in _PLUS
    if plus and j in items.numbers and not items.used[j] and not _counts(items, j) and _closes_ship(items, j):
        return [Sum(amount(items, j), None, j, j, "ship")]
    return []


def _counts(items: Items, j: int) -> bool:
    number = items.numbers[j]
    counted = items.has(j + 1, "unit") or items.has(j + 1, "after") or _touched(items, j)
    return counted or number.value is None or bool(number.signs) or not _looks_like_money(number.text)


def _closes_ship(items: Items, j: int) -> bool:
    return names_shipping(items, j + 1) or (_ends(items, j) and items.word(j - 1) != "and")


def _ends(items: Items, j: int) -> bool:
    return j + 1 >= len(items) or items.segment[j + 1] != items.segment[j]


def _with_shipping(items: Items, i: int, said: Sum) -> list[Sum]:
    """`90 plus ship`, `27 + 12`, `12.00 + 6.00`, `145 and 15 to mail it`: price and shipping."""
    if has_cents(items, i) and items.has(i + 1, "ship") and i + 2 in items.numbers:
        return [said]  # `20.00 ship 18.00`
    if items.word(i + 1) not in _PLUS:
        return []
    opens = _opens(items, i)
    if opens and items.word(i + 2).split(" ")[0] == "core" and not items.has(i + 3, "num"):
        return [said]  # `79.95 + core`
    ship = i + 2 + (items.word(i + 2) == "the")
    if opens and items.has(ship, "ship") and items.word(i + 1) != "and":
        if ship + 1 not in items.numbers:
            return [said]
        if not _counts(items, ship + 1):  # `28 plus the flat rate box 16`
            return [said, Sum(amount(items, ship + 1), None, ship + 1, ship + 1, "ship")]
    added = _added(items, i)
    if not added or added[0].amount >= said.amount:
        return []
    alone = _ends(items, i + 2) and (i == 0 or not items.word(i - 1)[0].isalnum())
    named = names_shipping(items, i + 3) and (opens or items.word(i + 1) != "and")
    return [said, *added] if alone or named or (has_cents(items, i) and has_cents(items, i + 2)) else []
