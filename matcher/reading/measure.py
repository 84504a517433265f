"""Figures that may be lengths: their value in inches, the unit said with them, and pairs of them."""

from dataclasses import dataclass

from matcher.numeral import Numeral
from matcher.reading.figures import EIGHTHS
from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS
from matcher.units import INCHES

_ENDS = frozenset({"shafts", "shaft ends", "ends", "shaft end", "number of shafts", "no of shafts"})
_NOT_INCHES = frozenset(
    ["stock", "the", "a", "my", "our", "total", "hand", "march", "one", "this", "all", "good"]
)
"""What stands behind `in` where it is no unit: `3 in stock`, `2 in the box`."""
_FLAT = frozenset({"flat", "a flat", "with a flat", "with flat", "has a flat"})
_ONE_FLAT = frozenset({"single flat", "one flat", "1 flat", "one side flat"})
_OPENS = frozenset("\n|;•*")
_VULGAR = frozenset("½¼¾⅛⅜⅝⅞")
_KEYS = frozenset(
    {
        "key",
        "keyway",
        "key way",
        "keyseat",
        "keyslot",
        "key slot",
        "with keyway",
        "square key",
        "sq key",
        "passfeder",
        "paßfeder",
    }
    | {"sq . key", "feather key", "passfeder", "paßfeder", "mit passfeder", "mit paßfeder", "clavette"}
    | {"avec clavette", "chaveta", "con chaveta", "chiavetta", "con chiavetta"}
)
_WIDEST_KEY = 0.4  # inch; 10 mm of a 38 mm shaft
_SHAPES = frozenset({"dia", "len", "other"})
_LOOSE_EXTENTS = frozenset({"out", "of it", "through", "reach", "exposed"})
_BETWEEN_LABELS = frozenset({"/", "x", "by", "&", "and"})
_COUNTS = frozenset({2, 3, 4, 6, 8})
_COUNTED = ("stud", "bolt", "lug", "ear", "hole", "slot")
_TOLERANCES = frozenset({"k", "h", "j", "g", "m"})
_ROUNDING = 0.02
_WHOLE = 24  # inch; nobody spells out more


@dataclass(slots=True)
class Length:
    """A figure that may be a length: its item, value in inches, whether a unit was said, its last item."""

    item: int
    inches: float
    has_unit: bool
    end: int
    label: int
    """The item that may label it, in front of a bracket with the unit too (`Dia. (in.): 5.6`)."""


def measured(items: Items, i: int) -> Length | None:
    """Return number `i` as a length; None where it can be none."""
    number = items.numbers[i]
    label = items.skip(i - 1, -1)
    if items.word(label) == "-" and _labels_line(items, label - 1):
        label -= 1
    if number.value is None or not _on_a_ruler(number) or _is_of_other(items, i, label):
        return None
    unit = items.said(i + 1, "after")
    if unit in LENGTHS and not _is_preposition(items, i + 1):
        return Length(i, number.value * INCHES[unit], True, i + 1, label)
    if items.has(i + 1, "after") and not _may_follow(items, i, unit):
        return None
    if items.roles[i].get("num") and not _is_spelled_length(items, i):
        return None
    if items.word(label) == ")" and items.word(label - 2) == "(":
        bracketed = items.said(label - 1, "after")
        if bracketed in LENGTHS:
            return Length(i, number.value * INCHES[bracketed], True, i, items.skip(label - 3, -1))
    return Length(i, number.value, False, i, label)


def _labels_line(items: Items, j: int) -> bool:
    """`Diameter - 5-5/8`: a label that opens its line or cell, and a dash."""
    named = items.has(j, "subject") or items.has(j, "aspect")
    return named and (j == 0 or items.word(j - 1) in _OPENS)


def _on_a_ruler(number: Numeral) -> bool:
    """`5-5/8`; no ruler has `35/5`."""
    return "/" not in number.signs or number.text.rpartition("-")[2] in EIGHTHS or number.text[-1] in _VULGAR


def _is_of_other(items: Items, i: int, label: int) -> bool:
    """Say whether a figure counts shafts, is money, or measures a flat, a key, or what the shaft once was."""
    value = items.numbers[i].value or 0.0
    if value in (1, 2) and items.word(label) in _ENDS:
        return True  # `Shaft ends: 2`
    if _is_count(items, i, value) or _is_tolerance(items, i):
        return True
    if items.has(i - 1, "money") or (items.has(i + 1, "money") and not items.has(i + 2, "num")):
        return True
    if _is_of_flat(items, i, label) or _is_of_key(items, i, label) or _is_former(items, i):
        return True  # `flat 1-1/2 long`
    # `2 in. flat`: as long as the flat is
    return (
        value >= 1
        and items.word(i + 2) == "flat"
        and items.said(i + 1, "after") in LENGTHS
        and not items.has(i - 1, "by")
    )


def _is_of_flat(items: Items, i: int, label: int) -> bool:
    """`flat 1-1/2 long`, `single flat 4" long`: how long the flat is."""
    if items.word(label) in _FLAT:
        return True
    j = i + 2 if items.said(i + 1, "after") in LENGTHS else i + 1
    return items.word(label) in _ONE_FLAT and items.said(j, "aspect") == "len"


def _is_count(items: Items, i: int, value: float) -> bool:
    """`4 stud mount`; not `3.0 bolt circle`, `1/2 x 4 stud`."""
    counted = value in _COUNTS and _names_counted(items.word(i + 1))
    return counted and items.said(i + 1, "subject") != "bolt" and not items.has(i - 1, "by")


def _names_counted(said: str) -> bool:
    """`stud mount`, `mounting lugs`."""
    return said.startswith(_COUNTED) or said.rpartition(" ")[2].startswith(_COUNTED)


def _is_tolerance(items: Items, i: int) -> bool:
    """`shaft 24 mm k6`: how closely it is ground."""
    return items.is_glued(i - 1) and items.word(i - 1) in _TOLERANCES


def _is_of_key(items: Items, i: int, label: int) -> bool:
    """`with 3/16 keyway`, `keyway 1-3/8 long`: how wide or long the key is; `5/8 KEY` is the shaft's."""
    value = items.numbers[i].value or 0.0
    value *= INCHES.get(items.said(i + 1, "after") or "in", 1.0)
    if items.word(label) in _KEYS or (items.word(label)[:5] == "keyed" and value <= _WIDEST_KEY):
        return True
    if items.has(i - 1, "by") and items.has(i - 2, "num") and items.word(items.skip(i - 3, -1)) in _KEYS:
        return True  # `Passfeder 8x7`
    j = i + 2 if items.has(i + 1, "after") else i + 1
    if items.has(j, "by"):
        j += 2 if not items.has(j + 2, "after") else 3
    return items.word(j) in _KEYS and value <= _WIDEST_KEY


def _is_former(items: Items, i: int) -> bool:
    """`cut to 3 in., was 6`, `cut down from 6`: as long as it no longer is."""
    before = items.word(i - 1)
    if before == "was":
        return items.clause[i - 2] != items.clause[i - 1] or items.word(i - 2) in ("(", ",")
    return before == "from" and items.word(i - 2) in ("down", "cut")


def _may_follow(items: Items, i: int, unit: str | None) -> bool:
    """`1/2 D x 5`: a diameter, not days."""
    if unit == "day" and items.has(i + 1, "aspect"):
        return "/" in items.numbers[i].signs or items.has(i + 2, "by")
    return unit in ("in", None, "flat", "swallow")


def _is_spelled_length(items: Items, i: int) -> bool:
    """`five eighths`, `half inch by four`, `five long`; `four wires` isn't one."""
    text = items.numbers[i].text
    if "/" in text:
        return items.word(i - 1) not in ("&", "and") or items.has(i + 1, "subject")
    value = items.numbers[i].value or 0.0
    j = items.skip(i - 1, -1)
    extent = items.said(i + 1, "aspect") in _SHAPES and items.word(i + 1) not in _LOOSE_EXTENTS
    return value <= _WHOLE and (items.has(j, "by") or items.has(i + 1, "by") or extent)


def _is_preposition(items: Items, j: int) -> bool:
    """`3 in stock`, `2 in the box`: not inches."""
    return items.word(j) == "in" and items.word(j + 1) in _NOT_INCHES


def stand_together(items: Items, one: Length, two: Length) -> bool:
    """Say whether two lengths stand as `1/2 x 6`."""
    j = one.end + 1
    if items.has(j, "aspect") or items.has(j, "flats") or items.said(j, "fact") == "shaft_keyed=true":
        j += 1
    by = items.has(j, "by") or (items.word(j) == "/" and is_double(items, one.label))
    return by and j < two.item <= j + 2


def is_double(items: Items, label: int) -> bool:
    """`Dia/length 1/2 / 5`, `diameter x length`: a label of two extents."""
    return (
        items.has(label, "aspect")
        and items.has(label - 2, "aspect")
        and items.word(label - 1) in _BETWEEN_LABELS
    )


def without_conversions(items: Items, found: list[Length]) -> list[Length]:
    """Leave out what says the same in brackets: `1/2 (12.7 mm) x 6`, `5-5/8 in. (143 mm)`."""
    kept: list[Length] = []
    for length in found:
        one = kept[-1] if kept else None
        if one and items.word(one.end + 1) == "(" and length.item in _opening(items, one.end + 2):
            closed = items.word(length.end + 1) == ")"
            if closed and abs(one.inches - length.inches) <= _ROUNDING * one.inches:
                one.end = length.end + 1
                continue
        kept.append(length)
    return kept


def _opening(items: Items, j: int) -> tuple[int, ...]:
    """Return where the figure of a bracket stands: first, or behind a word (`(so 1/2)`, `(= 1/2 in.)`)."""
    return (j, j + 1) if items.word(j) in _THAT_IS else (j,)


_THAT_IS = frozenset({"so", "=", "is", "about", "~", "i.e", "ie", "or", "call it", "really", "nominal"})


def share_unit(items: Items, group: list[Length]) -> None:
    """`19 x 40 mm`: the last unit holds for all."""
    unit = items.said(group[-1].item + 1, "after")
    if group[-1].has_unit and unit in LENGTHS:
        for length in group[:-1]:
            if not length.has_unit:
                length.inches *= INCHES[unit]
                length.has_unit = True


_NEAR_THREAD = 8  # items


def has_thread(items: Items, length: Length) -> bool:
    """`shaft M6 threaded, 25 mm`: the thread is its thickness."""
    for j in range(length.item - 1, max(0, length.item - _NEAR_THREAD), -1):
        if items.segment[j] != items.segment[length.item]:
            return False
        if j in items.numbers and items.raw(j - 1) == "M" and items.is_glued(j - 1):
            return True
    return False
