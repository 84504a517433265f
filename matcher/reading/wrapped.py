"""Labels at the end of a line whose figures stand at the start of the next one.

HP 1/3  VOLTS
115  AMPS 5.2
"""

from matcher.reading.items import Items
from matcher.reading.quantities import READERS


def wrapped_label(items: Items, i: int) -> tuple[str | None, int]:
    """Return the label before the line that number `i` opens, and its item, if it has no figure yet.

    The figure before it in its line must have an owner, so that the label can't be its unit; what stands
    behind number `i` must be no unit of it, but nothing or the label of the next figure.
    """
    j = i - 2
    said = items.said(j, "unit")
    if said is None or said not in READERS or items.used[j] or not _is_bare(items, i):
        return None, j
    k = j - 1
    while items.words[k] not in ("\n", "") and k not in items.numbers:
        k -= 1
    owned = k in items.numbers and items.used[k]
    return (said if owned and READERS[said](items.numbers[i]) else None), j


def _is_bare(items: Items, i: int) -> bool:
    unit = items.said(i + 1, "after") or items.said(i + 1, "unit")
    number = items.numbers.get(i + 2)
    return unit is None or (unit in READERS and number is not None and bool(READERS[unit](number)))
