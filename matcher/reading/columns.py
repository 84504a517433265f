"""Plates that print a line of labels over a line of values: bring each value behind its label.

HP     VOLTS     PH    HZ
1      115/230   1     60

Some print the labels under the values; the way round in which more values fit their labels counts. Further
rows under one line of labels are the other speeds of the same motor.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise, takewhile

from matcher.numeral import numeral
from matcher.reading.column_cells import Line, Pair, fit, head_and_body, is_label
from matcher.reading.items import NO_ROLES, Items

_FEWEST = 3
_MOST_ROWS = 8
_POINTS = frozenset(".:/,-|")
_LISTED = {"hp": "–", "rpm": "/", "a": "/", "A": "/", "v": "/", "hz": "/"}
"""Quantities of which a plate has one for each speed, and what stands between them in a list."""


@dataclass(frozen=True, slots=True)
class _Block:
    """The lines `first` to `last`: the pairs of the first row, and of rows that repeat their labels."""

    first: int
    last: int
    pairs: list[Pair]
    more: list[list[Pair]]


def pair_columns(items: Items) -> None:
    """Reorder the items of such lines to label, value, label, value; each pair a segment of its own."""
    lines = _lines(items)
    heads = [_head(items, line) for line in lines]
    if not any(heads):
        return
    over, under = _over(items, lines, heads), _under(items, lines, heads)
    chosen = under if _fit(items, under) > max(0, _fit(items, over)) else over
    lists = _lists(items, lines, heads)
    if _fit(items, lists) > _fit(items, chosen):
        chosen = lists
    if chosen:
        _bring_together(items, lines, {block.first: block for block in chosen})


def _lines(items: Items) -> list[Line]:
    lines: list[Line] = [[]]
    for i in range(len(items)):
        lines[-1].append(i)
        if items.word(i) == "\n":
            lines.append([])
    return lines


def _plain(items: Items, line: Line) -> Line:
    """Return a line without its end."""
    return line[:-1] if line and items.word(line[-1]) == "\n" else line


def _head(items: Items, line: Line) -> Line:
    """Return the items of a line of labels and nothing else, without the points of abbreviations."""
    plain = [i for i in _plain(items, line) if items.word(i) not in _POINTS]
    if (
        len(plain) > _FEWEST - 1
        and not items.roles[plain[0]]
        and len(items.scan.gaps[items.last[plain[0]]]) > 1
    ):
        plain = plain[1:]  # `OAKMERLE    FRAME  HP`: the maker's name stands in the first column
    return plain if plain and all(is_label(items, i) for i in plain) else []


def _over(items: Items, lines: list[Line], heads: list[Line]) -> list[_Block]:
    """Return the blocks in which labels stand over their values."""
    blocks: list[_Block] = []
    k = 0
    while k + 1 < len(lines):
        pairs = head_and_body(items, heads[k], _plain(items, lines[k + 1])) if not heads[k + 1] else []
        if pairs:
            more = _rows(items, heads[k], lines[k + 2 : k + 2 + _MOST_ROWS]) if len(pairs) > 1 else []
            blocks.append(_Block(k, k + 1 + len(more), pairs, more))
            k += 1 + len(more)
        k += 1
    return blocks or _alone(items, lines, heads, 1)


def _under(items: Items, lines: list[Line], heads: list[Line]) -> list[_Block]:
    """Return the blocks in which labels stand under their values."""
    blocks: list[_Block] = []
    for k in range(1, len(lines)):
        taken = blocks and blocks[-1].last == k - 1
        pairs = [] if taken or heads[k - 1] else head_and_body(items, heads[k], _plain(items, lines[k - 1]))
        if pairs and fit(items, pairs) >= max(2, len(pairs) - 1):
            blocks.append(_Block(k - 1, k, pairs, []))
    return blocks or _alone(items, lines, heads, -1)


def _alone(items: Items, lines: list[Line], heads: list[Line], step: int) -> list[_Block]:
    """Return the blocks of labels that stand alone on their lines, each value on the next (last) line.

    Several in a plate, else a line is only a line.
    """
    blocks: list[_Block] = []
    for k, head in enumerate(heads):
        if len(head) != 1 or not 0 <= k + step < len(lines):
            continue
        first = min(k, k + step)
        value = _plain(items, lines[k + step])
        if value and not heads[k + step] and not (blocks and blocks[-1].last >= first):
            blocks.append(_Block(first, first + 1, [(head, value)], []))
    sure = len(blocks) > 1 and _fit(items, blocks) == len(blocks)
    return blocks if len(blocks) > _FEWEST or sure else []


def _lists(items: Items, lines: list[Line], heads: list[Line]) -> list[_Block]:
    """Return the blocks of a column of labels with the column of their values under or over it."""
    blocks: list[_Block] = []
    k = free = 0
    while k < len(lines):
        count = len(list(takewhile(lambda head: len(head) == 1, heads[k:])))
        for first in (k + count, k - count) if count >= _FEWEST else ():
            pairs = (
                _listed(items, heads[k : k + count], lines[first : first + count]) if first >= free else []
            )
            if pairs:
                blocks.append(_Block(min(first, k), min(first, k) + 2 * count - 1, pairs, []))
                free = blocks[-1].last + 1
                break
        k = max(k + max(1, count), free)
    return blocks


def _listed(items: Items, heads: list[Line], lines: list[Line]) -> list[Pair]:
    """Return labels with values one for one; nothing unless each quantity has a figure that it can be."""
    values = [_plain(items, line) for line in lines]
    if len(values) != len(heads) or not all(values) or any(_head(items, line) for line in lines):
        return []
    pairs = list(zip(heads, values, strict=True))
    told = sum(items.said(head[0], "unit") is not None for head in heads)
    return pairs if told >= _FEWEST - 1 and fit(items, pairs) >= told else []


def _rows(items: Items, head: Line, lines: list[Line]) -> list[list[Pair]]:
    """Return the pairs of further rows under the same labels: every figure must fit."""
    rows: list[list[Pair]] = []
    for line in lines:
        pairs = head_and_body(items, head, _plain(items, line))
        if not pairs or fit(items, pairs) < len(pairs) - 1 or not any("num" in items.roles[i] for i in line):
            break
        rows.append(pairs)
    return rows


def _fit(items: Items, blocks: Sequence[_Block]) -> int:
    return sum([fit(items, block.pairs) for block in blocks])


def _bring_together(items: Items, lines: list[Line], blocks: dict[int, _Block]) -> None:
    order: Line = []
    segments: dict[int, int] = {}
    k = 0
    while k < len(lines):
        block = blocks.get(k)
        if block is None:
            order += lines[k]
            k += 1
            continue
        name = _name_before(items, lines[k], block.pairs[0][0][0])
        segments |= {i: items.segment[i] for i in name}
        order += name
        for place, (label, values) in enumerate(block.pairs):
            _join(items, label, values, [under for row in block.more for one, under in row if one == label])
            shared = place and _is_its_voltage(items, block.pairs[place - 1][0], label)
            number = 1000 * (k + 1) + place - bool(shared)
            end = _line_end(items, values[-1] + 1)  # else the next label would touch the value
            segments |= dict.fromkeys((*label, *values, *end), number)
            order += [*label, *values, *end]
        order += [i for line in lines[k : block.last + 1] for i in line if i not in segments]
        k = block.last + 1
    items.reorder(order, segments)


def _line_end(items: Items, i: int) -> Line:
    return [i] if items.word(i) == "\n" else []


def _name_before(items: Items, line: Line, label: int) -> Line:
    """Return what stands in a line before its first label, and the line's end; nothing where none does."""
    if label not in line[1:]:
        return []
    return [*line[: line.index(label)], *[i for i in line[-1:] if items.word(i) == "\n"]]


def _is_its_voltage(items: Items, before: Line, label: Line) -> bool:
    """A capacitor's voltage stays in one segment with its size."""
    is_size = "cap" in items.roles[before[-1]] or items.said(before[-1], "unit") == "uf"
    return is_size and items.said(label[-1], "unit") == "v"


def _has_figure(items: Items, line: Line) -> bool:
    return any(i in items.numbers for i in line)


def _is_unclear(items: Items, rows: list[Line]) -> bool:
    """`230/400` at 50 Hz over `460` at 60 Hz is neither a range nor one supply."""
    atoms = sorted({atom for row in rows for atom in items.numbers[row[0]].atoms})
    given = [set(items.numbers[row[0]].atoms) for row in rows]
    near = [{one, two} for one, two in pairwise(atoms) if two <= 1.25 * one]
    return any(not any(pair <= row for row in given) for pair in near)


def _join(items: Items, label: Line, values: Line, more: list[Line]) -> None:
    """Make one list of the figures of all rows; what the further rows hold gives nothing by itself."""
    sign = _LISTED.get(items.said(label[-1], "unit") or "")
    rows = [values, *more]
    if more and sign and all(row[0] in items.numbers and not _has_figure(items, row[1:]) for row in rows):
        figures = list(dict.fromkeys([items.numbers[row[0]].text for row in rows]))
        if items.said(label[-1], "unit") == "v" and _is_unclear(items, rows):
            more = rows
        items.numbers[values[0]] = numeral(sign.join(figures))
    for i in [i for row in more for i in row]:
        items.roles[i] = NO_ROLES
        items.numbers.pop(i, None)
