"""What a figure without unit or label is by the figures and words right beside it."""

from matcher.numeral import Numeral
from matcher.reading.items import Items
from matcher.reading.quantities import READERS, Given

_CYCLES_AND_PHASE = {
    text: (hertz, int(phase))
    for hertz in ("50", "60")
    for phase in ("1", "3")
    for sign in "/-"
    for text in (f"{hertz}{sign}{phase}", f"{phase}{sign}{hertz}")
}
_AT = frozenset({"@", "at"})
_AMPERES = frozenset({"a", "A"})
_POWERS = frozenset({"1/20", "1/15", "1/12", "1/10", "1/8", "1/6", "1/5", "1/4", "1/3", "1/2", "3/4"})
_SIZED = 4  # items
_CHANGING = frozenset({"a", "A", "rpm"})  # with the frequency
_CYCLES = frozenset({"50", "60"})
_RATED = frozenset(
    {"115", "120", "208", "220", "230", "240", "277", "380", "400", "440", "460", "480", "575"}
)
_LENGTHS = frozenset({"in", "mm", "cm", "ft", "m"})


def by_neighbours(items: Items, i: int, number: Numeral) -> Given | None:
    """What stands beside a figure tells what it is.

    `208-230 60 1PH`: cycles before the phase; `230V/60/1`: cycles and phase behind a stroke;
    `3.6 A @ 208, 3.4 @ 230`: amperes at their volts; `115, not 230`: volts.
    """
    roles, before, behind = items.roles, items.words[i - 1], items.words[i + 1]
    if number.text in _CYCLES and "num" in roles[i + 1] and roles[i + 2].get("unit") == "ph":
        return {"hertz": number.text}
    if number.text in _POWERS and "num" in roles[i + 1]:
        return READERS["hp"](number) if _is_power(items, i) else None
    if number.text in _CYCLES and _is_of_figure(items, i):
        return {"hertz": number.text}
    if number.text in _RATED:
        other = items.numbers[i + 2].text if "not" in roles[i + 1] and "num" in roles[i + 2] else ""
        title = "num" in roles[i - 1] and items.numbers[i - 1].text in _POWERS and _is_power(items, i - 1)
        if title or other in _RATED or (before in _AT and roles[i - 2].get("unit") in _AMPERES):
            return {"volts": number.text}
    if behind in _AT and "." in number.text and "num" in roles[i + 2] and items.numbers[i + 2].text in _RATED:
        return READERS["a"](number)
    supply = _CYCLES_AND_PHASE.get(number.text) if before in ("/", "-") else None
    if supply:
        return {"hertz": supply[0], "phase": supply[1]}
    return None


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
