"""Lengths: whose they are (shaft, body, leads, bolt circle, or something else's) and which extent.

In a clause a length belongs to the subject before it, or behind it when the clause starts with the
figure (`1/2 in. keyed shaft`); a clause without a subject goes on with the one before it, in the same
segment (`shaft 5/8 keyed, 1-7/8 long`).
"""

from dataclasses import dataclass
from functools import cache

from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS
from matcher.units import factor

_PLAUSIBLE = {
    "shaft_diameter_in": (0.12, 1.6),
    "shaft_length_in": (0.3, 16.0),
    "body_diameter_in": (1.5, 13.0),
    "body_length_in": (1.0, 24.0),
    "bolt_circle_in": (0.8, 12.0),
    "lead_length_in": (2.0, 240.0),
}


@dataclass(slots=True)
class Length:
    """A figure that may be a length: its item, value in inches, whether a unit was said, last item of it."""

    item: int
    inches: float
    has_unit: bool
    end: int


@cache
def inch(unit: str) -> float:
    """Return what one of a unit is in inches."""
    return 1.0 if unit == "in" else factor({"ft": "foot"}.get(unit, unit), "inch")


def lengths(items: Items) -> None:
    """Claim all lengths of a text, segment by segment."""
    found = [length for i in items.numbers if (length := _length(items, i))]
    k = 0
    while k < len(found):
        group = [found[k]]
        while k + 1 < len(found) and _by(items, found[k], found[k + 1]):
            k += 1
            group.append(found[k])
        k += 1
        _share_unit(items, group)
        _claim(items, group)


def _length(items: Items, i: int) -> Length | None:
    if items.used[i] or items.muted[i]:
        return None
    number = items.numbers[i]
    if number.value is None:
        return None
    unit = items.said(i + 1, "after")
    if unit in LENGTHS and not _is_preposition(items, i + 1):
        return Length(i, number.value * inch(unit), True, i + 1)
    if items.has(i + 1, "after") and unit not in ("in", None) and unit not in ("flat", "swallow"):
        return None
    if items.has(i - 1, "money") or items.has(i + 1, "money"):
        return None
    if items.roles[i].get("num"):
        return None
    return Length(i, number.value, False, i)


def _is_preposition(items: Items, j: int) -> bool:
    """`3 in stock`, `2 in the box`: not inches."""
    return (
        items.word(j) == "in"
        and j + 1 < len(items)
        and items.word(j + 1)
        in (
            "stock",
            "the",
            "a",
            "my",
            "our",
            "total",
            "hand",
            "march",
            "one",
            "this",
            "all",
            "good",
        )
    )


def _by(items: Items, one: Length, two: Length) -> bool:
    """Say whether two lengths stand as `1/2 x 6`."""
    j = one.end + 1
    if items.has(j, "aspect"):
        j += 1
    return items.has(j, "by") and two.item in (j + 1, j + 2)


def _share_unit(items: Items, group: list[Length]) -> None:
    """`19 x 40 mm`: the last unit holds for all."""
    unit = items.said(group[-1].item + 1, "after")
    if group[-1].has_unit and unit in LENGTHS:
        for length in group[:-1]:
            if not length.has_unit:
                length.inches *= inch(unit)
                length.has_unit = True


def _claim(items: Items, group: list[Length]) -> None:
    first, last = group[0].item, group[-1].end
    subject, at = _subject(items, first, last)
    if subject is None or len(group) > 2:
        return
    if subject == "other":
        return
    if len(group) == 2:
        _claim_two(items, subject, at, group)
        return
    field = _field(items, subject, group[0])
    if field:
        _put(items, field, group[0], at)


def _claim_two(items: Items, subject: str, at: int, group: list[Length]) -> None:
    if subject in ("shaft", "shaft_length"):
        small, large = sorted(group, key=lambda length: length.inches)
        _put(items, "shaft_diameter_in", small, at)
        _put(items, "shaft_length_in", large, at)
    elif subject in ("body", "body_length"):
        _put(items, "body_diameter_in", group[0], at)
        _put(items, "body_length_in", group[1], at)


def _put(items: Items, field: str, length: Length, _at: int) -> None:
    low, high = _PLAUSIBLE[field]
    if low <= length.inches <= high:
        items.claim(field, round(length.inches, 4), length.item, length.end)
        items.used[length.item] = True


def _field(items: Items, subject: str, length: Length) -> str | None:
    aspect = _aspect(items, length)
    if aspect == "other":
        return None
    if subject == "shaft":
        if aspect:
            return "shaft_diameter_in" if aspect == "dia" else "shaft_length_in"
        return "shaft_diameter_in" if length.inches <= 1.3 else "shaft_length_in"
    if subject == "body":
        return "body_length_in" if aspect == "len" else "body_diameter_in"
    return {
        "shaft_length": "shaft_length_in",
        "body_length": "body_length_in",
        "bolt": "bolt_circle_in",
        "leads": "lead_length_in",
    }.get(subject)


def _aspect(items: Items, length: Length) -> str | None:
    """Return `dia` or `len` when the words beside the figure say so."""
    for j in (length.end + 1, length.end + 2):
        if items.has(j, "aspect"):
            return items.said(j, "aspect")
        if not items.has(j, "fill"):
            break
    before = items.skip(length.item - 1, -1)
    return items.said(before, "aspect")


def _subject_at(items: Items, j: int) -> str | None:
    roles = items.roles[j]
    return "leads" if "leads" in roles else roles.get("subject")


def _subject(items: Items, first: int, last: int) -> tuple[str | None, int]:
    """Return whose the figures from item `first` to `last` are, and the item that says so."""
    clause, segment = items.clause[first], items.segment[first]
    before = None
    j = first - 1
    while j >= 0 and items.clause[j] == clause:
        if items.roles[j]:
            said = _subject_at(items, j)
            if said:
                before = j
                break
        j -= 1
    starts_with_figure = not any(
        _subject_at(items, k) for k in range(max(0, first - 30), first) if items.clause[k] == clause
    ) or (before is not None and _is_spent(items, before, first))
    if starts_with_figure or before is None:
        k = last + 1
        while k < len(items) and items.clause[k] == clause and k <= last + 6 and not items.has(k, "num"):
            said = _subject_at(items, k)
            if said:
                return said, k
            k += 1
    if before is not None:
        return _subject_at(items, before), before
    while j >= 0 and items.segment[j] == segment:
        said = _subject_at(items, j)
        if said:
            return said, j
        j -= 1
    return None, -1


def _is_spent(items: Items, before: int, first: int) -> bool:
    """Say whether the subject before already owns the figure before it (`1/2 shaft 5-5/8 body`)."""
    k = before - 1
    steps = 0
    while k >= 0 and items.clause[k] == items.clause[before] and steps < 3:
        if items.has(k, "num") and items.used[k]:
            return not items.has(first - 1, "fill") and first - before <= 2
        k -= 1
        steps += 1
    return False
