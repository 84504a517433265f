"""Supplies told one after the other, of which the motor takes either: `115 V / 230 V`, `460 Y / 230 D`."""

from matcher.numeral import numeral
from matcher.reading.items import Items
from matcher.reading.quantities import READERS, Given

_BETWEEN_VOLTS = frozenset(
    {"wye", "delta", "star", "/", "or", "&", "y", "d", "δ", "and", "-", "to", "thru", "through"}
)
_TO = frozenset({"-", "to", "thru", "through"})


def with_alternatives(items: Items, i: int, given: Given) -> Given:
    """Put `115 V / 230 V` together: the claim before is taken back into this one."""
    last = items.claims[-1] if items.claims else None
    if last is None or last.field != "volts" or i < 3 or items.clause[i] - last.clause > 1:
        return given
    k = i - 1
    while k >= 0 and (items.word(k) in _BETWEEN_VOLTS or items.has(k, "unit")):
        k -= 1
    if i - k < 3 or not items.has(k, "num") or items.span(k, k)[0] < last.span[0]:
        return given
    sign = "-" if items.word(i - 1) in _TO and str(last.value).isdigit() else "/"
    both = READERS["v"](numeral(f"{last.value}{sign}{given['volts']}"))
    if both and "volts" in both:
        items.claims.pop()
        return both
    return given
