"""Plates that name each speed beside its figure: `RPM HI 1075 MED 950 LO 825`, `HI/LO AMPS 5.2/3.1`.

HI   1075  5.2
LO    825  3.3

The figures of one quantity make one list; what the bare ones are is told by their look, line by line.
"""

from collections.abc import Sequence
from itertools import takewhile

from matcher.numeral import Numeral, numeral
from matcher.reading.items import LEADS_ON, NO_ROLES, Items
from matcher.reading.quantities import READERS
from matcher.reading.speed_lines import LISTED, is_speed, lines_of

_SIGNS = frozenset({"/", "-", ",", ":", "=", "(", ")"})
_FEWEST = 2
_SPEEDS = (350, 3600)
_MOST_AMPS = 30


def name_speeds(items: Items) -> None:
    """Bring the figures of named speeds together, in one line or in lines below each other."""
    lines = lines_of(items)
    named = [{i for i in line if is_speed(items.word(i))} for line in lines]
    k = 0
    while k < len(lines):
        if len(named[k]) >= _FEWEST:
            _in_line(items, lines[k], named[k])
        rows = _rows(items, lines[k:], named[k:])
        if len(rows) >= _FEWEST and not (k and _is_head(items, lines[k - 1])):
            _claim_columns(items, rows)
        k += max(1, len(rows))


def _in_line(items: Items, line: Sequence[int], names: set[int]) -> None:
    """Read each run of named speeds of a line: `RPM HI 1075 LO 825  AMPS HI 6.2 LO 4.0`."""
    plain = [i for i in line if items.word(i) not in _SIGNS]
    k = 0
    while k < len(plain):
        if plain[k] in names:
            k += _in_a_row(items, plain, k, names) or _names_then_figures(items, plain, k, names)
        k += 1


def _in_a_row(items: Items, plain: Sequence[int], start: int, names: set[int]) -> int:
    """`RPM HI 1075 LO 825`, `HI 1075 LO 825 RPM`: one label, and a figure behind each name.

    Return how many items were read.
    """
    figures: list[int] = []
    k = start
    while k + 1 < len(plain) and plain[k] in names and plain[k + 1] in items.numbers:
        figures.append(plain[k + 1])
        k += 2
    before = items.said(plain[start - 1], "unit") if start else None
    behind = items.said(plain[k], "unit") if k < len(plain) else None
    label = before if before in LISTED and not _is_its_unit(items, plain[: start - 1], before) else behind
    if len(figures) < _FEWEST or label not in LISTED or not _fit(items, figures, label):
        return 0
    kept = figures[0] if label == before else figures[-1]
    items.numbers[kept] = _joined(items, figures, label)
    for i in plain[start:k]:
        if i != kept:
            items.roles[i] = LEADS_ON if i in names and i < figures[0] else NO_ROLES
            items.numbers.pop(i, None)
    return k - start


def _is_its_unit(items: Items, row: Sequence[int], unit: str) -> bool:
    """`1/2 HP HI 1075`: say whether the figure at the end of a row has the unit behind it."""
    number = items.numbers.get(row[-1]) if row else None
    return number is not None and READERS[unit](number) is not None


def _names_then_figures(items: Items, plain: Sequence[int], start: int, names: set[int]) -> int:
    """`AMPS HI/LO 5.2/3.1`: as many figures in one as names before it; return how many items were read."""
    run = list(takewhile(names.__contains__, plain[start:]))
    end = start + len(run)
    label = (items.said(plain[start - 1], "unit") if start else None) or ""
    figures = items.numbers.get(plain[end]) if end < len(plain) else None
    if figures is None or label not in LISTED or len(run) < _FEWEST or len(figures.atoms) != len(run):
        return 0
    given = READERS[label](figures)
    if not given or (label == "hp" and figures.whole):
        return 0
    items.used[plain[start - 1]] = items.used[plain[end]] = True
    for field, value in given.items():
        items.claim(field, value, plain[start - 1], plain[end])
    return len(run)


def _fit(items: Items, figures: Sequence[int], label: str) -> bool:
    return all(READERS[label](items.numbers[i]) for i in figures)


def _joined(items: Items, figures: Sequence[int], label: str) -> Numeral:
    return numeral(LISTED[label].join([items.numbers[i].text for i in figures]))


def _is_head(items: Items, line: Sequence[int]) -> bool:
    """Say whether a line is one of labels, which say what stands under them."""
    return not any(i in items.numbers for i in line) and any("unit" in items.roles[i] for i in line)


def _rows(items: Items, lines: Sequence[Sequence[int]], named: Sequence[set[int]]) -> list[list[int]]:
    """Return the bare figures of lines that are a speed's name and two figures or more, as many in each."""
    rows: list[list[int]] = []
    for line, names in zip(lines, named, strict=True):
        figures = [i for i in line if i in items.numbers]
        if len(names) != 1 or line[0] not in names or len(figures) != len(line) - 1 or len(figures) < _FEWEST:
            break
        if rows and len(figures) != len(rows[0]):
            break
        rows.append(figures)
    return rows


def _claim_columns(items: Items, rows: Sequence[Sequence[int]]) -> None:
    for column in zip(*rows, strict=True):
        label = _look(items, column)
        for i in column:
            items.used[i] = True
        given = READERS[label](_joined(items, column, label)) if label else None
        for field, value in (given or {}).items():
            items.claim(field, value, column[0], column[-1], 0 if field == "speeds" else 1)


def _look(items: Items, column: Sequence[int]) -> str:
    """Return what figures without a label can only be: speeds, tenths of amperes, fractions of a hp."""
    numbers = [items.numbers[i] for i in column]
    values = [number.value for number in numbers if number.value is not None]
    if len(values) < len(numbers):
        return ""
    if all(number.whole and not number.signs for number in numbers):
        return "rpm" if all(_SPEEDS[0] <= value <= _SPEEDS[1] for value in values) else ""
    if all(number.signs == "/" for number in numbers):
        return "hp"
    tenths = all("." in number.text for number in numbers) and max(values) <= _MOST_AMPS
    return "a" if tenths else ""
