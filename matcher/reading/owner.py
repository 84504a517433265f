"""Who owns a number: the unit behind it, or the label before it.

Read from left to right: a label that no number has taken yet owns the next number (`HP 1/2 V 115`),
else the unit behind it does (`1/2 HP 115 V`); either must be able to hold the figure. A few figures
are known by their look even when neither stands there (`208-230`, `1075`, `460/60/1`).
"""

from collections.abc import Callable, Mapping
from functools import lru_cache

from matcher.numeral import Numeral
from matcher.reading.alternatives import with_alternatives
from matcher.reading.brackets import behind_bracket, in_parts_bracket
from matcher.reading.capacitor import bare_pair, is_capacitors, microfarad
from matcher.reading.dual import amps_of_volts
from matcher.reading.items import Items
from matcher.reading.neighbours import by_neighbours
from matcher.reading.quantities import NOTHING, READERS, Given, by_look
from matcher.reading.speed_range import speed, taps
from matcher.reading.torn import damaged, in_code, is_parted, lost_stroke
from matcher.reading.wrapped import wrapped_label

LENGTHS = frozenset({"in", "mm", "cm", "ft", "m"})
_NO_LOOK = frozenset({"money", "subject", "by"})
_STRENGTHS = {"hp": 2, "kw/hp": 2, "hp/kw": 2, "rla": 0}  # a compressor's amperes count where no others stand
_WATTS = frozenset({None, "w", "kw", "w_in", "w_out", "ph~", "swallow"})
_STRONG_UNITS = frozenset({"hp", "kw", "uf", "spd"})
_SERVICE = frozenset({"sfa", "sf amps", "service amps", "max amps"})
_BREAKS = frozenset({"/", "."})
_BEFORE_UNITS = frozenset({"full", "@", "rated"})
_OF_STARTS = ("start", "locked", "inrush", "peak", "no load", "control", "heater", "brake")
_OF_PARTS = frozenset({"a", "A", "v", "hp"})  # what switches and relays have as well
_PHASES = frozenset({"1", "3"})
_LEADS_ON = frozenset({":", "="})


def unit_after(items: Items, i: int) -> tuple[str | None, int]:
    """Return the quantity that stands right behind number `i`, and the item that says it."""
    j = i + 1
    roles = items.roles
    word = items.words[j]
    if word in _BEFORE_UNITS or (word == "x" and roles[j + 1].get("after") == "spd"):
        j += 1
    elif word == "(" and "not" in roles[j + 1]:
        j = behind_bracket(items, j)  # `115 (not 230) volts`
    behind = roles[j]
    said = behind.get("after") or behind.get("unit")
    if said == "A" and items.raws[j] != "A" and not items.is_glued(i) and not _in_tenths(items, i):
        return None, j  # `3 a day`; amperes are a capital, touch their figure or are told in tenths
    return said, j


def _in_tenths(items: Items, i: int) -> bool:
    """`3.4 a`, not `$6.10 a piece`."""
    return "." in items.numbers[i].text and "money" not in items.roles[i - 1]


def label_before(items: Items, i: int) -> tuple[str | None, int]:
    """Return the quantity whose label stands right before number `i` and is not spent."""
    roles = items.roles
    if items.plate and items.words[i - 1] == "\n":
        return wrapped_label(items, i)
    amperes = _amperes_before(items, i)
    if amperes:
        return amperes
    j = i - 1 - (items.plate and items.words[i - 1] == "." and "unit" in roles[i - 2])  # `V. 115`
    if "fill" in roles[j]:
        j = items.skip(j, -1)
    if items.words[j] == ")" and items.words[j - 2] == "(":
        return _bracketed(items, j, i)
    j = _over_signs(items, j)
    if j < 0 or items.used[j]:
        return None, j
    said = roles[j].get("before") or roles[j].get("unit")
    if said == "A" and not _is_label(items, j, i):
        return None, j
    if said and j and "num" not in roles[j - 1] and in_code(items, j, i):
        return None, j
    return said, j


def _amperes_before(items: Items, i: int) -> tuple[str | None, int] | None:
    """Return the letter `A` that labels number `i`, spent or not; None where none does."""
    j = i - 1
    if items.said(j, "unit") == "A":
        return ("A", j) if not items.used[j] and _is_label(items, j, i) else None
    if items.said(j - 1, "unit") != "A":
        return None
    # `a: 1.7`, on a plate `A. .95/.70`
    labels = items.words[j] == ":" and _begins(items, j - 1)
    if not labels and not (items.plate and items.words[j] == "."):
        return None
    return (None if items.used[j - 1] else "A"), j - 1


def _over_signs(items: Items, j: int) -> int:
    """Walk back over the dash of `Volts - 208-230`, the mark of `Volts? 115`, and words of doubt."""
    roles = items.roles
    if items.words[j] == "-" and not items.is_glued(j) and j and "num" not in roles[j - 2]:
        j -= 1
    if items.words[j] == "?" and "num" not in roles[j - 2]:
        j -= 1
    while "unsure" in roles[j]:
        j = items.skip(j - 1, -1)
    return j


def _bracketed(items: Items, j: int, i: int) -> tuple[str | None, int]:
    """`FLA (A): 2.8`, `Power (HP): 1/2`: the label before the bracket closing at `j`, or its unit."""
    outer, inner = j - 3, j - 1
    if outer < 0 or "num" in items.roles[outer] or items.segment[outer] != items.segment[i]:
        return None, j
    known = items.said(outer, "before") or items.said(outer, "unit")
    if known and known != "A":
        return (None if items.used[outer] else known), outer
    said = items.said(inner, "unit") or items.said(inner, "before")
    labels = items.word(i - 1) in _LEADS_ON and items.word(outer)[:1].isalpha() and not items.used[inner]
    labels = labels and not any(items.word(k).startswith(_OF_STARTS) for k in (outer - 1, outer))
    return (said if labels else None), inner


def _is_label(items: Items, j: int, i: int) -> bool:
    """`A 5.6` labels amperes as a capital on a plate, or alone with its figure (`a 3.3;`)."""
    closed = i + 1 >= len(items) or items.clause[i + 1] != items.clause[i]
    opens = _opens(items, j)
    if not items.plate and items.is_glued(j) and "." not in items.numbers[i].text:
        return False  # `A1` is a cell or a class
    if items.raw(j) == "a":
        return closed and opens and "." in items.numbers[i].text
    return items.plate or closed or not items.has(i + 1, "after")


def _opens(items: Items, j: int) -> bool:
    return j == 0 or items.clause[j - 1] != items.clause[j] or not items.roles[j - 1]


def _begins(items: Items, j: int) -> bool:
    return items.clause[j - 1] != items.clause[j] or not items.word(j - 1)[:1].isalnum()


def own(items: Items, i: int) -> None:
    """Find the owner of number `i` and let it claim."""
    before = items.words[i - 1]
    stroke = before == "/" or items.words[i + 1] in _BREAKS
    if items.used[i] or before == "point" or (stroke and damaged(items, i)):
        return
    number = items.numbers[i]
    label, at = label_before(items, i)
    unit, behind = unit_after(items, i)
    if (
        label
        and not (label == "swallow" and unit in LENGTHS)
        and not (label[:2] == "w_" and unit not in _WATTS)
    ):
        given = _read(label, number)
        if given is not None and not _other_unit(items, i, behind, label, unit, given):
            items.used[at] = True
            same = bool(unit) and _same(label, unit or "")
            next_one = label == "swallow" and _labels_next(items, behind)
            if same and not next_one and not (items.plate and _fits_next(items, behind)):
                items.used[behind] = True
            _claim(items, label, given, i, at if label != "swallow" else i)
            return
    if unit == "swallow" and items.words[behind] in _SERVICE and "num" in items.roles[behind + 1]:
        unit = None  # `13.2/6.6 SFA 14.4/7.2`: it labels the next one
    of_pair = unit == "swallow" and items.has(i - 1, "by")  # `1/2 x 6 studs`
    given = _read(unit, number) if unit and not of_pair else None
    if items.plate and given and (label or is_parted(items, i)) and _fits_next(items, behind):
        return  # `VOLTS 1151 RPM 1075`: misread volts
    if unit and given is not None:
        items.used[behind] = True
        _claim(items, unit, given, i, behind)
    elif unit in (None, "ph", "spd", "A") or not items.is_glued(i):
        _claim_by_look(items, i, number)


def _fits_next(items: Items, behind: int) -> bool:
    """Say whether a unit labels the figure behind it, which it fits."""
    j = items.skip(behind + 1, 1)
    unit = items.said(behind, "unit")
    return j in items.numbers and unit is not None and bool(_read(unit, items.numbers[j]))


def _labels_next(items: Items, behind: int) -> bool:
    """`LR amps 12.5 FL amps 2.1`: the unit behind a figure is the label of the next one."""
    return items.has(behind + 1, "num") and not items.has(behind + 2, "unit")


def _claim_by_look(items: Items, i: int, number: Numeral) -> None:
    """Claim what the figure can only be by its look and its neighbours."""
    given = by_neighbours(items, i, number) or bare_pair(items, i) or amps_of_volts(items, number)
    if given is None:
        if items.words[i - 1] == "+" and "num" in items.roles[i - 2]:
            return  # `5+35/440`: a capacitor for two motors
        if "money" in items.roles[i + 1] or not _NO_LOOK.isdisjoint(items.roles[i - 1]):
            return
        given = by_look(number)
        if not given:
            return
        behind = items.raws[i + 1]
        if "rpm" in given and len(number.atoms) == 1 and behind[:1].isupper() and not items.roles[i + 1]:
            return  # `1400 Industrial Way`
    if items.words[i - 1] == "/" and "volts" in given:
        given = with_alternatives(items, i, given)
    for field, value in given.items():
        items.used[i] = True
        items.claim(field, value, i, i, 0)


@lru_cache(20_000)
def _read(quantity: str, number: Numeral) -> Given | None:
    """Return what a run of digits gives as a quantity; the same runs come back in listing after listing."""
    reader = READERS.get(quantity)
    return reader(number) if reader else None


def _same(label: str, unit: str) -> bool:
    return (
        label == unit
        or {label, unit} <= {"a", "A", "swallow"}
        or {label, unit} in ({"w", "w_in"}, {"w", "w_out"})
    )


def _other_unit(items: Items, i: int, behind: int, label: str, unit: str | None, given: Given) -> bool:
    """Say whether the clear unit of another quantity outweighs the label (`rated 1/2 HP`)."""
    is_unit = items.is_glued(i) or not items.has(items.skip(behind + 1, 1), "num")
    return (
        is_unit
        and unit in _STRONG_UNITS
        and label not in ("swallow", unit)
        and bool(given)
        and "speeds" not in given
    )


def _claim(items: Items, quantity: str, given: Given, i: int, j: int) -> None:
    """Let number `i`, said to be a quantity by item `j`, claim what it gives."""
    items.used[i] = True
    if quantity in _OF_PARTS and in_parts_bracket(items, i):
        return
    special = _SPECIAL.get(quantity)
    claims = special(items, i, j, given) if special else given
    strength = _STRENGTHS.get(quantity, 1)
    for field, value in claims.items():
        listed = field == "speeds" and "rpm" in claims and "/" in items.numbers[i].signs
        listed = listed and items.said(i + 1, "after") != "spd" != items.said(i + 1, "unit")
        items.claim(field, value, i, j, 0 if listed else strength)


def _volts(items: Items, i: int, j: int, given: Given) -> Given:
    """A capacitor's voltage, or a supply with the alternative that stands before it."""
    if is_capacitors(items, i):
        if len(items.numbers[i].atoms) == 1:
            items.claim("capacitor_vac", int(items.numbers[i].atoms[0]), i, j)
        return NOTHING
    if given.get("volts") == "370":
        return NOTHING  # no supply has it; a capacitor named elsewhere
    if (
        items.plate
        and given
        and items.word(i - 1) == "x"
        and items.word(i - 2) in _PHASES
        and not items.used[i - 2]
    ):
        items.used[i - 2] = True
        items.claim("phase", int(items.word(i - 2)), i - 2, i)  # `3 x 400 V`
    return with_alternatives(items, i, given) if given else given


def _largest(items: Items, i: int, given: Given) -> Given:
    """`3/4HP-1/2HP-1/3HP`: a list of powers, each with its unit; the largest counts."""
    last = items.claims[-1] if items.claims else None
    listed = (
        items.word(i - 1) in ("-", "/", ",", "to", "thru", "down to") and items.said(i - 2, "unit") == "hp"
    )
    if listed and last and last.field == "power_hp" and items.clause[i] - last.clause <= 1:
        return NOTHING if float(str(last.value)) >= float(str(given["power_hp"])) else given
    return given


def _power(items: Items, i: int, j: int, given: Given) -> Given:
    """`1/3 or 1/2`: the seller wavers; both values are claimed, in doubt."""
    if lost_stroke(items, i):
        return NOTHING
    if "|" not in items.numbers[i].text:
        return _largest(items, i, given)
    items.doubted.add(items.clause[i])
    for share in items.numbers[i].shares:
        items.claim("power_hp", round(share, 4), i, j, 2)
    return NOTHING


_SPECIAL: Mapping[str, Callable[[Items, int, int, Given], Given]] = {
    "v": _volts,
    "uf": microfarad,
    "hp": _power,
    "rpm": speed,
    "spd": taps,
}
