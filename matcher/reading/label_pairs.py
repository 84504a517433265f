"""Labels with a stroke between them over figures with one: `VOLTS/AMPS 115/5.2`, `PH/HZ 1/60`."""

from matcher.numeral import numeral
from matcher.reading.items import Items
from matcher.reading.quantities import CAPACITOR_VOLTS, NOTHING, READERS, Given

_SIGNS = frozenset({"/", "-"})


def pair_labels(items: Items) -> None:
    """Give each figure of a run to its label, where there are as many and each label can have its figure."""
    for i, number in items.numbers.items():
        if "/" not in number.signs or i + 1 in items.numbers:
            continue
        pieces = number.text.split("/")
        labels = _labels(items, i, len(pieces))
        given = [_read(label, piece, labels) for label, piece in zip(labels, pieces, strict=False)]
        if len(set(labels)) == len(pieces) and all(given):
            for one in given:
                for field, value in one.items():
                    items.claim(field, value, i)
            first = items.skip(i - 1, -1) - 2 * (len(labels) - 1)
            items.used[first : i + 1] = [True] * (i + 1 - first)


def _read(label: str, piece: str, labels: list[str]) -> Given:
    """Return what a piece is; volts beside microfarads are a capacitor's."""
    number = numeral(piece)
    if label == "v" and "uf" in labels:
        return {"capacitor_vac": int(number.atoms[0])} if number.value in CAPACITOR_VOLTS else NOTHING
    return READERS[label](number) or NOTHING


def _labels(items: Items, i: int, count: int) -> list[str]:
    """Return the quantities of `count` labels with signs between them right before number `i`."""
    labels: list[str] = []
    j = items.skip(i - 1, -1)
    j -= items.word(j) == ":"
    while len(labels) < count:
        said = items.said(j, "unit")
        if said is None or said not in READERS:
            return []
        labels.insert(0, said)
        if len(labels) < count and items.word(j - 1) not in _SIGNS:
            return []
        j -= 2
    return labels if items.word(j + 1) not in _SIGNS and j + 1 not in items.numbers else []
