"""Bearings, told from sleeves, bushings and balls that are none, and from those that are sold apart."""

from matcher.reading.denial import denied
from matcher.reading.items import Items

_SOLD_APART = frozenset({"upgrade", "conversion", "kit", "kits", "option", "optional", "extra", "available"})


_EITHER = frozenset({"or", "/"})
_MAY_BE_PARTS = frozenset({"bushing", "bushings", "sleeve", "ball"})
# `wire sleeve`, `rubber bushing`, `trailer ball`.
_OF_PARTS = frozenset(
    [
        "adapter",
        "adaptor",
        "braided",
        "cable",
        "cardboard",
        "cord",
        "foam",
        "insulating",
        "mount",
        "nylon",
        "paper",
        "plastic",
        "protective",
        "reducer",
        "reducing",
        "relief",
        "rubber",
        "shaft",
        "shrink",
        "steel",
        "step",
        "trailer",
        "wire",
        "wires",
    ]
)
# `ball valve`, `bushing to 5/8`.
_SHOWS_PART = frozenset(
    {"in the mount", "on leads", "on wires", "on the wires", "on the leads"}.union(
        [
            "adapter",
            "adaptor",
            "for",
            "game",
            "hitch",
            "included",
            "joint",
            "kit",
            "over",
            "point",
            "to",
            "valve",
        ]
    )
)


def bearing(items: Items, i: int, value: str) -> None:
    """`sleeve`, `ball`: not as a part that is sold apart or needed."""
    others = (items.said(i + 2, "bearing"), items.said(i - 2, "bearing"))
    wavers = not _EITHER.isdisjoint((items.word(i + 1), items.word(i - 1))) and any(
        other not in (None, value) for other in others
    )
    if not (denied(items, i) or wavers or _is_part(items, i) or _is_extra(items, i)):
        items.claim("bearing", value, i)


def _is_extra(items: Items, i: int) -> bool:
    """`Ball bearing upgrade +$12`, `kit #BB56`: something sold apart, or a part of its number."""
    return items.word(i + 1) in _SOLD_APART or (items.is_glued(i) and items.has(i + 1, "num"))


def _is_part(items: Items, i: int) -> bool:
    """`5/16 to 1/2 bushing`, `wire sleeve`, `ball valve`: no bearing of the motor."""
    if items.word(i) not in _MAY_BE_PARTS:
        return False
    if items.word(i - 1) in _OF_PARTS or items.word(i + 1) in _SHOWS_PART:
        return True
    if items.word(i) == "ball":
        return items.word(i - 1) == "a" and items.word(i - 2) in ("have", "had", "having")
    if items.word(i + 1) in ("on", "in") and items.word(i + 2) in ("the", "leads", "wires"):
        return True
    j = i - 2 if items.said(i - 1, "after") in ("in", "mm") else i - 1
    behind = items.numbers.get(i + 1)
    if behind is not None and behind.value is None:
        return True  # `sleeve 1/2 to 5/8`
    number = items.numbers.get(j)
    return number is not None and (number.value is None or items.word(j - 1) in ("to", "x", "by"))


HANDLERS = {"bearing": bearing}
