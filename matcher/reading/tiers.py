"""Sums that are no one price: ranges, tiers by quantity, old prices struck out for a new one."""

from dataclasses import dataclass
from itertools import pairwise

from matcher.reading.items import Items

_OR_MORE = frozenset({"+", "or more", "up", "and up", "pcs", "pieces", "units"})


@dataclass(slots=True)
class Sum:
    """A sum: its amount, its currency if any, the first and last item of it, what it pays for."""

    amount: float
    currency: str | None
    first: int
    last: int
    role: str | None = None


def is_superseded(items: Items, said: Sum) -> bool:
    """`$105 → $89`: the first is the old price."""
    return items.word(said.last + 1) == "→" and items.has(said.last + 2, "money")


def is_for_many(items: Items, said: Sum) -> bool:
    """`4-11 pcs $93`, `$52.60 (2-9)`: the price of each of several."""
    before = items.numbers.get(said.first - 2)
    many = items.word(said.first - 1) in ("pcs", "pieces", "@", "units", "pc", "+", "or more")
    if before and many and before.atoms[0] > 1 and not items.has(said.first - 3, "money"):
        return True
    k = said.last + 1
    while items.word(k) in ("ea", "each", "apiece"):
        k += 1
    if items.word(k)[:4] == "for " and items.word(k + 1) in _OR_MORE:
        return True
    if items.word(k) in ("for", "at", "@", "x") and items.has(k + 1, "num") and items.word(k + 2) in _OR_MORE:
        return True
    behind = items.numbers.get(said.last + 2)
    return (
        behind is not None
        and items.word(said.last + 1) == "("
        and behind.signs == "-"
        and behind.atoms[0] > 1
    )


def rule_out_ranges(items: Items, sums: list[Sum]) -> None:
    """`from $72 to $119`, `$72 - $119`, `between $40 and $60`: no one price."""
    for one, two in pairwise(sums):
        if two.first - one.last != 2 or two.amount <= one.amount or "ship" in (one.role, two.role):
            continue
        joint = items.word(one.last + 1)
        if joint in ("-", "to", "thru") or (joint == "and" and items.word(one.first - 1) == "between"):
            one.role = two.role = "not"


def by_zones(items: Items, sums: list[Sum]) -> bool:
    """`shipping $0 west, $6 midlands, $11 east`: no one sum to ship."""
    first = next((said for said in sums if said.role == "ship"), None)
    if first is None:
        return False
    segment = items.segment[first.first]
    more = {said.amount for said in sums if said.first > first.last and items.segment[said.first] == segment}
    return len(more - {first.amount}) > 1
