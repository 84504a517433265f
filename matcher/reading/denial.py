"""Words that deny a thing, or say that it isn't supplied: `no band`, `band: none`, `keeping the cradle`."""

from matcher.reading.items import Items

_NEAR = 6  # items


def denied(items: Items, i: int) -> bool:
    """Say whether `no`, `not`, `without` stands right before an item, in its clause."""
    j = i - 1
    if items.word(j) in ("a", "an", "any", "the", "its", "your"):
        j -= 1
    return (items.has(j, "no") or items.has(j, "not")) and items.clause[j] == items.clause[i]


_NONE = frozenset({"no", "none", "n/a", "nil", "not"})
_CLOSE = frozenset({"(", "-"})


def absent(items: Items, i: int) -> bool:
    """Say whether its clause says that a thing isn't supplied: behind it, or before (`keeping the band`)."""
    clause = items.clause
    j, here = i + 1, clause[i]
    if items.word(j) in _CLOSE and j + 1 < len(items) and "mount" not in items.word(i):
        j, here = i + 2, clause[i + 2]
    while j <= i + _NEAR and j < len(items) and clause[j] == here:
        if "absent" in items.roles[j]:
            return True
        j += 1
    j = i - 1
    while j >= max(0, i - _NEAR) and clause[j] == clause[i]:
        if "withholds" in items.roles[j]:
            return True
        j -= 1
    return False


def is_none(items: Items, i: int) -> bool:
    """`Thermostat input: none`."""
    return items.word(i + 1) in (":", "=") and items.word(i + 2) in _NONE


_REFUSED = frozenset(
    {"rated", "approved", "listed", "suitable", "certified", "intended", "meant", "marked", "made", "built"}
    | {
        "for",
        "in",
        "as",
        "to",
        "be",
        "use",
        "used",
        "any",
        "a",
        "an",
        "or",
        "of",
        "safe",
        "atmospheres",
        "ul",
    }
)


def is_refused(items: Items, i: int) -> bool:
    """`not rated for hazardous locations`, `not to be used in ...`, `Explosion-proof? No!`."""
    if items.word(i + 1) == "?" and items.word(i + 2) in _NONE:
        return True
    j = i - 1
    while j > i - _NEAR - 2 and items.word(j) in _REFUSED:
        j -= 1
    return items.clause[j] == items.clause[i] and (items.has(j, "no") or items.has(j, "not"))
