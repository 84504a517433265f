"""Counts of what isn't for sale: pieces of one motor, motors that were sold, replaced or kept."""

from matcher.reading.items import Items

_NEAR = 7
_PARTS = frozenset({"mounting", "plug", "leads", "flats"})
_GONE = frozenset(
    {
        "used",
        "using",
        "needed",
        "replaced",
        "sold",
        "gone",
        "scrapped",
        "failed",
        "dead",
        "bad",
        "installed",
        "taken",
    }
)
_BE = frozenset({"were", "was", "are", "got", "have", "been", "went", "is", "had", "all"})


def are_others(items: Items, i: int) -> bool:
    """`120 of them were replaced`, `we sold 40 of them`, `lugs, 4 of them`: not what is for sale."""
    j = i + 1
    while items.word(j) in _BE:
        j += 1
    if j > i + 1 and items.word(j) in _GONE:
        return True
    part = False
    for k in range(i - 2, max(-1, i - 2 - _NEAR), -1):
        if items.segment[k] != items.segment[i]:
            break
        roles = items.roles[k]
        if "motor" in roles or "pieces" in roles:
            return False
        if items.word(k).split(" ")[-1] in _GONE and items.clause[k] == items.clause[i]:
            return True
        part = (
            part
            or "mounting" in roles.get("fact", "") + roles.get("weak", "")
            or not _PARTS.isdisjoint(roles)
        )
    return part
