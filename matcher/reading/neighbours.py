"""What a figure without unit or label is by the figures and words right beside it."""

import re
from collections.abc import Container

from matcher.numeral import Numeral
from matcher.reading.items import Items
from matcher.reading.quantities import BARE_SPEED, READERS, Given

_CYCLES_AND_PHASE = {
    text: (hertz, int(phase))
    for hertz in ("50", "60")
    for phase in ("1", "3")
    for sign in "/-"
    for text in (f"{hertz}{sign}{phase}", f"{phase}{sign}{hertz}")
}
_THREE_PHASE = frozenset({"3/60", "60/3", "60/1"})
"""No power and no date looks so; `1/60` may be a small fan's hp."""
_AT = frozenset({"@", "at"})
_LETTERS = frozenset("rsph")
_SPEEDS = frozenset(map(str, BARE_SPEED))
_ON = _AT | {"on"}
_AMPERES = frozenset({"a", "A"})
_POWERS = frozenset({"1/20", "1/15", "1/12", "1/10", "1/8", "1/6", "1/5", "1/4", "1/3", "1/2", "3/4"})
_SIZED = 4  # items
_CHANGING = frozenset({"a", "A", "rpm"})  # with the frequency
_CYCLES = frozenset({"50", "60"})
_RATED = frozenset(
    {"115", "120", "208", "220", "230", "240", "277", "380", "400", "440", "460", "480", "575"}
)
_WINDINGS = frozenset({"delta", "star", "wye", "d", "y", "δ"})
_ENDS = frozenset({"", ".", ",", ";", "\n", "|"})
_LENGTHS = frozenset({"in", "mm", "cm", "ft", "m"})


def by_neighbours(items: Items, i: int, number: Numeral) -> Given | None:
    """What stands beside a figure tells what it is.

    `208-230 60 1PH`: cycles before the phase; `230V/60/1`: cycles and phase behind a stroke;
    `3.6 A @ 208, 3.4 @ 230`: amperes at their volts; `115, not 230`, `400 V star / 230 delta`: volts.
    """
    roles, before, behind = items.roles, items.words[i - 1], items.words[i + 1]
    if behind in _LETTERS and items.is_glued(i):
        return _lettered(items, i, number, behind)
    if number.text in _CYCLES and "num" in roles[i + 1] and roles[i + 2].get("unit") == "ph":
        return {"hertz": number.text}
    if number.text in _POWERS and "num" in roles[i + 1]:
        return READERS["hp"](number) if _is_power(items, i) else None
    if number.text in _CYCLES and (_is_of_figure(items, i) or _in_supply(items, i)):
        return {"hertz": number.text}
    if number.text in _RATED and _is_supply(items, i):
        return {"volts": number.text}
    if behind in _ON and "." in number.text and "num" in roles[i + 2] and items.numbers[i + 2].text in _RATED:
        return READERS["a"](number)
    supply = _CYCLES_AND_PHASE.get(number.text)
    if supply and (before in ("/", "-") or number.text in _THREE_PHASE or _behind_volts(items, i)):
        return {"hertz": supply[0], "phase": supply[1]}
    return None


def _is_supply(items: Items, i: int) -> bool:
    """`115, not 230`, `400 V star / 230 delta`, `3.6 A @ 208`; or right behind a power."""
    roles, before = items.roles, items.words[i - 1]
    if before == "/" and items.words[i + 1] in _WINDINGS:
        return True
    other = items.numbers[i + 2].text if "not" in roles[i + 1] and "num" in roles[i + 2] else ""
    title = "num" in roles[i - 1] and items.numbers[i - 1].text in _POWERS and _is_power(items, i - 1)
    return title or other in _RATED or (before in _ON and _is_current(items, i - 2))


def _lettered(items: Items, i: int, number: Numeral, letter: str) -> Given | None:
    """`60C 1P 1075R 4S`: phase, speed and taps by their letters, one right behind the other."""
    if letter == "h":
        return {"hertz": number.text} if number.text in _CYCLES else None
    if letter == "r":
        return {"rpm": (int(number.text),)} if number.text in _SPEEDS else None
    if letter == "s":
        return READERS["spd"](number) if _is_cell(items, i - 2, "r", _SPEEDS) else None
    return READERS["ph"](number) if _is_cell(items, i - 2, "c", _CYCLES) else None


def _is_cell(items: Items, k: int, letters: str, figures: Container[str]) -> bool:
    touches = k in items.numbers and items.is_glued(k)
    return touches and items.words[k + 1] in letters and items.numbers[k].text in figures


def _in_supply(items: Items, i: int) -> bool:
    """`208-230 V, 60, single phase`, `115 V, 60, 7.4 A`, `all single phase 60`: cycles within the supply."""
    if "fact" in items.roles[i - 1] and _tells_phase(items, i - 1) and _is_cell_end(items, i + 1):
        return True
    if items.words[i - 1] != "," or items.words[i + 1] != ",":
        return False
    volts = items.roles[i - 2].get("unit") == "v" and "num" in items.roles[i - 3]
    volts = volts or (i - 2 in items.numbers and set(re.split("[-/]", items.numbers[i - 2].text)) <= _RATED)
    phase = _tells_phase(items, i + 2) or (
        "num" in items.roles[i + 2] and items.roles[i + 3].get("unit") == "ph"
    )
    amperes = "num" in items.roles[i + 2] and items.roles[i + 3].get("unit") in _AMPERES
    return volts and (phase or amperes)


def _tells_phase(items: Items, k: int) -> bool:
    return items.roles[k].get("fact", "")[:6] == "phase="


def _is_cell_end(items: Items, k: int) -> bool:
    return items.words[k] in _ENDS


def _is_current(items: Items, k: int) -> bool:
    """`3.6 A @`, `8.0 amps on 115 or 4.0 on`: amperes, or a figure in tenths that was just read as such."""
    if items.roles[k].get("unit") in _AMPERES:
        return True
    return k in items.numbers and items.used[k] and "." in items.numbers[k].text


def _behind_volts(items: Items, i: int) -> bool:
    """`230 volts 1/60 1/2 HP`, `1/4 HP 230 V 1/60`: behind the supply, and the power is another figure."""
    volts = items.roles[i - 1].get("unit") == "v" and "num" in items.roles[i - 2]
    if not volts:
        return False
    told = any(claim.field == "power_hp" for claim in items.claims)
    return told or ("num" in items.roles[i + 1] and items.roles[i + 2].get("unit") == "hp")


def _is_power(items: Items, i: int) -> bool:
    """`1/3 115 1075 CWLE`: a usual power right before a supply, where no size is told."""
    supply = items.numbers[i + 1].text
    if supply not in _RATED and not set(supply.replace("/", "-").split("-")) <= _RATED:
        return False
    behind = items.roles[i + 2]
    if items.plate or items.is_glued(i) or behind.get("after") in _LENGTHS or behind.get("unit") in _LENGTHS:
        return False
    near = [items.roles[j] for j in range(i - _SIZED, i)]
    sized = any("by" in roles or roles.get("subject", "other") != "other" for roles in near)
    return not sized and items.clause[i] == items.clause[i + 1]


def _is_of_figure(items: Items, i: int) -> bool:
    """`0.61 A (50) 0.55 A (60)`, `1300 rpm @ 50`: the cycles at which a figure holds."""
    bracket = items.words[i - 1] == "(" and items.words[i + 1] == ")"
    if not bracket and items.words[i - 1] not in _AT:
        return False
    return items.roles[i - 2].get("unit") in _CHANGING and "num" in items.roles[i - 3]
