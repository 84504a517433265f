"""Prices beside one that a seller calls his own."""

from matcher.reading.items import Items
from matcher.reading.tiers import Sum

_OURS = ("our", "sale", "your", "special", "clearance", "web")


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
