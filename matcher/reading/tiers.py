"""Sums that are no one price: ranges, tiers by quantity, old prices struck out for a new one."""

from dataclasses import dataclass
from itertools import pairwise

from matcher.reading.items import Items

_TAKES = frozenset({"take", "takes", "buy", "buys", "all", "both", "if you take", "if u take", "take all"})
_OR_MORE = frozenset({"+", "or more", "up", "and up", "pcs", "pieces", "units"})
INCLUDES = frozenset({"incl", "including", "includes", "inc", "inkl", "incluye", "inklusive"})
"""Words behind a price that shipping is a part of it."""
_PACKS = frozenset({"carton", "case", "box", "pack", "bag", "pallet", "lot", "bundle", "dozen", "qty"})
PIECES = frozenset(
    {"pc", "pcs", "piece", "pieces", "units", "stk", "stück", "pièces", "piezas", "pezzi", "ea"}
)
_MOST_OF_ONE = 24
"""How many pieces `3/$160` tells at most."""
_LIMITS = frozenset({"max", "maximum", "at most", "under", "not over", "up to", "max of", "no more"})
_OURS = ("our", "sale", "your", "you pay", "special", "clearance", "web")
_SAVED = frozenset({"save", "saved", "saving", "savings", "off", "discount"})
_SAVED_WITHIN = 5  # items
_CENT = 0.005
_ZONES = frozenset(
    {"east", "west", "north", "south", "zone", "zones", "region", "regions", "coast", "central"}
)


@dataclass(slots=True)
class Sum:
    """A sum: its amount, its currency if any, the first and last item of it, what it pays for."""

    amount: float
    currency: str | None
    first: int
    last: int
    role: str | None = None


def amount(items: Items, i: int) -> float:
    """Read the amount at number `i`; `1.200` and `1,200` are thousands, `12,50` is decimal."""
    number = items.numbers[i]
    value = number.value or 0.0
    figures = number.text
    if "." in figures and "," not in figures and len(figures.rsplit(".", 1)[1]) == 3:
        return value * 1000
    return value


def has_cents(items: Items, i: int) -> bool:
    """Say whether number `i` is written with two figures behind a point, as sums are."""
    return items.numbers[i].text[-3:-2] == "."


def is_superseded(items: Items, said: Sum) -> bool:
    """`$105 → $89`: the first is the old price."""
    if items.word(said.last + 1) == "~" == items.word(said.last + 2):
        return True  # `~~$105~~ $89`
    return items.word(said.last + 1) == "→" and items.has(said.last + 2, "money")


def is_for_many(items: Items, said: Sum) -> bool:
    """`4-11 pcs $93`, `$52.60 (2-9)`: the price of each of several."""
    before = items.numbers.get(said.first - 2)
    many = items.word(said.first - 1) in ("pcs", "pieces", "@", "units", "pc", "+", "or more")
    if before and many and before.atoms[0] > 1 and not items.has(said.first - 3, "money"):
        return True
    if _counted_before(items, said.first):
        return True
    k = said.last + 1
    while items.word(k) in ("ea", "each", "apiece"):
        k += 1
    if k > said.last + 1 and items.word(k)[:2] == "if" and not _TAKES.isdisjoint(items.words[k : k + 4]):
        return True  # `$15 ea if you take all`
    if items.word(k)[:4] == "for " and items.word(k + 1) in _OR_MORE:
        return True
    least = items.numbers.get(k + 1) if items.word(k) in ("from", "ab") else None
    if least and least.whole and least.value and least.value > 1 and not items.has(k + 2, "unit"):
        return True  # `21.90 from 10`
    if items.word(k) in ("for", "at", "@", "x") and items.has(k + 1, "num") and items.word(k + 2) in _OR_MORE:
        return True
    behind = items.numbers.get(said.last + 2)
    return (
        behind is not None
        and items.word(said.last + 1) == "("
        and behind.signs == "-"
        and behind.atoms[0] > 1
    )


def _counted_before(items: Items, first: int) -> bool:
    """`6 for $140`, `carton (24) $15.10`, `qty 2-5 $157.90`: several pieces at this price."""
    joint = items.word(first - 1)
    i = first - 2 if joint in ("for", ")", ":", "at", "@", "/") else first - 1
    if joint == ":" and items.word(i) in PIECES:
        number = items.numbers.get(i - 1)  # `10 pcs: $31.10`
        return number is not None and number.value is not None and number.value > 1
    number = items.numbers.get(i)
    if number is None or not number.atoms or number.atoms[0] <= 1 or number.atoms[0] % 1:
        return False
    if items.is_glued(i - 1):
        return False  # `KF-16-825: $52.00`
    if joint == "for":
        return not items.has(first - 3, "money") and not items.used[i]
    if joint in ("at", "@"):
        return items.word(i - 1) in ("buy", "take", "order", "get")
    if joint == "/":
        few = number.whole and number.atoms[0] <= _MOST_OF_ONE and not number.signs
        return few and not items.has(i - 1, "money")  # `$57 or 3/$160`
    if joint == ")":
        return items.word(first - 3) == "(" and items.word(first - 4) in _PACKS
    further = number.signs == "-" or any(items.has(j, "money") for j in range(max(0, i - 5), i))
    return further and (joint == ":" or items.has(i - 1, "qty"))


def rule_out_ranges(items: Items, sums: list[Sum]) -> None:
    """`from $72 to $119`, `$72 - $119`, `between $40 and $60`, `ships for $12 to $20`: no one sum."""
    for one, two in pairwise(sums):
        ends_as_shipping = two.role == "ship" and one.role != "ship"  # `$30 - $37 s/h`
        if two.first - one.last != 2 or two.amount <= one.amount or ends_as_shipping:
            continue
        joint = items.word(one.last + 1)
        if joint in ("-", "to", "thru") or (joint == "and" and items.word(one.first - 1) == "between"):
            one.role = two.role = "not"
    for said in sums:
        if said.role == "ship" and _is_limit(items, said):
            said.role = "not"


def _is_limit(items: Items, said: Sum) -> bool:
    """`shipping max $18`, `no more than $20 to ship`: a sum that it may stay under."""
    before = {items.word(said.first - 1), items.word(said.first - 2)}
    return not _LIMITS.isdisjoint(before) or items.word(said.last + 1) in (
        "max",
        "maximum",
        "or less",
        "tops",
    )


def by_zones(items: Items, sums: list[Sum]) -> bool:
    """`shipping $0 west, $6 midlands, $11 east`: no one sum to ship."""
    first = next((said for said in sums if said.role == "ship"), None)
    if first is None:
        return False
    segment = items.segment[first.first]
    behind = [said for said in sums if said.first > first.last and items.segment[said.first] == segment]
    more = [said for said in behind if said.role in (None, "ship")]
    others = {said.amount for said in more} - {first.amount}
    zoned = [said for said in (first, *more) if _names_zone(items, said)]
    if not others or (len(others) < 2 and len(zoned) < 2):
        return False
    for said in more:
        said.role = "not"
    return True


def _names_zone(items: Items, said: Sum) -> bool:
    near = range(max(0, said.first - 4), min(len(items), said.last + 4))
    return any(items.word(j) in _ZONES and items.clause[j] == items.clause[said.first] for j in near)


def rule_out_struck(items: Items, sums: list[Sum]) -> None:
    """`Price: $189.00 $64.50 you save $124.50`: of two sums side by side the dearer one was struck out.

    Where nothing says that something is saved, neither is sure.
    """
    for one, two in pairwise(sums):
        struck = two.amount < one.amount and {one.role, two.role} <= {"price", "not", None}
        if not struck or one.role == "not" or not _side_by_side(items, one, two):
            continue
        one.role = "not"
        two.role = "price" if _saves(items, one.amount - two.amount, two.last + 1, sums) else "not"


def _side_by_side(items: Items, one: Sum, two: Sum) -> bool:
    return all(items.word(j) == "\n" for j in range(one.last + 1, two.first))


def _saves(items: Items, saved: float, k: int, sums: list[Sum]) -> bool:
    """Say whether words behind tell of a saving, or a sum is just as much: `save 66%`, `($124.50 off)`."""
    words = {word for j in range(k, k + _SAVED_WITHIN) for word in items.word(j).split(" ")}
    return not _SAVED.isdisjoint(words) or any(abs(said.amount - saved) < _CENT for said in sums)


def rule_out_dearer(items: Items, sums: list[Sum]) -> None:
    """`Price $91.00, our price $66.25`: what is asked now, where a dearer price stands beside it."""
    prices = [said for said in sums if said.role == "price"]
    ours = [said for said in prices if _is_ours(items, said)] if len(prices) > 1 else []
    for said in prices if len(ours) == 1 else []:
        if said is not ours[0] and said.amount > ours[0].amount:
            said.role = "not"


def _is_ours(items: Items, said: Sum) -> bool:
    near = range(max(0, said.first - 3), said.first)
    return any(items.has(j, "price") and items.word(j).startswith(_OURS) for j in near)


def plus_between(items: Items, one: Sum, two: Sum) -> bool:
    """Say whether a plus or a stroke stands between two sums."""
    if items.word(two.first - 1) == "/":
        return not _for_several(items, two)
    return any(items.word(j) in ("+", "plus") for j in range(one.last + 1, two.first))


def _for_several(items: Items, said: Sum) -> bool:
    """`EUR 24 from 1 / EUR 21 from 10`: the price of each of several."""
    return items.word(said.last + 1) in ("from", "ab", "for", "@", "x") and items.has(said.last + 2, "num")


def is_new_price(items: Items, one: Sum, two: Sum) -> bool:
    """`$300 new, $145 from me`: the first one is what a new one costs."""
    k = one.last + 1
    if items.word(k) != "new" or two.amount >= one.amount:
        return False
    return k + 1 < len(items) and items.clause[k + 1] != items.clause[one.last]
