"""Plates that print a line of labels over a line of values: bring each value behind its label.

HP     VOLTS     PH    HZ
1      115/230   1     60
"""

from matcher.reading.items import Items

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
_FEWEST = 3
_GAP = 2

Line = list[int]


def pair_columns(items: Items) -> None:
    """Reorder the items of such line pairs to label, value, label, value; each pair a segment of its own."""
    lines = _lines(items)
    under = _one_under_another(items, lines)
    order: Line = []
    pairs: dict[int, int] = {}
    k = 0
    while k < len(lines):
        matched = _matched(items, lines[k], lines[k + 1]) if k + 1 < len(lines) else []
        matched = matched or under.get(k, [])
        if not matched:
            order += lines[k]
            k += 1
            continue
        for number, (label, values) in enumerate(matched):
            for i in (label, *values):
                pairs[i] = 1000 * (k + 1) + number
            order += [label, *values]
        order += [i for i in lines[k] + lines[k + 1] if i not in pairs]
        k += 2
    if pairs:
        items.reorder(order, pairs)


def _one_under_another(items: Items, lines: list[Line]) -> dict[int, list[tuple[int, Line]]]:
    """Return the values of labels that stand alone on their lines, each value on the line below.

    Several in a plate, else a line is only a line.
    """
    found: dict[int, list[tuple[int, Line]]] = {}
    for k in range(len(lines) - 1):
        head = [i for i in lines[k] if items.word(i) != "\n"]
        body = [i for i in lines[k + 1] if items.word(i) != "\n"]
        if k - 1 not in found and len(head) == 1 and _is_label(items, head[0]) and body:
            found[k] = [(head[0], body)]
    return found if len(found) > _FEWEST else {}


def _lines(items: Items) -> list[Line]:
    lines: list[Line] = [[]]
    for i in range(len(items)):
        lines[-1].append(i)
        if items.word(i) == "\n":
            lines.append([])
    return lines


def _matched(items: Items, head: Line, body: Line) -> list[tuple[int, Line]]:
    """Return the labels of a line with the values under each; nothing when the lines are no such pair."""
    labels = [i for i in head if items.word(i) != "\n"]
    if len(labels) < _FEWEST or any("num" in items.roles[i] or not _is_label(items, i) for i in labels):
        return []
    cells = _cells(items, body, _GAP)
    if len(cells) != len(labels):
        cells = _cells(items, body, 1)
    if len(cells) != len(labels):
        return []
    return list(zip(labels, cells, strict=True))


def _is_label(items: Items, i: int) -> bool:
    return not _LABELS.isdisjoint(items.roles[i]) or items.word(i) in ("time", "duty", "type", "rating")


def _cells(items: Items, line: Line, gap: int) -> list[Line]:
    """Split a line where at least `gap` blanks stand."""
    cells: list[Line] = [[]]
    for i in line:
        if items.word(i) == "\n":
            continue
        cells[-1].append(i)
        if len(items.scan.gaps[items.last[i]]) >= gap:
            cells.append([])
    return [cell for cell in cells if cell]
