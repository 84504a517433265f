"""What figures without unit say of a shaft that the words before have named."""

from matcher.reading.items import Items
from matcher.reading.measure import Length

_POWERS = frozenset({0.25, 0.5})
USUAL_SHAFTS = frozenset({0.25, 0.3125, 0.375, 0.5, 0.625, 0.875})


def bare_of_shaft(items: Items, length: Length) -> str | None:
    """Return what a figure without unit is, whose clause doesn't name the shaft that the one before did."""
    if _closes_shaft(items, length):
        return "shaft_length_in"
    return "shaft_diameter_in" if _is_bare_diameter(items, length) else None


def _closes_shaft(items: Items, length: Length) -> bool:
    """`1/4" shaft, 1-1/2.`: a mixed number alone in the clause behind the diameter, and the last of it."""
    end = length.end + 1
    closed = end >= len(items) or items.clause[end] != items.clause[length.item]
    alone = closed and items.clause[length.item - 1] != items.clause[length.item] - 1
    mixed = "-" in items.numbers[length.item].text and "/" in items.numbers[length.item].text
    return alone and mixed and claimed_diameter(items, length) is not None


def _is_bare_diameter(items: Items, length: Length) -> bool:
    """`shaft, 5/8, keyed`: a usual diameter alone behind its subject; `keyed shaft, 1/2, 115V` is power."""
    i, j = length.item, length.end + 1
    if length.inches not in USUAL_SHAFTS or "/" not in items.numbers[i].text:
        return False
    alone = items.clause[i - 1] != items.clause[i] or not items.word(i - 1)[0].isalnum()
    if not alone or (j < len(items) and items.clause[j] == items.clause[i]):
        return False
    return length.inches not in _POWERS or any(claim.field == "power_hp" for claim in items.claims)


def claimed_diameter(items: Items, length: Length) -> float | None:
    """Return the shaft's diameter that the same sentence has just given."""
    last = items.claims[-1] if items.claims else None
    if last and last.field == "shaft_diameter_in" and last.clause >= items.clause[length.item] - 2:
        return float(str(last.value))
    return None
