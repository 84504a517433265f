"""Whose a length is: the shaft's, the body's, the leads', a bolt circle's, or something else's.

In a clause a length belongs to the subject before it, or behind it when the clause starts with the
figure (`1/2 in. keyed shaft`); a clause without a subject goes on with the one before it, in the same
segment (`shaft 5/8 keyed, 1-7/8 long`); a line without one belongs to the heading above it.
"""

from bisect import bisect_left
from collections.abc import Iterator

from matcher.reading.items import Items
from matcher.reading.measure import Length
from matcher.reading.owner import LENGTHS

THICKEST_SHAFT = 1.63  # inch; this trade's frames end at 1-5/8
_OF_LENGTHS = frozenset({"subject", "leads", "fact", "weak"})
_NEAR = 6
_NOUNS_BEHIND = frozenset({"other", "body_length", "bolt"})
_WITH_FIGURES = ("aspect", "flats", "fact", "weak")
_FAR = 60  # items
_SHORT = 6  # items before the figure on a line under a heading
_SIZES = frozenset({"dims", "dimensions", "size", "total"})
_LEFT_OUT = frozenset({"without", "w/o", "less", "minus", "excluding", "excl", "except", "sans", "ohne"})
_COUNTED = frozenset({"including", "incl", "counting", "include", "count", "w/", "with"})
_KEYS = frozenset({"key", "keys"})
_WHO_CAN = frozenset({"i", "you", "we", "it", "that", "which", "they", "who", "shaft", "motor", "he", "she"})
_TO_DO = frozenset(
    {
        "be",
        "cut",
        "run",
        "ship",
        "deliver",
        "meet",
        "get",
        "do",
        "work",
        "have",
        "use",
        "send",
        "test",
        "mount",
    }
    | {"take", "go", "also"}
)
_WITH = frozenset({"w/", "with"})
_ENDINGS = {"with": "other", "w/": "other", "without": "body_length", "w/o": "body_length"}
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
    if subject == "shaft" and "fact" not in roles and "flats" not in roles:
        return _beside_shaft(items, j)
    if roles.get("fact") == "mounting=cradle" and "ring" in items.words[j] and subject is None:
        return _beside_ring(items, j)
    if items.words[j] == "can" and _is_verb(items, j):
        return None
    if subject == "other" and items.words[j] == "incl shaft" and items.scan.raw[items.last[j]][0] == "S":
        return "shaft"  # `cap incl. Shaft 12.7 mm`
    if subject == "shaft_length" and "shaft" not in items.word(j) and _of_studs(items, j):
        return "other"
    return None if subject == "body" and items.word(j) == "od" and _is_thin(items, j) else subject


_WIDEST_RING = 3.0  # inch


def _beside_ring(items: Items, j: int) -> str | None:
    """`resilient rings 2-1/2 in. dia`: the ring's diameter, not the motor's."""
    number = items.numbers.get(items.skip(j + 1, 1))
    return "other" if number and number.value and number.value <= _WIDEST_RING else None


def _is_verb(items: Items, j: int) -> bool:
    """`I can cut it to 4`, `can be cut`."""
    return items.word(j - 1) in _WHO_CAN or items.word(j + 1) in _TO_DO


def _of_studs(items: Items, j: int) -> bool:
    """`through bolts stick out 1-1/2 in.`"""
    return any(
        items.said(k, "fact") == "mounting=studs" or items.word(k) in ("bolts", "studs", "bolt", "stud")
        for k in range(max(0, j - 4), j)
        if items.clause[k] == items.clause[j]
    )


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
    if word == "no" and (items.has(k - 1, "aspect") or items.said(k - 1, "after") in LENGTHS):
        return "body_length"  # `6-1/8 long no shaft`
    if word in _LEFT_OUT or (word in _COUNTED and items.word(k - 1) in _NOT):
        return "body_length"
    if word in _COUNTED and (word not in _WITH or items.said(k - 1, "subject") in ("other", "body_length")):
        return "other"
    figure = items.said(k - 1, "after") in LENGTHS or items.has(k - 1, "num")
    return "other" if word in _WITH and figure and not items.has(items.skip(j + 1, 1), "num") else "shaft"


class Subjects:
    """The items of a text that say whose a length is, found once, and asked for every figure."""

    def __init__(self, items: Items) -> None:
        self.items = items
        roles = items.roles
        self.places = [i for i in items.active if not _OF_LENGTHS.isdisjoint(roles[i])]

    def of(self, one: Length, last: int) -> tuple[str | None, bool]:
        """Return whose the figures from `one` to item `last` are, and whether their own clause says so."""
        items, first = self.items, one.item
        labelled = subject_at(items, one.label) if items.clause[one.label] != items.clause[first] else None
        behind = self._behind(first, last)
        if labelled and not (behind and behind[1] == last + 1):
            return labelled, True
        if _is_stud(items, one.label) and one.has_unit and not self._names(behind, last):
            return "other", True  # `studs 2.25" shaft 1/2" x 6`: how far they stick out
        if items.word(last + 1) in _ENDINGS and self._ends_clause(last + 1):
            return _ENDINGS[items.word(last + 1)], True  # `5-3/4 without`
        before = self._before(first)
        if behind and self._owns(one, last, before, behind):
            named = _is_shaft_length(items, one, behind[1]) and before is None
            return ("shaft" if named and leads_on(items, behind[1]) else behind[0]), True
        if before is not None:
            return subject_at(items, before), True
        earlier = self._earlier(first)
        if earlier is not None:
            return earlier or None, False
        return _heading(items, first), True

    def _names(self, behind: tuple[str, int] | None, last: int) -> bool:
        """Say whether a figure behind studs has its own name: `studs 5-1/2 can`, `studs 3-3/8 BC`."""
        if behind is None or self.items.has(self.items.skip(behind[1] + 1, 1), "num"):
            return False
        return behind[0] == "bolt" or (behind[0] == "body" and behind[1] == last + 1)

    def _owns(self, one: Length, last: int, before: int | None, behind: tuple[str, int]) -> bool:
        """Say whether a figure is rather the subject's behind it than the one's before, if any."""
        items, first = self.items, one.item
        subject, place = behind
        if before is None:
            if subject == "leads" and leads_on(items, place):
                return False  # `1/2 X 5 LEADS 36`
            begins = leads_on(items, place) and _begins_sentence(items.raw(place))
            return not (begins and self._earlier(first))  # `Shaft 1/2, flat, 5 in Body 5.5`
        if leads_on(items, place):
            # `motor diameter 5.6 shell length 5.9`
            return _is_spent(items, before, first, joined=False) and subject not in _NOUNS_BEHIND
        near = place - last <= (3 if items.word(place) == "shaft" else 2)  # `10 in. with the shaft`
        if near and subject in _NOUNS_BEHIND:
            return True
        if place == last + 1 and subject != "shaft" and _has_figure(items, before, first):
            return True  # `body 5.5 x 5 28 in. leads`
        if place == last + 1 and items.word(before) in _SIZES:
            return True  # `dims 5.6 x 6 body`
        return _is_spent(items, before, first, joined=near)

    def _ends_clause(self, j: int) -> bool:
        items = self.items
        return j + 1 >= len(items) or items.clause[j + 1] != items.clause[j]

    def _before(self, first: int) -> int | None:
        """Return the nearest subject before a figure in its clause."""
        for place in self._places_before(first, self.items.clause):
            if subject_at(self.items, place):
                return place
        return None

    def _places_before(self, first: int, parts: list[int]) -> Iterator[int]:
        """Yield the places before a figure in its own clause or segment, the nearest first."""
        for k in range(bisect_left(self.places, first) - 1, -1, -1):
            place = self.places[k]
            if parts[place] != parts[first] or place < first - _FAR:
                return
            yield place

    def _earlier(self, first: int) -> str | None:
        """Return the subject of a clause before, in the same segment."""
        items = self.items
        for place in self._places_before(first, items.segment):
            said = subject_at(items, place)
            if said and items.words[place] not in _KEYS:
                return said
            if items.clause[place] == items.clause[first] and _is_mounting(items, place):
                # `studs on a 3-3/8 ...` is no longer about the shaft before
                return "other" if first - place == 1 and "stud" in items.word(place) else ""
        return None

    def _behind(self, first: int, last: int) -> tuple[str, int] | None:
        """Return the next subject behind a figure in its clause, before the next figure."""
        items = self.items
        for k in range(bisect_left(self.places, last + 1), len(self.places)):
            place = self.places[k]
            if place > last + _NEAR or items.clause[place] != items.clause[first]:
                return None
            said = subject_at(items, place)
            if said and items.words[place] not in _KEYS:
                return None if any(items.has(j, "num") for j in range(last + 1, place + 1)) else (said, place)
        return None


def leads_on(items: Items, j: int) -> bool:
    """`1/2 length 5`, `1/2 shaft length: 5`: what item `j` says is the next figure's."""
    return items.has(j + 1, "num") or (items.word(j + 1) in (":", "=") and items.has(j + 2, "num"))


def _begins_sentence(raw: str) -> bool:
    return raw[:1].isupper() and raw[1:2].islower()


def _is_shaft_length(items: Items, one: Length, j: int) -> bool:
    return (
        items.said(j, "subject") == "shaft_length"
        and "shaft" in items.word(j)
        and one.inches <= THICKEST_SHAFT
    )


def _is_mounting(items: Items, j: int) -> bool:
    roles = items.roles[j]
    return "mounting" in roles.get("fact", "") or "mounting" in roles.get("weak", "")


def _is_stud(items: Items, j: int) -> bool:
    return items.word(j).endswith(("stud", "studs", "bolts")) and not items.has(j, "aspect")


def _is_spent(items: Items, before: int, first: int, *, joined: bool) -> bool:
    """Say whether the subject before already owns the figure before it (`1/2 shaft 5-5/8 body`)."""
    k = before - 1
    while k > before - 5 and not items.has(k, "num") and _belongs(items, k):
        k -= 1
    if k < 0 or items.clause[k] != items.clause[before] or not items.has(k, "num") or not items.used[k]:
        return False
    if joined and items.word(before + 1) in _JOINS:
        return True  # `a five-inch body with a half-inch shaft`
    return not items.has(first - 1, "fill") and first - before <= 2


def _belongs(items: Items, k: int) -> bool:
    """Say whether an item may stand between a figure and its subject (`1/2 in. keyed shaft`)."""
    return any(kind in items.roles[k] for kind in _WITH_FIGURES) or items.said(k, "after") in LENGTHS


def _has_figure(items: Items, before: int, first: int) -> bool:
    """Say whether the subject before has its figure behind it already: `body 5.5 x 5, 28 in. leads`."""
    return any(items.has(k, "num") and items.used[k] for k in range(max(before, first - _NEAR) + 1, first))


def _heading(items: Items, first: int) -> str | None:
    """Return the subject that stands alone on a line above the lines with its figures.

    Every line between must begin with an extent, a figure or a fact of the same kind.
    """
    j = _line_start(items, first, _SHORT)
    if (j and items.word(j - 1) != "\n") or not _goes_on(items, j):
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


def _line_start(items: Items, j: int, far: int = _FAR) -> int:
    low = max(0, j - far)
    while j > low and items.word(j - 1) != "\n":
        j -= 1
    return j


def _first_word(items: Items, j: int) -> int:
    return j + 1 if items.word(j) in _BULLETS else j


def _goes_on(items: Items, j: int) -> bool:
    roles = items.roles[_first_word(items, j)]
    return any(kind in roles for kind in _OWN_LINE)
