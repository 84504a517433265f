"""The cells of a line of labels and of a line of values, and which value belongs to which label."""

from collections.abc import Callable

from matcher.reading.items import Items
from matcher.reading.quantities import READERS

Line = list[int]
"""Items of one line."""
Pair = tuple[Line, Line]
"""A label (`HP`, `CAP MFD`) and its values."""

_LABELS = frozenset(
    {
        "unit",
        "before",
        "frame",
        "insclass",
        "amb",
        "encl",
        "brglabel",
        "rotlabel",
        "cap",
        "label",
        "protlabel",
        "time",
    }
)
_LABEL_WORDS = frozenset(
    {
        "time",
        "duty",
        "type",
        "rating",
        "cosφ",
        "cos",
        "pf",
        "eff",
        "code",
        "date",
        "rise",
        "design",
        "kva",
        "kg",
    }
)
_FEWEST = 3
_GAP = 2
_SIGNS = ("/", "|", ",", "-")
_TAB = 1000
"""Blanks that a tab counts for, where only tabs part cells."""
_WIDEST = 40
"""Labels in one line; a plate has a dozen."""


def is_label(items: Items, i: int) -> bool:
    """Say whether an item can be a label over or under a value."""
    return "num" not in items.roles[i] and (
        not _LABELS.isdisjoint(items.roles[i]) or items.word(i) in _LABEL_WORDS
    )


def head_and_body(items: Items, head: Line, body: Line) -> list[Pair]:
    """Return the labels of a line with the values of each; nothing when the lines are no such pair."""
    if not 2 <= len(head) <= _WIDEST or not 0 < len(body) <= 4 * _WIDEST:
        return []
    pairs = _paired(items, head, body)
    # Two labels alone are a heading only over figures that they can be.
    if len(pairs) >= _FEWEST or (pairs and (_all_fit(items, pairs, body) or _are_aligned(items, pairs))):
        return pairs
    return []


def _are_aligned(items: Items, pairs: list[Pair]) -> bool:
    """Say whether each value starts right under its label, far from the next one, and a figure fits."""
    starts = [(_place(items, label)[0], _place(items, values)[0]) for label, values in pairs]
    aligned = len(pairs) > 1 and starts[1][0] > 1 and all(one == two for one, two in starts)
    return aligned and all(_fits(items, *pair) >= 0 for pair in pairs) and fit(items, pairs) > 0


def _all_fit(items: Items, pairs: list[Pair], body: Line) -> bool:
    bare = all(len(values) == 1 and values[0] in items.numbers for _, values in pairs)
    return bare and len(body) == len(pairs) and fit(items, pairs) >= len(pairs) - 1


def _paired(items: Items, head: Line, body: Line) -> list[Pair]:
    if _has_tab(items, head) and _has_tab(items, body):
        return _by_place(items, _cells(items, head, _TAB), _cells(items, body, _TAB), _tab)
    alone = [[i] for i in head]
    signs = _between_signs(items, body)
    if len(signs) == len(alone) >= _FEWEST:
        return list(zip(alone, signs, strict=True))
    wide = _cells(items, head, _GAP)
    for labels, gap in ((alone, _GAP), (alone, 1), (wide, _GAP), (wide, 1)):
        cells = _cells(items, body, gap)
        if len(cells) == len(labels) + 1 and _is_name(items, cells[0]):
            cells = cells[1:]  # `HIGH 1/2 1075`: the first one names the row
        elif len(cells) == len(labels) + 1 and _is_name(items, cells[-1]):
            cells = cells[:-1]  # `1/2 1075 HIGH`
        if len(cells) == len(labels):
            return list(zip(labels, cells, strict=True))
    return _by_place(items, alone if len(wide) < len(head) else wide, _cells(items, body, _GAP), _place)


def _between_signs(items: Items, line: Line) -> list[Line]:
    """Split a line at the free-standing signs between its values: `1/2 / 115 / 1075`, `1/2, 115, 1075`."""
    for sign in _SIGNS:
        cells: list[Line] = [[]]
        for i in line:
            if items.word(i) == sign and items.scan.gaps[items.last[i]]:
                cells.append([])
            else:
                cells[-1].append(i)
        if len(cells) > 1:
            return cells if all(cells) else []
    return []


def _is_name(items: Items, cell: Line) -> bool:
    """Say whether a cell names its row: a word of no ratings (`HIGH`, `Delta`)."""
    return all(
        i not in items.numbers and _LABELS.isdisjoint(items.roles[i]) and "fact" not in items.roles[i]
        for i in cell
    )


def _has_tab(items: Items, line: Line) -> bool:
    return any("\t" in items.scan.gaps[items.last[i]] for i in line[:-1])


def _cells(items: Items, line: Line, gap: int) -> list[Line]:
    """Split a line where at least `gap` blanks stand."""
    cells: list[Line] = [[]]
    for i in line:
        cells[-1].append(i)
        between = items.scan.gaps[items.last[i]]
        if len(between) >= gap or "\t" in between:
            cells.append([])
    return [cell for cell in cells if cell]


def _by_place(
    items: Items, labels: list[Line], cells: list[Line], place: Callable[[Items, Line], tuple[int, int]]
) -> list[Pair]:
    """Return the pairs of lines with gaps: each value stands under just one label, and fits it."""
    spans = [place(items, label) for label in labels]
    pairs: list[Pair] = []
    for cell in cells:
        start, end = place(items, cell)
        near = [k for k, (one, two) in enumerate(spans) if one < end and start < two]
        if len(near) != 1:
            return []
        if pairs and pairs[-1][0] is labels[near[0]] and _is_parted(items, labels[near[0]]):
            pairs[-1] = (pairs[-1][0], [*pairs[-1][1], *cell])
        elif any(labels[near[0]] is label for label, _ in pairs):
            return []
        else:
            pairs.append((labels[near[0]], cell))
    whole = len(pairs) == len(labels) >= _FEWEST and all(_fits(items, *pair) >= 0 for pair in pairs)
    return pairs if whole or fit(items, pairs) >= min(2, len(pairs)) else []


def _is_parted(items: Items, label: Line) -> bool:
    """`ENCL     TYPE`: words that stand under two headings, though they make one label."""
    start, end = items.span(label[0], label[-1])
    return "  " in items.scan.text[start:end]


def _place(items: Items, cell: Line) -> tuple[int, int]:
    """Return where a cell starts and ends in its line."""
    start, end = items.span(cell[0], cell[-1])
    line = items.scan.text.rfind("\n", 0, start) + 1
    return start - line, end - line


def _tab(items: Items, cell: Line) -> tuple[int, int]:
    """Return behind how many tabs of its line a cell stands."""
    start, _ = items.span(cell[0], cell[0])
    tabs = items.scan.text.count("\t", items.scan.text.rfind("\n", 0, start) + 1, start)
    return tabs, tabs + 1


def fit(items: Items, pairs: list[Pair]) -> int:
    """Return how many figures their labels can be, less those that they can't."""
    return sum([_fits(items, label, values) for label, values in pairs])


def _fits(items: Items, label: Line, values: Line) -> int:
    quantity = items.said(label[-1], "before") or items.said(label[-1], "unit")
    number = items.numbers.get(values[0])
    reader = READERS.get(quantity or "")
    if reader is None or number is None:
        return 0
    return 1 if reader(number) is not None else -1
