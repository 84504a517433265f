"""Plates that give each speed a line of its own: its figures belong to one motor and contradict nothing.

HP   1/2        HIGH  1/2 HP  1075 RPM  7.2 A
     1/3        LOW   1/4 HP   825 RPM  3.9 A
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from matcher.numeral import Numeral, numeral
from matcher.reading.items import NO_ROLES, Claim, Items
from matcher.reading.quantities import READERS

_LISTED = {"hp": "–", "rpm": "/", "a": "/", "A": "/"}
_FORMS = (re.compile(r"\d?-?\d/\d{1,2}"), re.compile(r"\d{0,2}\.\d{1,2}"), re.compile(r"[1-9]\d{2,3}"))
_SPEEDS = re.compile(
    r"(?:MED(?:IUM)?|MID)?[- ]?(?:HIGH|HI|LOW|LO)|MED(?:IUM)?|MID|SPEED [1-5]|[1-5](?:ST|ND|RD|TH)", re.I
)
_EDGE = re.compile(r"[^A-Za-z\d]*([A-Za-z]{2,6}(?:[- ](?:[A-Za-z]{2,4}|[1-5]))?|[1-5][A-Za-z]{2})\b")
_NAME_AND_FIGURE = 4
_MERGED = ("power_hp", "rpm", "amps")


def stack_values(items: Items) -> None:
    """Make one list of a labelled figure that ends its line and the figures alone on the lines below."""
    lines = _lines(items)
    k = 0
    while k < len(lines):
        label, first = _labelled_end(items, lines[k])
        if not label:
            label, first = _named_speed(items, lines[k])
        taken = [first] if label else []
        while label and k + 1 < len(lines):
            figure = _further(items, label, taken, lines[k + 1])
            if figure is None:
                break
            taken.append(figure)
            k += 1
        if len(taken) > 1:
            texts = [items.numbers[i].text for i in taken]
            items.numbers[first] = numeral(_LISTED[label].join(texts))
            for i in taken[1:]:
                items.roles[i] = NO_ROLES
                del items.numbers[i]
        k += 1


def _lines(items: Items) -> list[list[int]]:
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
    return (label, line[-1]) if label in _LISTED and _form(items.numbers[line[-1]]) else ("", 0)


def _form(number: Numeral) -> re.Pattern[str] | None:
    return next((form for form in _FORMS if form.fullmatch(number.text)), None)


def _named_speed(items: Items, line: Sequence[int]) -> tuple[str, int]:
    """Return the figure of a line of nothing but a speed and its name (`HI 1075`, `825 LOW`)."""
    figures = [i for i in line if i in items.numbers]
    if len(figures) != 1 or not 1 < len(line) <= _NAME_AND_FIGURE:
        return "", 0
    name = " ".join([items.raw(i) for i in line if i not in figures and items.raw(i) != "-"])
    plain = _form(items.numbers[figures[0]]) is _FORMS[-1]
    return ("rpm", figures[0]) if plain and _SPEEDS.fullmatch(name) else ("", 0)


def _further(items: Items, label: str, taken: Sequence[int], line: Sequence[int]) -> int | None:
    """Return the one figure of a line, if it has the same form, is lower than the last, and possible."""
    figure = line[0] if len(line) == 1 else _named_speed(items, line)[1]
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
        if name and any(map(str.isdigit, line[len(name) :])):
            spans.setdefault(name, (at, at + len(line)))
        at += len(line) + 1
    return list(spans.values())


def _speed_of(line: str) -> str:
    """Return the name of a speed at either end of a line."""
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
