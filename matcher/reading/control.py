"""How an electronic motor is told what to do, and the loose leads of any motor."""

from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS

_ABROAD = ("cables", "câbles", "fils", "cavi", "hilos", "litzen")
_LEGEND = frozenset({"interchange", "swap", "swapping", "connect", "join", "switch", "line", "l1", "reverse"})

_NEED_LENGTH = frozenset({"lead", "wires", "leads", "lead wire", "pigtail", *_ABROAD})
_TAGS = frozenset({"plate", "tag", "sticker", "label", "code"})


def signal(items: Items, i: int, value: str) -> None:
    """`serial control`; the bare word only where no number follows (that would be a serial number)."""
    if items.word(i) == "serial":
        if items.plate:
            return
        j = items.skip(i + 1, 1)
        if items.word(j) in _TAGS:
            return
        if (
            items.has(j, "num")
            or items.word(j) in ("no", "number", "#", "nr", "nos")
            or items.raw(j).isupper()
        ):
            return
    items.claim("control_signal", value, i)


def leads(items: Items, i: int, _value: str) -> None:
    """Loose leads: said as such, or with a length; a wiring legend doesn't count."""
    word = items.word(i)
    if word in _NEED_LENGTH and not _has_length(items, i) and word != "leads":
        return
    if word == "leads" and items.word(i + 1) == "to" and not _has_length(items, i):
        return  # `leads to a quieter house`
    if items.has(i - 1, "no") or (_in_legend(items, i) and not _labels_length(items, i)):
        return
    items.claim("leads", True, i)


def _has_length(items: Items, i: int) -> bool:
    near = [*range(i + 1, min(len(items), i + 4)), *range(max(0, i - 3), i)]
    return any(
        items.said(j + 1, "after") in LENGTHS and items.clause[j] == items.clause[i]
        for j in near
        if "num" in items.roles[j]
    )


def _labels_length(items: Items, i: int) -> bool:
    """`CCW lead end Leads 22 in`, `48" leads, CCW lead end`: no part of what is said of the view."""
    if items.said(i - 1, "after") in LENGTHS and items.has(i - 2, "num"):
        return True
    j = items.skip(i + 1, 1)
    return items.has(j, "num") and items.said(j + 1, "after") in LENGTHS


def _in_legend(items: Items, i: int) -> bool:
    """Say whether the segment tells how to reverse or connect."""
    for j in range(max(0, i - 14), min(len(items), i + 8)):
        if items.segment[j] == items.segment[i] and (
            "either" in items.roles[j] or "view" in items.roles[j] or items.word(j) in _LEGEND
        ):
            return True
    return False


HANDLERS = {"signal": signal, "leads": leads}
