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
from matcher.reading.subject import THICKEST_SHAFT, subject_at

_OF_LENGTHS = frozenset({"subject", "leads", "fact", "weak"})
_NEAR = 6
_NOUNS_BEHIND = frozenset({"other", "body_length", "bolt"})
_WITH_FIGURES = ("aspect", "flats", "fact", "weak")
_GAUGES = frozenset({"ga", "awg", "gauge", "ga ."})
"""`40 in. 18 ga leads`: how thick the wire is."""
_FAR = 60  # items
_SHORT = 6  # items before the figure on a line under a heading
_SIZES = frozenset({"dims", "dimensions", "size", "total"})
_KEYS = frozenset({"key", "keys"})
_ENDINGS = {"with": "other", "w/": "other", "without": "body_length", "w/o": "body_length"}
_FLANGES = (" b 5", " b 14")
"""`shaft 14 x 30 mm flange B5`: a kind of mounting, whose own figures stand behind it."""
_ARTICLES = frozenset({"the", "its", "a"})
_JOINS = frozenset({"with", "w/", "and", "&", "plus"})
_OWN_LINE = ("aspect", "num", "flats", "fact", "key", "subject")
_BULLETS = frozenset({"-", "*", "•", "–", ">", "·"})


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
        if (
            items.word(last + 1) == "("
            and subject_at(items, last + 2) == "bolt"
            and items.word(last + 3) == ")"
        ):
            return "bolt", True  # `holes 75 mm (PCD)`
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
        if subject == "shaft" and self._is_shafts(first, last, place):
            return True
        if place == last + 1 and items.word(before) in _SIZES:
            return True  # `dims 5.6 x 6 body`
        return _is_spent(items, before, first, joined=near)

    def _is_shafts(self, first: int, last: int, place: int) -> bool:
        """`wheel stuck on the 1/2 in. shaft`, `shell 5-3/8 long, not counting 5 in. of shaft`."""
        if place == last + 1:
            return self.items.word(first - 1) in _ARTICLES
        return place == last + 2 and self.items.word(last + 1) == "of"

    def _ends_clause(self, j: int) -> bool:
        items = self.items
        return j + 1 >= len(items) or items.clause[j + 1] != items.clause[j]

    def _before(self, first: int) -> int | None:
        """Return the nearest subject before a figure in its clause."""
        for place in self._places_before(first, self.items.clause):
            if subject_at(self.items, place) and not self._names_motor(place):
                return place
        return None

    def _names_motor(self, place: int) -> bool:
        """`blower motor 5/8 shaft`: a word of the motor's name has no lengths of its own."""
        items = self.items
        return items.said(place, "subject") == "other" and "motor" in items.roles[place + 1]

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
            if said and items.words[place] not in _KEYS and not self._names_motor(place):
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
            if said and items.words[place] not in _KEYS and not items.words[place].endswith(_FLANGES):
                between = range(last + 1, place + 1)
                counted = any(items.has(j, "num") and items.word(j + 1) not in _GAUGES for j in between)
                return None if counted else (said, place)
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
