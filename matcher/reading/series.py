"""Figures told speed by speed: `high 1075, med 950, low 825`, `5.6 A on black, 3.2 A on red`.

They are the members of one list, of which no two contradict each other. The walk starts at the first word
for a speed and goes on as long as nothing but such words, figures, their units and signs stand there.
A plate's lines are `speed_lines`' affair.
"""

from itertools import pairwise

from matcher.reading.items import Items

_REACH = 60  # items
_FIELDS = {"rpm": "rpm", "a": "amps", "hp": "power_hp"}
_SIGNS = frozenset(",;./-()=:&\n")
_WORDS = frozenset(
    {"and", "to", "in", "wire", "lead", "then", "it", "draws", "pulls", "does", "runs", "turns"}
)
_NAMES = {
    **dict.fromkeys(("high", "hi"), "high"),
    **dict.fromkeys(("low", "lo"), "low"),
    **dict.fromkeys(("med", "medium", "mid", "middle"), "medium"),
    **dict.fromkeys(("med high", "medium high", "med hi", "medium hi", "mid high"), "medium high"),
    **dict.fromkeys(("med low", "medium low", "med lo", "medium lo", "mid low"), "medium low"),
}
_FEWEST = 3
_SLOWEST, _FASTEST = 300.0, 3600.0


def levels(items: Items, i: int, _value: str) -> None:
    """Claim the lists that a row of speeds gives, from its first word on."""
    if items.plate or items.used[i] or items.muted[i]:
        return
    said, figures = _walk(items, _start(items, i))
    if len(said) < 2:
        return
    _count(items, said)
    for quantity in ("rpm", "amps", "power_hp"):
        members = [k for k in figures if _quantity(items, k, figures) == quantity]
        if len(members) > 1 and _steps(items, members):
            _claim(items, quantity, members)
            for word in said:
                items.used[word] = True


def _count(items: Items, said: list[int]) -> None:
    """`hi, med and lo`: three speeds or more that are named are as many speeds."""
    names = {_NAMES.get(items.words[k].removeprefix("on ")) for k in said} - {None}
    if len(names) >= _FEWEST:
        items.claim("speeds", len(names), said[0], said[-1], 0)
        for k in said:
            items.used[k] = True


def _start(items: Items, i: int) -> int:
    """Return where the row begins: the figure may stand before its speed (`5.6 A on high`)."""
    bracket = items.words[i - 1] == "("  # `1075 (black), 950 (blue)`
    for k in (i - 1, i - 2, i - 3):
        near = items.clause[i] - items.clause[k] <= bracket
        if "num" in items.roles[k] and near and items.segment[k] == items.segment[i]:
            return k
        if not (items.roles[k].keys() & {"unit", "fill"}) and items.words[k] != "(":
            break
    return i


def _walk(items: Items, start: int) -> tuple[list[int], list[int]]:
    """Return the words for speeds and the single figures of the row."""
    said: list[int] = []
    names: set[str] = set()
    figures: list[int] = []
    for k in range(start, min(len(items), start + _REACH)):
        roles = items.roles[k]
        if "level" in roles:
            if items.words[k] not in names:
                said.append(k)
            names.add(items.words[k])
        elif "num" in roles:
            if len(items.numbers[k].atoms) == 1 or 0 < (items.numbers[k].value or 0) < 1:
                figures.append(k)
        elif not (roles.keys() & {"unit", "fill"} or items.words[k] in _SIGNS or items.words[k] in _WORDS):
            break
    return said, figures


def _quantity(items: Items, k: int, figures: list[int]) -> str | None:
    """Return what a figure of the row is: by its own unit, by its look, or as those beside it."""
    number, unit = items.numbers[k], _unit(items, k)
    value = number.value or 0.0
    if unit is None:
        speed = number.whole and value >= _SLOWEST
        unit = "rpm" if speed else "hp" if "/" in number.text else "a" if not number.whole else None
        if unit != "rpm" and unit not in (_label(items, figures[0]), *(_unit(items, j) for j in figures)):
            return None
    if unit == "rpm" and not _SLOWEST <= value <= _FASTEST:
        return None
    return _FIELDS.get(unit or "")


def _unit(items: Items, k: int) -> str | None:
    """Return the unit of a figure; an unknown one is no quantity of a row."""
    behind = items.roles[k + 1]
    said = behind.get("unit") or behind.get("after")
    return "a" if said == "A" else said


def _label(items: Items, k: int) -> str | None:
    """Return the unit that stands before the whole row: `Amps: high 6.4, low 2.9`."""
    return next((items.roles[j]["unit"] for j in range(k - 1, k - 5, -1) if "unit" in items.roles[j]), None)


def _steps(items: Items, members: list[int]) -> bool:
    """Say whether the figures go down (or up) all the way, as those of speeds do."""
    values = [items.numbers[k].value or 0.0 for k in members]
    return all(a > b for a, b in pairwise(values)) or all(a < b for a, b in pairwise(values))


def _claim(items: Items, quantity: str, members: list[int]) -> None:
    values = sorted((items.numbers[k].value or 0.0 for k in members), reverse=True)
    for k in members:
        items.used[k] = True
        if _unit(items, k):
            items.used[k + 1] = True
    first, last = members[0], members[-1]
    if quantity == "power_hp":
        items.claim(quantity, round(values[0], 4), first, last, 2)
        return
    items.claim(quantity, tuple(map(int, values)) if quantity == "rpm" else tuple(values), first, last)
    if quantity == "rpm":
        items.claim("speeds", len(values), first, last, 0)


HANDLERS = {"level": levels}
