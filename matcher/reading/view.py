"""The end from which a turn is seen: named by a phrase, looked at, or pointing at the reader."""

from matcher.reading.items import Items

_VIEWER = frozenset({"you", "me", "your", "yourself", "myself"})
_TOWARDS = frozenset(
    {"facing", "faces", "pointing", "points", "toward", "towards", "at", "to", "away", "aimed"}
)
_FAR = 40  # items
_FEW = 5


def view_of(items: Items, i: int) -> tuple[str, int] | None:
    """Return the view that belongs to the turn at `i`, and its item.

    That is the next one before another turn in the sentence, else the last one before.
    """
    segment = items.segment[i]
    for step, stop in ((1, len(items)), (-1, -1)):
        for j in range(i + step, stop, step):
            if items.segment[j] != segment or abs(j - i) > _FAR or _is_turn(items, j):
                break
            found = _view_at(items, j)
            if found:
                return found
    return _in_next_cell(items, i)


def _in_next_cell(items: Items, i: int) -> tuple[str, int] | None:
    """`CCW; lead end`: a view that is all of the cell behind its turn."""
    j = i + 2
    alone = j < len(items) and items.segment[i + 1] == items.segment[j] == items.segment[i] + 1
    if not alone or items.word(i + 1)[:1].isalnum() or items.used[j]:
        return None
    if "view" not in items.roles[j]:
        return _looked_at(items, j) if "look" in items.roles[j] else None
    if j + 1 < len(items) and items.segment[j + 1] == items.segment[j]:
        return None
    items.used[j] = True
    return items.roles[j]["view"], j


def _view_at(items: Items, j: int) -> tuple[str, int] | None:
    """A view named by a phrase, or a word of looking and the thing looked at (`viewed from the spindle`)."""
    if items.used[j] or (items.doubted and items.clause[j] in items.doubted):
        return None
    if "view" in items.roles[j]:
        if _is_where(items, j):
            return None
        items.used[j] = True
        return items.roles[j]["view"], j
    facing = _facing_you(items, j)
    if facing:
        return facing, j
    return _looked_at(items, j) if "look" in items.roles[j] else None


def _looked_at(items: Items, j: int) -> tuple[str, int] | None:
    """Return the end named behind a word of looking, turned round by `opposite`."""
    turned = False
    for k in range(j + 1, min(len(items), j + 8)):
        if items.segment[k] != items.segment[j] or items.has(k, "num"):
            return None
        roles = items.roles[k]
        if "view" in roles:
            items.used[k] = True
            return roles["view"], k
        turned = turned or "opposite" in roles
        end = end_at(items, k)
        if end and roles.get("fact", "")[:15] == "shaft_position=":
            end = _end_on_top(items, j, k)
        if end:
            items.used[k] = True
            return ("shaft_end" if turned == (end == "lead_end") else "lead_end"), k
    return None


def _is_where(items: Items, j: int) -> bool:
    """`leads exit on the shaft end`, `studs at lead end`: where something is, not from where one looks."""
    for k in range(j - 1, max(-1, j - 1 - _FEW), -1):
        roles = items.roles[k]
        if items.clause[k] != items.clause[j] or "look" in roles or "rotlabel" in roles or _is_turn(items, k):
            return False
        if "leads" in roles or "mounting" in roles.get("fact", "") or items.word(k) in ("studs", "bolts"):
            return True
    return False


def end_at(items: Items, k: int) -> str | None:
    """Return the end of the motor that an item names (`shaft`, `leads`), as a view from there."""
    roles = items.roles[k]
    if "leads" in roles:
        return "lead_end"
    return "shaft_end" if roles.get("subject", "")[:5] == "shaft" else roles.get("end")


def _facing_you(items: Items, j: int) -> str | None:
    """`with the shaft pointing at you`, `the plug end towards me`, `shaft is facing away from you`."""
    end = end_at(items, j)
    if end is None:
        return None
    words = [items.word(k) for k in range(j + 1, j + 6) if items.segment[k : k + 1] == [items.segment[j]]]
    said = " ".join(words).split()[:5]
    if _VIEWER.isdisjoint(said) or _TOWARDS.isdisjoint(said):
        return None
    away = "away" in said
    return (
        ("shaft_end" if away else "lead_end") if end == "lead_end" else ("lead_end" if away else "shaft_end")
    )


def _end_on_top(items: Items, j: int, k: int) -> str | None:
    """`viewed from above, shaft up`: the end that is seen; None where the words don't say from where."""
    said = {items.word(n) for n in range(j, k + 4)}
    above = not said.isdisjoint({"above", "top", "from above", "down"})
    below = not said.isdisjoint({"below", "underneath", "under"})
    position = items.roles[k]["fact"].partition("=")[2]
    if above == below or position not in ("up", "down"):
        return None
    return "shaft_end" if above == (position == "up") else "lead_end"


def _is_turn(items: Items, j: int) -> bool:
    return "turn" in items.roles[j] or "turnview" in items.roles[j] or "either" in items.roles[j]
