"""Lengths: whose they are (shaft, body, leads, bolt circle, or something else's) and which extent.

In a clause a length belongs to the subject before it, or behind it when the clause starts with the
figure (`1/2 in. keyed shaft`); a clause without a subject goes on with the one before it, in the same
segment (`shaft 5/8 keyed, 1-7/8 long`).
"""

from dataclasses import dataclass

from matcher.reading.figures import EIGHTHS
from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS
from matcher.units import INCHES

_THICKEST_SHAFT = 1.6  # inch; this trade's frames end at 1-5/8
_ENDS = frozenset({"shafts", "shaft ends", "ends", "shaft end", "number of shafts", "no of shafts"})
_FAR = 60  # items
_USUAL_SHAFTS = frozenset({0.25, 0.3125, 0.375, 0.5, 0.625, 0.875})
_PLAUSIBLE = {
    "shaft_diameter_in": (0.12, _THICKEST_SHAFT),
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


def lengths(items: Items) -> None:
    """Claim all lengths of a text, segment by segment."""
    used, muted = items.used, items.muted
    free = [i for i in items.numbers if not used[i] and not muted[i]]
    found = [length for i in free if (length := _length(items, i))]
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
    number = items.numbers[i]
    if number.value is None:
        return None
    if "/" in number.signs and number.text.rpartition("-")[2] not in EIGHTHS and number.text[-1] < "½":
        return None  # `35/5`: no ruler has it
    unit = items.said(i + 1, "after")
    if number.value in (1, 2) and items.word(items.skip(i - 1, -1)) in _ENDS:
        return None  # `Shaft ends: 2`
    if unit in LENGTHS and not _is_preposition(items, i + 1):
        return Length(i, number.value * INCHES[unit], True, i + 1)
    if items.has(i + 1, "after") and unit not in ("in", None) and unit not in ("flat", "swallow"):
        return None
    if items.has(i - 1, "money") or (items.has(i + 1, "money") and not items.has(i + 2, "num")):
        return None
    said = items.roles[i].get("num")
    if said and (
        "/" not in said or items.word(i - 1) in ("&", "and")
    ):  # `four wires`, but `five eighths` is a length
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
                length.inches *= INCHES[unit]
                length.has_unit = True


def _claim(items: Items, group: list[Length]) -> None:
    subject, same_clause = _subject(items, group[0].item, group[-1].end)
    if subject == "leads" and _aspect(items, group[0]) == "dia":
        subject = None
    if subject is None and len(group) < 3:
        subject = _without_subject(items, group)
        same_clause = subject is not None
    if subject is None or subject == "other" or len(group) > 2:
        return
    if len(group) == 2:
        _claim_two(items, subject, group, same_clause=same_clause)
        return
    field = _field(items, subject, group[0], same_clause=same_clause)
    if field:
        _put(items, field, group[0])


def _without_subject(items: Items, group: list[Length]) -> str | None:
    """`5.6 in. diameter`: the diameter of nothing in particular is the body's."""
    if _aspect(items, group[0]) == "dia" and group[0].inches > _THICKEST_SHAFT:
        return "body"
    if len(group) == 2 and round(group[0].inches, 4) in _USUAL_SHAFTS and 1.5 <= group[1].inches <= 8:
        return "shaft"  # `1/2 X 5` alone in its clause
    return None


def _claim_two(items: Items, subject: str, group: list[Length], *, same_clause: bool) -> None:
    if subject == "leads" or not (same_clause or group[0].has_unit):
        return
    small, large = sorted(group, key=lambda length: length.inches)
    if subject in ("shaft", "shaft_length") and small.inches <= _THICKEST_SHAFT:
        _put(items, "shaft_diameter_in", small)
        _put(items, "shaft_length_in", large)
    elif subject in ("body", "body_length"):
        first_is_length = _aspect(items, group[0]) == "len" or _aspect(items, group[1]) == "dia"
        across, along = group[::-1] if first_is_length else group
        _put(items, "body_diameter_in", across)
        _put(items, "body_length_in", along)


def _put(items: Items, field: str, length: Length) -> None:
    low, high = _PLAUSIBLE[field]
    if low <= length.inches <= high:
        items.claim(field, round(length.inches, 4), length.item, length.end)
        items.used[length.item] = True


def _field(items: Items, subject: str, length: Length, *, same_clause: bool) -> str | None:
    aspect = _aspect(items, length)
    if aspect == "other" or (not length.has_unit and not same_clause and aspect is None):
        return None
    if subject in ("shaft", "shaft_length"):
        if aspect == "dia":
            return "shaft_diameter_in" if length.inches <= _THICKEST_SHAFT else "body_diameter_in"
        if aspect == "len" or subject == "shaft_length":
            return "shaft_length_in"
        thick = _claimed_diameter(items, length)
        if thick and length.inches > 1.5 * thick:
            return "shaft_length_in"  # `Shaft 6 mm, 25 mm`
        return "shaft_diameter_in" if length.inches <= _THICKEST_SHAFT - 0.3 else "shaft_length_in"
    if subject == "body":
        return "body_length_in" if aspect == "len" else "body_diameter_in"
    if subject == "leads":
        labelled = "leads" in items.roles[items.skip(length.item - 1, -1)] if length.item else False
        return "lead_length_in" if length.has_unit or labelled else None
    return {"body_length": "body_length_in", "bolt": "bolt_circle_in"}.get(subject)


def _claimed_diameter(items: Items, length: Length) -> float | None:
    """Return the shaft's diameter that the same sentence has just given."""
    last = items.claims[-1] if items.claims else None
    if last and last.field == "shaft_diameter_in" and last.clause >= items.clause[length.item] - 2:
        return float(str(last.value))
    return None


def _aspect(items: Items, length: Length) -> str | None:
    """Return `dia` or `len` when the words beside the figure say so."""
    j = length.end + 1
    while items.has(j, "fill") and not items.has(j, "aspect") and j < length.end + 3:
        j += 1
    if items.has(j, "aspect") and not items.has(j + 1, "num"):
        return items.said(j, "aspect")
    before = items.skip(length.item - 1, -1)
    if items.has(before, "aspect"):
        return items.said(before, "aspect")
    return items.said(j, "aspect")


def _subject_at(items: Items, j: int) -> str | None:
    if not 0 <= j < len(items):
        return None
    roles = items.roles[j]
    return "leads" if "leads" in roles else roles.get("subject")


def _subject(items: Items, first: int, last: int) -> tuple[str | None, bool]:
    """Return whose the figures from item `first` to `last` are, and whether their own clause says so."""
    behind = _behind(items, first, last)
    if behind and behind[1] - last <= 2 and behind[0] in ("other", "body_length", "bolt"):
        return behind[0], True
    before = _before(items, first)
    if (before is None or _is_spent(items, before, first)) and behind:
        return behind[0], True
    if before is not None:
        return _subject_at(items, before), True
    j = first - 1
    while j >= max(0, first - _FAR) and items.segment[j] == items.segment[first]:
        said = _subject_at(items, j)
        if said:
            return said, False
        j -= 1
    return None, False


def _before(items: Items, first: int) -> int | None:
    """Return the nearest subject before a figure in its clause."""
    j = first - 1
    while j >= max(0, first - _FAR) and items.clause[j] == items.clause[first]:
        if _subject_at(items, j):
            return j
        j -= 1
    return None


def _behind(items: Items, first: int, last: int) -> tuple[str, int] | None:
    """Return the next subject behind a figure in its clause, before the next figure."""
    k = last + 1
    while (
        k < len(items)
        and items.clause[k] == items.clause[first]
        and k <= last + 6
        and not items.has(k, "num")
    ):
        said = _subject_at(items, k)
        if said:
            return said, k
        k += 1
    return None


def _is_spent(items: Items, before: int, first: int) -> bool:
    """Say whether the subject before already owns the figure before it (`1/2 shaft 5-5/8 body`)."""
    for k in range(before - 1, max(-1, before - 4), -1):
        if items.clause[k] != items.clause[before]:
            return False
        if items.has(k, "num") and items.used[k]:
            return not items.has(first - 1, "fill") and first - before <= 2
    return False
