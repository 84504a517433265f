"""Whose lengths a word speaks of: `shaft`, `can`, `leads`; and when it doesn't, beside its neighbours."""

from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS

THICKEST_SHAFT = 1.63  # inch; this trade's frames end at 1-5/8
_LEFT_OUT = frozenset(
    {
        "not counting",
        "not counting the",
        "not including",
        "not incl",
        "without",
        "w/o",
        "less",
        "minus",
        "excluding",
        "excl",
        "except",
        "sans",
        "ohne",
    }
)
_COUNTED = frozenset({"including", "incl", "counting", "include", "count", "w/", "with"})
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
_NOT = frozenset({"not", "don't", "without"})


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
    if "flats" in roles and "shaft" in items.words[j] and items.words[j + 1] in ("is", "measures"):
        return "other"  # `flat on shaft is 2 in. long`
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
