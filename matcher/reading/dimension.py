"""Lengths: which extent of whose they are, once it is known whose, and the facts that they give."""

from matcher.reading.bare_shaft import USUAL_SHAFTS, bare_of_shaft, claimed_diameter
from matcher.reading.items import Items
from matcher.reading.measure import (
    Length,
    has_thread,
    is_double,
    measured,
    share_unit,
    stand_together,
    without_conversions,
)
from matcher.reading.owner import LENGTHS
from matcher.reading.subject import THICKEST_SHAFT
from matcher.reading.whose import Subjects, leads_on
from matcher.units import INCHES

_OVERALL = ("overall", "oal", "total length", "length overall")
_SHORTEST = 0.7  # inch; of a shaft's length that nothing names
_METRIC_SHAFTS = frozenset({9, 11, 14, 19, 24, 28, 38})  # mm; shafts of IEC frames 56 to 132
_DIAMETERS = {"shaft_diameter_in": "shaft", "body_diameter_in": "body"}
_FAR = 40  # characters
# They stand behind their figure; nouns (`length`, `dia.`) may stand before it as well.
_ADJECTIVES = frozenset({"long", "thick", "wide", "across", "deep", "tall", "fat", "lang", "long shaft"})
_OF_SIZES = frozenset({"aspect", "fill", "by", "flats", "fact", "after", "key"})
_NEAR_WHOLE = 0.01  # mm
_LONGEST = 8  # inch; a shaft known by its figures alone
_MOST_LEADS = 8  # a bare figure up to here counts wires
_LABEL_ENDS = frozenset({":", "=", ")"})
_LONG_SHAFT = 1.3  # inch; more is a length, where nothing else is said
_THICK_SHAFTS = frozenset({1.375, 1.625})  # of the frames 213T and 254T
_SHELLS = frozenset({3.3, 5.5, 5.6, 5.625})  # inch; usual diameters of small motors, which no fan has
_OF_MOTORS = frozenset({"blower", "fan", "condenser", "furnace", "direct", "drive", "dia", "diameter", "psc"})
_PLAUSIBLE = {
    "shaft_diameter_in": (0.12, THICKEST_SHAFT),
    "shaft_length_in": (0.3, 16.0),
    "body_diameter_in": (1.5, 13.0),
    "body_length_in": (1.0, 24.0),
    "bolt_circle_in": (0.8, 12.0),
    "lead_length_in": (2.0, 240.0),
}


def lengths(items: Items) -> None:
    """Claim all lengths of a text, segment by segment."""
    used, muted = items.used, items.muted
    free = [i for i in items.numbers if not used[i] and not muted[i]]
    found = [length for i in free if (length := measured(items, i))]
    if len(found) > 1 and "(" in items.words:
        found = without_conversions(items, found)
    subjects = Subjects(items) if found else None
    k = 0
    while subjects and k < len(found):
        group = [found[k]]
        while k + 1 < len(found) and stand_together(items, found[k], found[k + 1]):
            k += 1
            group.append(found[k])
        k += 1
        share_unit(items, group)
        subject, same_clause = subjects.of(group[0], group[-1].end)
        _claim(items, group, subject, same_clause=same_clause)


def _claim(items: Items, group: list[Length], subject: str | None, *, same_clause: bool) -> None:
    label = group[0].label
    spent = label > 0 and items.has(label - 1, "num") and items.used[label - 1]  # `5-5/8 dia. 37" leads`
    if subject == "leads" and not spent and _aspect(items, group[0]) == "dia":
        subject = None
    if subject is None and len(group) == 1:
        subject = _goes_on(items, group[0])
        same_clause = subject is not None
    if subject == "other" and len(group) == 1 and _is_shell(items, group[0]):
        subject, same_clause = "body", True
    if subject is None and len(group) < 3:
        subject = _without_subject(items, group)
        same_clause = subject is not None
    if subject == "body" and not same_clause and _looks_like_shaft(group):
        subject = "shaft"
    if subject is None or subject == "other" or len(group) > 2:
        return
    if len(group) == 2:
        _claim_two(items, subject, group, same_clause=same_clause)
        return
    field = _field(items, subject, group[0], same_clause=same_clause)
    if field:
        _put(items, field, group[0])


def _goes_on(items: Items, length: Length) -> str | None:
    """`Shaft 1/2; 5 long`, `Shaft 1/2 in.; 5 in.`: a length alone in the cell behind a diameter."""
    start = length.item
    while items.has(start - 1, "aspect") or items.has(start - 1, "fill"):
        start -= 1
    if start and items.word(start - 1)[:1].isalnum():
        return None
    aspect = _aspect(items, length)
    if aspect == "dia":
        return "shaft" if length.inches <= THICKEST_SHAFT and _behind_shaft(items, start) else None
    last = items.claims[-1] if items.claims else None
    if last is None or last.field not in _DIAMETERS or last.source != items.source:
        return None
    apart = items.scan.starts[items.first[length.item]] - last.span[1]
    if not 0 < apart < _FAR:
        return None
    if aspect == "len":
        return _DIAMETERS[last.field]
    end = length.end + 1
    closed = end >= len(items) or items.segment[end] != items.segment[length.item]
    certain = length.has_unit or "-" in items.numbers[length.item].text  # `1/4" shaft, 1-1/2.`
    bare = aspect is None and certain and closed and last.field == "shaft_diameter_in"
    return "shaft" if bare and 1.5 * float(str(last.value)) < length.inches <= _LONGEST else None


def _behind_shaft(items: Items, start: int) -> bool:
    """`Double shaft; 1/2 dia.`: say whether the cell before is about the shaft."""
    cell = items.segment[start] - 1
    return any(
        items.said(j, "subject") == "shaft"
        for j in range(max(0, start - 8), start)
        if items.segment[j] == cell
    )


def _without_subject(items: Items, group: list[Length]) -> str | None:
    """`5.6 in. diameter`: the diameter of nothing in particular is the body's."""
    if _aspect(items, group[0]) == "dia" and group[0].inches > THICKEST_SHAFT:
        return "body"
    return "shaft" if _looks_like_shaft(group) else None


def _is_shell(items: Items, length: Length) -> bool:
    """`5.6" blower motor`: a usual diameter right before the motor's name is the shell's."""
    if not length.has_unit or round(length.inches, 3) not in _SHELLS:
        return False
    j = length.end + 1
    while items.word(j) in _OF_MOTORS and j < length.end + 4:
        j += 1
    return "motor" in items.roles[j] and items.clause[j] == items.clause[length.item]


def _looks_like_shaft(group: list[Length]) -> bool:
    """`1/2 X 5` alone in its clause."""
    return (
        len(group) == 2 and round(group[0].inches, 4) in USUAL_SHAFTS and 1.5 <= group[1].inches <= _LONGEST
    )


def _claim_two(items: Items, subject: str, group: list[Length], *, same_clause: bool) -> None:
    if subject == "leads" or not (same_clause or group[0].has_unit or _looks_like_shaft(group)):
        return
    if subject == "shaft":
        _in_millimetres(group)
    small, large = sorted(group, key=lambda length: length.inches)
    if subject in ("shaft", "shaft_length") and small.inches <= THICKEST_SHAFT:
        _put(items, "shaft_diameter_in", small)
        _put(items, "shaft_length_in", large)
    elif subject in ("body", "body_length"):
        first_is_length = _aspect(items, group[0]) == "len" or _aspect(items, group[1]) == "dia"
        across, along = group[::-1] if first_is_length else group
        _put(items, "body_diameter_in", across)
        _put(items, "body_length_in", along)


def _in_millimetres(group: list[Length]) -> None:
    """`Shaft 24x50`: the sizes of metric frames need no unit."""
    one, two = group
    if one.has_unit or one.inches not in _METRIC_SHAFTS or not 1.2 <= two.inches / one.inches <= 4:
        return
    for length in group:
        length.inches *= INCHES["mm"]


def _put(items: Items, field: str, length: Length) -> None:
    low, high = _PLAUSIBLE[field]
    if low <= length.inches <= high:
        items.claim(field, round(length.inches, 4), length.item, length.end)
        items.used[length.item] = True


def _field(items: Items, subject: str, length: Length, *, same_clause: bool) -> str | None:
    aspect = _aspect(items, length)
    if aspect == "other" and subject == "body" and (same_clause or length.has_unit):
        aspect = "dia" if items.word(length.end + 1) == "wide" else "other"
    if subject == "body" and aspect is None and _behind_overall(items, length):
        return "body_length_in"
    if subject == "shaft" and aspect is None and not length.has_unit and not same_clause:
        return bare_of_shaft(items, length)
    if aspect == "other" or (not length.has_unit and not same_clause and aspect is None):
        return None
    if subject in ("shaft", "shaft_length"):
        if aspect is None and not length.has_unit and _is_stray(items, length):
            return None
        return _field_of_shaft(items, subject, length, aspect)
    if subject == "body":
        return "body_length_in" if aspect == "len" else "body_diameter_in"
    if subject == "leads":
        labelled = length.label >= 0 and "leads" in items.roles[length.label]
        counts = length.inches <= _MOST_LEADS  # `lead wires: 4`
        return "lead_length_in" if length.has_unit or (labelled and not counts) else None
    return {"body_length": "body_length_in", "bolt": "bolt_circle_in"}.get(subject)


def _is_stray(items: Items, length: Length) -> bool:
    """`Shaft 1/2 x 4-1/2 used 3 seasons`: a bare figure some words behind those of the shaft."""
    behind = range(length.end + 1, length.end + 4)
    if items.has(length.item - 1, "by") or any(items.has(j, "subject") for j in behind):
        return False
    for k in range(length.item - 1, max(-1, length.item - 8), -1):
        if items.has(k, "subject") or items.clause[k] != items.clause[length.item]:
            return False
        if items.has(k, "num") and items.used[k]:
            between = range(k + 1, length.item)
            return any(items.word(j)[:1].isalpha() and _OF_SIZES.isdisjoint(items.roles[j]) for j in between)
    return False


def _field_of_shaft(items: Items, subject: str, length: Length, aspect: str | None) -> str:
    if aspect == "dia":
        return "shaft_diameter_in" if length.inches <= THICKEST_SHAFT else "body_diameter_in"
    if aspect == "len" or subject == "shaft_length":
        _metric_length(items, length)
        return "shaft_length_in"
    thick = claimed_diameter(items, length)
    if thick and length.inches > max(1.5 * thick, _SHORTEST):
        return "shaft_length_in"  # `Shaft 6 mm, 25 mm`
    if length.inches > _SHORTEST and has_thread(items, length):
        return "shaft_length_in"
    return "shaft_diameter_in" if _is_thick(items, length) else "shaft_length_in"


def _metric_length(items: Items, length: Length) -> None:
    """`Shaft 24 mm, 50 long`: millimetres go on."""
    thick = claimed_diameter(items, length)
    if thick and not length.has_unit and length.inches > _PLAUSIBLE["shaft_length_in"][1]:
        millimetres = thick / INCHES["mm"]
        if abs(millimetres - round(millimetres)) < _NEAR_WHOLE:
            length.inches *= INCHES["mm"]


def _behind_overall(items: Items, length: Length) -> bool:
    """`Overall length 12 in., body 6-3/4 in.`: lengths both."""
    i = length.item
    return any(
        items.said(j, "subject") == "other" and items.word(j).startswith(_OVERALL)
        for j in range(max(0, i - 10), i)
        if items.segment[j] == items.segment[i]
    )


def _is_thick(items: Items, length: Length) -> bool:
    """Say whether a figure for the shaft without an extent is its diameter: `1-3/8 keyed` is, `1-1/2` not."""
    if length.inches <= _LONG_SHAFT:
        return True
    keyed = items.said(length.end + 1, "fact") == "shaft_keyed=true"
    return length.inches <= THICKEST_SHAFT and (keyed or length.inches in _THICK_SHAFTS)


def _aspect(items: Items, length: Length) -> str | None:
    """Return `dia` or `len` when the words beside the figure say so."""
    label = length.label
    if items.has(label, "aspect") and items.word(length.item - 1) in _LABEL_ENDS:
        return None if is_double(items, label) else items.said(label, "aspect")
    j = length.end + 1
    while items.has(j, "fill") and not items.has(j, "aspect") and j < length.end + 3:
        j += 1
    if items.has(j, "aspect") and (items.word(j) in _ADJECTIVES or not leads_on(items, j)):
        return items.said(j, "aspect")
    if items.word(j) == "round" and length.inches > THICKEST_SHAFT and length.has_unit:
        return "dia"  # `5-5/8" round`
    if items.has(label, "aspect") and items.word(label) not in _ADJECTIVES:
        return None if is_double(items, label) else items.said(label, "aspect")
    if items.has(j, "subject") or not items.has(j, "aspect") or _is_next_ones(items, length, j):
        return None
    return items.said(j, "aspect")


def _is_next_ones(items: Items, length: Length, j: int) -> bool:
    """`shaft 10 mm length 35 mm`; in `shaft 1/2 dia 5 long` each extent stands behind its figure."""
    k = j + 2 if items.said(j + 2, "after") in LENGTHS else j + 1
    return items.has(length.label, "subject") and not items.has(k + 1, "aspect")
