"""Sums that pay for something else: another motor, a part, what some orders have added."""

from matcher.reading.items import Items
from matcher.reading.things import things
from matcher.reading.tiers import Sum

_BACK = 7  # items
_WITHIN = 12


def rule_out_others(items: Items, sums: list[Sum]) -> None:
    """`a new $30 capacitor`, `$45 for the 1/2 HP, $60 for the 3/4`: prices of other things, or of several."""
    several = [said for said in sums if items.has(_behind_the(items, said.last + 1), "num")]
    unnamed = [said for said in sums if said.role in (None, "price")]
    for said in sums:
        part = items.word(said.last + 1).split(" ")[-1] in things("part")
        aside = len(unnamed) > 1 and _is_aside(items, said)
        if said.role is None and (part or aside or (len(several) > 1 and said in several)):
            said.role = "not"


def _is_aside(items: Items, said: Sum) -> bool:
    """`with an adapter ($7.10, sold separately)`, `module from $140`: what another thing costs."""
    if items.word(said.first - 1) == "from":
        return True
    for j in range(said.first, max(-1, said.first - _WITHIN), -1):
        if items.segment[j] != items.segment[said.first] or items.word(j) == ")":
            return False
        if items.word(j) == "(" or items.word(j).split(" ")[0] in ("receipt", "invoice"):
            return True
    return False


def _behind_the(items: Items, k: int) -> int:
    """Return the item behind `for the`, else one that is none."""
    if items.word(k) == "for the":
        return k + 1
    return k + 2 if items.word(k) == "for" and items.word(k + 1) == "the" else len(items)


def is_on_top(items: Items, said: Sum, label: int) -> bool:
    """`orders under $25 add $5 handling`, `without core add $35`: asked of some, on a condition."""
    if items.word(label) != "add":
        return False
    for j in range(said.last + 1, said.last + 1 + _BACK):
        if items.has(j, "ship") and items.clause[j] == items.clause[said.first]:
            return _under_condition(items, label)  # `add $17.50 if I have to mail it`
    return True


def _under_condition(items: Items, i: int) -> bool:
    """Say whether the words before speak of some orders alone."""
    return any(
        items.word(j).split(" ")[0] in ("orders", "order", "minimum", "if", "outside")
        for j in range(max(0, i - _WITHIN), i)
        if items.segment[j] == items.segment[i]
    )
