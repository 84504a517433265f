"""Whose a length is: the shaft's, the body's, the leads', a bolt circle's, or something else's.

In a clause a length belongs to the subject before it, or behind it when the clause starts with the
figure (`1/2 in. keyed shaft`); a clause without a subject goes on with the one before it, in the same
segment (`shaft 5/8 keyed, 1-7/8 long`); a line without one belongs to the heading above it.
"""

from matcher.reading.items import Items
from matcher.reading.measure import Length
from matcher.reading.owner import LENGTHS

THICKEST_SHAFT = 1.63  # inch; this trade's frames end at 1-5/8
_FAR = 60  # items
_SIZES = frozenset({"dims", "dimensions", "size", "total"})
_LEFT_OUT = frozenset({"without", "w/o", "less", "minus", "excluding", "excl", "except", "sans", "ohne"})
_COUNTED = frozenset({"including", "incl", "counting", "include", "count", "w/", "with"})
_WITH = frozenset({"w/", "with"})
_NOT = frozenset({"not", "don't", "without"})
_JOINS = frozenset({"with", "w/", "and", "&", "plus"})
_OWN_LINE = ("aspect", "num", "flats", "fact", "key", "subject")
_BULLETS = frozenset({"-", "*", "•", "–", ">", "·"})


def subject_at(items: Items, j: int) -> str | None:
    """Return whose lengths item `j` speaks of, None if of nobody's."""
    roles = items.roles[j] if 0 <= j < items.count else {}
    if "leads" in roles:
        return "leads"
    subject = roles.get("subject")
    if subject == "shaft":
        return _beside_shaft(items, j)
    return None if subject == "body" and items.word(j) == "od" and _is_thin(items, j) else subject


def _is_thin(items: Items, j: int) -> bool:
    """`5/8" OD`: too thin for a motor, so the words before say of what."""
    number = items.numbers.get(j - 2 if items.said(j - 1, "after") in LENGTHS else j - 1)
    return number is not None and number.value is not None and number.value <= THICKEST_SHAFT


def _beside_shaft(items: Items, j: int) -> str:
    """`6 in. without the shaft`, `total length with shaft`: the motor's length, not the shaft's."""
    k = j - 1
    if items.word(k) in ("the", "a", "its"):
        k -= 1
    word = items.word(k)
    if word == "of" and items.said(k - 1, "subject") == "other":
        return "other"  # `to the tip of the shaft`
    if word in _LEFT_OUT or (word in _COUNTED and items.word(k - 1) in _NOT):
        return "body_length"
    if word in _COUNTED and (word not in _WITH or items.said(k - 1, "subject") in ("other", "body_length")):
        return "other"
    figure = items.said(k - 1, "after") in LENGTHS or items.has(k - 1, "num")
    return "other" if word in _WITH and figure and not items.has(items.skip(j + 1, 1), "num") else "shaft"


def subject_of(items: Items, one: Length, last: int) -> tuple[str | None, bool]:
    """Return whose the figures from `one` to item `last` are, and whether their own clause says so."""
    first = one.item
    labelled = subject_at(items, one.label) if items.clause[one.label] != items.clause[first] else None
    if labelled:
        return labelled, True
    behind = _behind(items, first, last)
    if behind and behind[1] - last <= 2 and behind[0] in ("other", "body_length", "bolt"):
        return behind[0], True
    before = _before(items, first)
    if behind and (before is None or _is_spent(items, before, first, joined=behind[1] - last <= 2)):
        return behind[0], True
    if before is not None:
        if behind and behind[1] - last <= 1 and items.word(before) in _SIZES:
            return behind[0], True  # `dims 5.6 x 6 body`
        return subject_at(items, before), True
    j = first - 1
    while j >= max(0, first - _FAR) and items.segment[j] == items.segment[first]:
        said = subject_at(items, j)
        if said:
            return said, False
        if items.clause[j] == items.clause[first] and "mounting" in items.roles[j].get("fact", ""):
            return None, False  # `studs on a 3-3/8 ...` is no longer about the shaft before
        j -= 1
    return _heading(items, first), True


def _before(items: Items, first: int) -> int | None:
    """Return the nearest subject before a figure in its clause."""
    j = first - 1
    while j >= max(0, first - _FAR) and items.clause[j] == items.clause[first]:
        if subject_at(items, j):
            return j
        j -= 1
    return None


def _behind(items: Items, first: int, last: int) -> tuple[str, int] | None:
    """Return the next subject behind a figure in its clause, before the next figure."""
    k = last + 1
    while (
        k < len(items)
        and items.clause[k] == items.clause[first]
        and k <= last + 6
        and not items.has(k, "num")
    ):
        said = subject_at(items, k)
        if said:
            return said, k
        k += 1
    return None


def _is_spent(items: Items, before: int, first: int, *, joined: bool) -> bool:
    """Say whether the subject before already owns the figure before it (`1/2 shaft 5-5/8 body`)."""
    for k in range(before - 1, max(-1, before - 4), -1):
        if items.clause[k] != items.clause[before]:
            return False
        if items.has(k, "num") and items.used[k]:
            if joined and items.word(before + 1) in _JOINS:
                return True  # `a five-inch body with a half-inch shaft`
            return not items.has(first - 1, "fill") and first - before <= 2
    return False


def _heading(items: Items, first: int) -> str | None:
    """Return the subject that stands alone on a line above the lines with its figures.

    Every line between must begin with an extent, a figure or a fact of the same kind.
    """
    j = _line_start(items, first)
    if not _goes_on(items, j):
        return None
    while j > max(0, first - _FAR):
        end = j - 1
        j = _line_start(items, end)
        at = _first_word(items, j)
        said = items.said(at, "subject")
        if said and items.word(at + 1) in (":", ".", "\n") and end - at <= 2:
            return said
        if said or not _goes_on(items, j):
            return None
    return None


def _line_start(items: Items, j: int) -> int:
    low = max(0, j - _FAR)
    while j > low and items.word(j - 1) != "\n":
        j -= 1
    return j


def _first_word(items: Items, j: int) -> int:
    return j + 1 if items.word(j) in _BULLETS else j


def _goes_on(items: Items, j: int) -> bool:
    roles = items.roles[_first_word(items, j)]
    return any(kind in roles for kind in _OWN_LINE)
