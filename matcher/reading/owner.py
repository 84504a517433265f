"""Who owns a number: the unit behind it, or the label before it.

Read from left to right: a label that no number has taken yet owns the next number (`HP 1/2 V 115`),
else the unit behind it does (`1/2 HP 115 V`); either must be able to hold the figure.
"""

from matcher.reading.items import Items
from matcher.reading.numeral import Numeral
from matcher.reading.quantities import READERS, Given

LENGTHS = frozenset({"in", "mm", "cm", "ft"})
_CAP_VOLTS = frozenset({250, 330, 370, 400, 440, 450, 475, 480, 500})
_POWER = {"hp": 2, "kw": 1, "w_out": 1}


def unit_after(items: Items, i: int) -> tuple[str | None, int]:
    """Return the quantity that stands right behind number `i`, and the item that says it."""
    j = i + 1
    if items.has(j, "fill") and items.word(j) in ("full", "@"):
        j += 1
    said = items.said(j, "after") or items.said(j, "unit")
    if said == "A" and not _is_ampere(items, i, j):
        return None, j
    return said, j


def _is_ampere(items: Items, i: int, j: int) -> bool:
    """`A` behind a number is amperes as a capital or touching it; `3 a day` is not."""
    return items.raw(j) == "A" or items.is_glued(i)


def label_before(items: Items, i: int) -> tuple[str | None, int]:
    """Return the quantity whose label stands right before number `i` and is not spent."""
    j = items.skip(i - 1, -1)
    if j < 0 or items.used[j]:
        return None, j
    said = items.said(j, "before") or items.said(j, "unit")
    if said == "A" and (items.raw(j) != "A" or not _stands_as_label(items, j)):
        return None, j
    return said, j


def _stands_as_label(items: Items, j: int) -> bool:
    """A capital `A` labels amperes unless it opens a sentence of words ("A 3 speed motor")."""
    return items.plate or j == 0 or not items.has(j + 2, "after") or items.is_glued(j)


def own(items: Items, i: int, _value: str = "") -> None:
    """Find the owner of number `i` and let it claim."""
    if items.used[i]:
        return
    number = items.numbers[i]
    label, at = label_before(items, i)
    unit, behind = unit_after(items, i)
    if label and not (unit and label == "swallow" and unit in LENGTHS):
        given = _read(label, number)
        if given is not None and not (_is_unit(items, i, behind) and _unit_contradicts(label, unit, given)):
            items.used[at] = True
            if unit and _same(label, unit):
                items.used[behind] = True
            _claim(items, label, given, i, at if label != "swallow" else i)
            return
    if unit in READERS:
        given = _read(unit, number)
        if given is not None:
            items.used[behind] = True
            _claim(items, unit, given, i, behind)


def _read(quantity: str, number: Numeral) -> Given | None:
    reader = READERS.get(quantity)
    return reader(number) if reader else None


def _same(label: str, unit: str) -> bool:
    return label == unit or {label, unit} <= {"a", "A", "swallow"} or {label, unit} <= {"w", "w_in", "w_out"}


def _is_unit(items: Items, i: int, behind: int) -> bool:
    """Say whether the word behind a number is its unit rather than the label of the next number."""
    return items.is_glued(i) or not items.has(items.skip(behind + 1, 1), "num")


def _unit_contradicts(label: str, unit: str | None, given: Given) -> bool:
    """`rated 115 V`: a label of one quantity before a number with the clear unit of another."""
    return (
        bool(unit)
        and unit in ("hp", "kw", "uf", "spd")
        and label not in ("swallow", unit)
        and bool(given)
        and "speeds" not in given
    )


def _claim(items: Items, quantity: str, given: Given, i: int, j: int) -> None:
    items.used[i] = True
    if quantity == "v" and _is_capacitors(items, i):
        items.claim("capacitor_vac", int(items.numbers[i].atoms[0]), i, j)
        return
    if quantity == "uf" and near_start(items, i):
        return
    strength = _POWER.get(quantity, 1)
    for field, value in given.items():
        items.claim(field, value, i, j, strength)


def near_start(items: Items, i: int) -> bool:
    """Say whether a capacitor's size in this clause is a start capacitor's."""
    for j in range(i, max(-1, i - 8), -1):
        if items.clause[j] != items.clause[i]:
            break
        if "cap" in items.roles[j]:
            return items.roles[j]["cap"] == "start"
    return items.said(i + 2, "cap") == "start" or items.word(i - 1) in ("start", "starting") if i else False


def _is_capacitors(items: Items, i: int) -> bool:
    """Volts near a microfarad figure or a capacitor, of a size that capacitors have and supplies don't."""
    number = items.numbers[i]
    if len(number.atoms) != 1 or number.atoms[0] not in _CAP_VOLTS:
        return False
    low, high = max(0, i - 7), min(len(items), i + 6)
    return any(
        "cap" in items.roles[j] or items.said(j, "unit") == "uf"
        for j in range(low, high)
        if items.segment[j] == items.segment[i]
    )
