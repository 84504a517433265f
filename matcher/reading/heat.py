"""Insulation classes and temperatures: a letter, or degrees, behind or before their label."""

from matcher.reading.items import Items
from matcher.reading.phrases import alone
from matcher.units import fahrenheit_to_celsius

_AFTER_LETTER = frozenset({"ins", "insulation", "class", "class insulation", "insul"})

_CLASSES = frozenset("BFH")
_CELLS = frozenset("/|,;*-")
_CELLS_AWAY = 2


_AROUND = frozenset((".", '"', "'"))
"""What may stand between the label of a class and its letter on a plate: `CL. "B"`."""


_BY_DEGREES = {"105": "A", "130": "B", "155": "F", "180": "H"}
"""Thermal classes and their letters as in IEC 60085, from memory; 120 is class E."""


def _by_temperature(items: Items, i: int, j: int) -> bool:
    """`Th.Cl. 155(F)`: a thermal class in degrees."""
    letter = _BY_DEGREES.get(items.numbers[j].text.lstrip("."))
    if letter and not items.used[j]:
        items.claim("insulation_class", letter, i, j)
        items.used[j] = True
    return letter is not None


def insulation(items: Items, i: int, _value: str) -> None:
    """`INS CL B`, `Th.Cl. F`, `class F insulation`; never the class of a hazardous location."""
    j = items.skip(i + 1, 1)
    while items.has(j, "insclass") or (items.plate and items.word(j) in _AROUND):
        j = items.skip(j + 1, 1)
    if items.has(j, "num") and items.word(j + 1) == "(":
        j += 2  # `thermal class: 155 (F)`
    if items.plate and items.has(j, "num") and _by_temperature(items, i, j):
        return
    letter = "B" if items.plate and items.word(j) == "8" else items.word(j).upper()
    before = items.word(i - 1).upper()
    if _tells_rise(items, i, j):
        return
    if (
        letter not in ("A", "B", "F", "H")
        and before in ("A", "B", "F", "H")
        and items.word(i) in _AFTER_LETTER
    ):
        items.claim("insulation_class", before, i - 1, i)
        return
    if letter in ("A", "B", "F", "H") and not (letter == "A" and items.raw(j) == "a"):
        items.claim("insulation_class", letter, i, j)
        items.used[j] = True


_LETTERS = frozenset({"A", "B", "F", "H"})
_RISE = frozenset({"rise", "temp rise", "temperature rise", "temp", "temperature"})


def _tells_rise(items: Items, i: int, j: int) -> bool:
    """`class B rise`, `rise class B`: how much warmer a winding gets, not what it bears."""
    behind, before = items.word(j + 1), items.skip(i - 1, -1)
    if behind in _RISE and (behind[-4:] == "rise" or items.word(j + 2) == "rise"):
        k = items.skip(j + 2, 1)  # `INS F RISE B`, `INS B RISE 80`: the rise is told behind
        return not (items.has(k, "insclass") or items.has(k, "num") or items.word(k).upper() in _LETTERS)
    return items.word(before)[-4:] == "rise"


def ambient(items: Items, i: int, _value: str) -> None:
    """`AMB 40C`, `ambient 104 F`."""
    j = items.skip(i + 1, 1)
    if items.word(j) == "(" and items.word(j + 2) == ")" and _is_degrees(items, j + 1):
        inner, j = j + 1, items.skip(j + 3, 1)  # `Ambient (C): 60`
        if items.has(j, "num") and items.numbers[j].value is not None and not items.used[j]:
            items.used[j] = True
            fahrenheit = "f" in (items.said(inner, "unit"), items.said(inner, "after"))
            _claim_degrees(items, items.numbers[j].value or 0.0, (i, j), fahrenheit=fahrenheit)
        return
    if not items.has(j, "num") or (items.has(i - 2, "num") and _is_degrees(items, i - 1)):
        return  # `70C AMB. 5 MFD`
    number = items.numbers[j]
    if items.word(i)[-3:] == " to" and not _is_degrees(items, j + 1):
        return  # `good to 3 tons`
    if number.value is not None and -60 <= number.value <= 250:
        items.used[j] = True
        if "/" not in number.text:  # `AMB 40/60`: which of them holds, nothing says
            _degrees(items, number.value, i, j)


def _is_degrees(items: Items, j: int) -> bool:
    return (items.said(j, "unit") or items.said(j, "after")) in ("c", "f")


def _degrees(items: Items, value: float, i: int, j: int, strength: int = 1) -> None:
    unit = items.said(j + 1, "after") or items.said(j + 1, "unit")
    end = j + 1 if unit in ("c", "f") else j
    fahrenheit = unit == "f" or (unit is None and value > 90)
    _claim_degrees(items, value, (i, end), strength, fahrenheit=fahrenheit)


def _claim_degrees(
    items: Items, value: float, place: tuple[int, int], strength: int = 1, *, fahrenheit: bool
) -> None:
    if fahrenheit:
        items.claim("ambient_c", round(fahrenheit_to_celsius(value)), *place, strength)
    elif value <= 90:
        items.claim("ambient_c", round(value), *place, strength)


_USUAL_AMBIENTS = frozenset({40, 45, 50, 55, 60, 65, 70, 104, 122, 131, 140, 149, 158})


def celsius(items: Items, i: int) -> None:
    """`40C`, `104 F ambient`: degrees without a label, of a usual ambient temperature."""
    unit = items.said(i + 1, "unit") or items.said(i + 1, "after")
    if unit not in ("c", "f") or items.used[i] or items.numbers[i].value not in _USUAL_AMBIENTS:
        return
    if _are_cycles(items, i):
        items.used[i] = True
        items.claim("hertz", items.numbers[i].text, i, i + 1, 0)
        return
    value = items.numbers[i].value or 0.0
    named = items.has(items.skip(i + 2, 1), "amb")
    rise = items.word(items.skip(i - 1, -1)) in ("rise", "temp rise") or _is_rise(items, i + 2)
    if rise or (unit == "f" and not named and not (alone(items, i + 1) or alone(items, i, 2))):
        return
    items.used[i] = True
    _degrees(items, value, i, i, 1 if named else 0)
    for k in (i - 1, i + 2) if items.plate else ():
        if items.word(k).upper() in _CLASSES and not items.used[k] and _is_free(items, k):
            items.used[k] = True
            items.claim("insulation_class", items.raw(k), k)
    for k in (i - 2, i - 4, i - 5, i + 3):  # `F / 40C`, `F; SF 1.0; 40C`, `40C - B`
        if (
            items.raw(k) in _CLASSES
            and _is_cell(items, k)
            and items.segment[i] - items.segment[k] <= _CELLS_AWAY
        ):
            items.claim("insulation_class", items.raw(k), k)


def _are_cycles(items: Items, i: int) -> bool:
    """`60C 1P`, `115V 60C 1PH`: cycles, right before the phase, where no hertz are told."""
    if items.word(i) not in ("50", "60") or items.word(i + 2) not in ("1", "3"):
        return False
    if items.word(i + 3) == "p" and items.is_glued(i + 2):
        return True
    return items.said(i + 3, "unit") == "ph" and not any(claim.field == "hertz" for claim in items.claims)


def _is_cell(items: Items, k: int) -> bool:
    """Say whether an item stands alone between two signs that part cells."""
    return 0 < k < len(items) and items.word(k - 1) in _CELLS and items.word(k + 1) in _CELLS | {""}


def _is_free(items: Items, k: int) -> bool:
    """`TEAO  B  40C`, `40C  F`: a letter with gaps on either side, or behind another fact of the plate."""
    gaps = items.scan.gaps
    before = items.word(k - 1) in ("", "\n") or len(gaps[items.last[k - 1]]) > 1
    behind = items.word(k + 1) in ("", "\n") or len(gaps[items.last[k]]) > 1
    return before and behind


def _is_rise(items: Items, j: int) -> bool:
    """`40°C. RISE`: how much warmer than the air; in `40 C  RISE 80 C` the figure behind is."""
    if items.word(j) == ".":
        j += 1
    return items.word(j) == "rise" and not items.has(j + 1, "num")


HANDLERS = {"insclass": insulation, "amb": ambient}
