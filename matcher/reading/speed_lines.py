"""Plates that give each speed a line of its own: its figures belong to one motor and contradict nothing.

HP   1/2        HIGH  1/2 HP  1075 RPM  7.2 A
     1/3        LOW   1/4 HP   825 RPM  3.9 A
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import takewhile

from matcher.numeral import Numeral, numeral
from matcher.reading.claim import Claim
from matcher.reading.items import LEADS_ON, NO_ROLES, Items
from matcher.reading.quantities import READERS

LISTED = {"hp": "–", "rpm": "/", "a": "/", "A": "/", "hz": "/", "v": "/"}
"""Quantities of which a plate may list several figures, and what stands between them."""
_FORMS = (
    re.compile(r"\d?-?\d/\d{1,2}"),
    re.compile(r"\d{0,2}\.\d{1,2}"),
    re.compile(r"[56]0"),
    re.compile(r"[1-9]\d{2,3}"),
)
_SPEEDS = re.compile(
    r"(?:MED(?:IUM)?|MID)?[- ]?(?:HIGH|HI|LOW|LO)|MED(?:IUM)?|MID|SPEED [1-5]|[1-5](?:ST|ND|RD|TH)", re.I
)
_COLOURS = frozenset(
    ["BLK", "BLACK", "BLU", "BLUE", "RED", "YEL", "YELLOW", "ORG", "ORANGE", "WHT", "WHITE", "BRN", "BROWN"]
) | frozenset(["GRN", "GREEN", "PUR", "PURPLE", "GRY", "GRAY", "VIO", "VIOLET"])
_COLOUR = re.compile(rf"[^A-Za-z\d]*(?:{'|'.join(sorted(_COLOURS))})\b", re.IGNORECASE)
_EDGE = re.compile(r"[^A-Za-z\d]*([A-Za-z]{2,6}(?:[- ](?:[A-Za-z]{2,4}|[1-5]))?|[1-5][A-Za-z]{2})\b")
_NAME_AND_FIGURE = 5
_MOST = 6
_SIGNS = frozenset("-:.=")
_MERGED = ("power_hp", "rpm", "amps")


def is_speed(words: str) -> bool:
    """Say whether words name a speed: `High`, `med-lo`, `3rd`."""
    return _SPEEDS.fullmatch(words) is not None


def stack_values(items: Items) -> None:
    """Make one list of figures that stand below each other or side by side, and belong to one label."""
    lines = lines_of(items)
    k = 0
    while k < len(lines):
        _skip_names(items, lines[k])
        _count_taps(items, lines[k])
        _join_row(items, lines[k])
        label, taken = _stack(items, lines, k)
        k += max(1, len(taken)) if label else 1


def _stack(items: Items, lines: list[list[int]], k: int) -> tuple[str, list[int]]:
    """Join the figures from line `k` down; return their quantity and items."""
    label, first = _labelled_end(items, lines[k])
    above = "" if label else _alone_above(items, lines, k)
    if not label:
        label, first = _named_speed(items, lines[k], above or "rpm")
    taken = [first] if label else []
    for line in lines[k + 1 : k + _MOST] if label else ():
        figure = _further(items, label, taken, line)
        if figure is None:
            break
        taken.append(figure)
    if len(taken) > 1:
        _join(items, label, taken)
        if above:
            _claim(items, above, first, len(taken))
    return label, taken


def _join(items: Items, label: str, taken: Sequence[int]) -> None:
    """Put the figures into the first one; the others give nothing by themselves."""
    items.numbers[taken[0]] = numeral(LISTED[label].join([items.numbers[i].text for i in taken]))
    for i in taken[1:]:
        items.roles[i] = NO_ROLES
        del items.numbers[i]


def _claim(items: Items, label: str, first: int, count: int) -> None:
    """Claim figures whose label stands on the line above them."""
    given = dict(READERS[label](items.numbers[first]) or {})
    if label != "v":
        given.setdefault("speeds", count)
    for field, value in given.items():
        items.claim(field, value, first, first, 0 if field == "speeds" else 1)
    items.used[first] = True


def _skip_names(items: Items, line: Sequence[int]) -> None:
    """`RPM HI 1090`: the name of a speed leads on from the label to its figure."""
    for k in range(1, len(line) - 1):
        label = items.said(line[k - 1], "unit")
        if label in LISTED and line[k + 1] in items.numbers and _SPEEDS.fullmatch(items.raw(line[k])):
            items.roles[line[k]] = LEADS_ON


def _count_taps(items: Items, line: Sequence[int]) -> None:
    """`TAPS 1 2 3 4 5`: as many as the last one counts."""
    start = next((k for k in range(1, len(line)) if items.word(line[k - 1]).endswith("taps")), len(line))
    row = list(takewhile(items.numbers.__contains__, line[start:]))
    if len(row) > 1 and [items.numbers[i].text for i in row] == [str(k) for k in range(1, len(row) + 1)]:
        items.numbers[row[0]] = numeral(str(len(row)))
        for i in row[1:]:
            items.roles[i] = NO_ROLES
            del items.numbers[i]
        items.claim("speeds", len(row), row[0])
        items.used[row[0]] = True


def _join_row(items: Items, line: Sequence[int]) -> None:
    """`RPM 1380 1620`, `VOLTS 208 230 AMPS 2`: figures of one form behind a label."""
    start = next((k for k in range(1, len(line)) if items.said(line[k - 1], "unit") in LISTED), len(line))
    rest = [i for i in line[start:] if items.word(i) != "|"]
    row = list(takewhile(items.numbers.__contains__, rest))
    label = items.said(line[start - 1], "unit") if row else None
    if label is None or not 2 <= len(row) <= _MOST or not _labels_next(items, rest[len(row) :]):
        return
    forms = {_form(items.numbers[i]) for i in row}
    fit = all(READERS[label](items.numbers[i]) for i in row)
    if len(forms) == 1 and None not in forms and fit:
        _join(items, label, row)


def _labels_next(items: Items, rest: Sequence[int]) -> bool:
    """Say whether what follows a row is nothing, or a label with its own figure; a unit is the row's."""
    if not rest:
        return True
    reader = READERS.get(items.said(rest[0], "unit") or "")
    own = items.numbers.get(rest[1]) if len(rest) > 1 else None
    return reader is not None and own is not None and bool(reader(own))


def _alone_above(items: Items, lines: list[list[int]], k: int) -> str:
    """Return the quantity of a label that stands alone (`LOAD AMPS:`) on the line above."""
    above = [i for i in lines[k - 1] if items.word(i) not in ".:"] if k else []
    label = items.said(above[-1], "unit") if above else None
    alone = label in LISTED and not any(i in items.numbers for i in above)
    return label if label and alone and len(above) <= _NAME_AND_FIGURE else ""


def lines_of(items: Items) -> list[list[int]]:
    """Return the items of each line, without its end."""
    lines: list[list[int]] = [[]]
    for i in range(len(items)):
        if items.word(i) == "\n":
            lines.append([])
        else:
            lines[-1].append(i)
    return lines


def _labelled_end(items: Items, line: Sequence[int]) -> tuple[str, int]:
    """Return the quantity and item of the labelled figure at the end of a line."""
    if len(line) < 2 or line[-1] not in items.numbers:
        return "", 0
    label = items.said(line[-2], "unit") or ""
    return (label, line[-1]) if label in LISTED and _form(items.numbers[line[-1]]) else ("", 0)


def _form(number: Numeral) -> re.Pattern[str] | None:
    return next((form for form in _FORMS if form.fullmatch(number.text)), None)


def _named_speed(items: Items, line: Sequence[int], label: str) -> tuple[str, int]:
    """Return the figure of a line of nothing but a speed's name and a figure (`HI 1075`, `825 LOW`)."""
    figures = [i for i in line if i in items.numbers]
    if len(figures) != 1 or not 1 < len(line) <= _NAME_AND_FIGURE:
        return "", 0
    said = [items.raw(i) for i in line if i not in figures]
    name = " ".join([word for word in said if word not in _SIGNS and word.upper() not in _COLOURS])
    number = items.numbers[figures[0]]
    fits = _form(number) is not None and READERS[label](number) is not None
    return (label, figures[0]) if fits and _SPEEDS.fullmatch(name) else ("", 0)


def _further(items: Items, label: str, taken: Sequence[int], line: Sequence[int]) -> int | None:
    """Return the one figure of a line, if it has the same form, is lower than the last, and possible."""
    figure = line[0] if len(line) == 1 else _named_speed(items, line, label)[1]
    if not line or figure not in items.numbers:
        return None
    last, number = items.numbers[taken[-1]], items.numbers[figure]
    lower = last.value is not None and number.value is not None and number.value < last.value
    fits = lower and _form(last) is _form(number) and READERS[label](number) is not None
    return figure if fits else None


def merge_speeds(claims: list[Claim], text: str) -> list[Claim]:
    """Return the claims with the figures of lines that each begin or end with the name of a speed in one."""
    spans = _named_lines(text)
    if len(spans) < 2:
        return claims
    merged = list(claims)
    for field in _MERGED:
        found = [claim for claim in merged if claim.field == field and _inside(claim, spans)]
        if len({claim.span for claim in found}) > 1:
            merged = [claim for claim in merged if claim not in found]
            merged += _together(field, found)
    return merged


def _named_lines(text: str) -> list[tuple[int, int]]:
    """Return the spans of the lines that name a speed and hold figures, each another one."""
    spans: dict[str, tuple[int, int]] = {}
    at = 0
    for line in text.split("\n"):
        name = _speed_of(line)
        if name and any(map(str.isdigit, line)):
            spans.setdefault(name, (at, at + len(line)))
        at += len(line) + 1
    return list(spans.values())


def _speed_of(line: str) -> str:
    """Return the name of a speed at either end of a line."""
    if colour := _COLOUR.match(line):
        line = line[colour.end() :]
    found = _EDGE.match(line)
    ends = [found[1], found[1].split(" ")[0]] if found else []
    words = next((end for end in (*ends, *line.split()[-1:]) if _SPEEDS.fullmatch(end.strip("()"))), "")
    return words.strip("()").upper()


def _inside(claim: Claim, spans: Iterable[tuple[int, int]]) -> bool:
    return any(start <= claim.span[0] < end for start, end in spans)


def _together(field: str, claims: Sequence[Claim]) -> list[Claim]:
    first = claims[0]
    if field == "power_hp":
        return [replace(first, value=max(float(str(claim.value)) for claim in claims))]
    lists = [claim.value for claim in claims if isinstance(claim.value, tuple)]
    values = tuple(sorted({value for listed in lists for value in listed}, reverse=True))
    joined = [replace(first, value=values)]
    if field == "rpm" and len(values) > 1:
        joined.append(replace(first, field="speeds", value=len(values), strength=0))
    return joined
