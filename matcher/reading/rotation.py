"""Which way the shaft turns, and the end from which that is seen.

In a sentence each turn takes the view that stands with it: `CW facing shaft, CCW facing leads`,
`looking at the shaft it turns clockwise`. What several claims come to is settled in `settle_turn`.
"""

from typing import cast

from matcher.reading.items import Claim, Items

_FAR = 40  # items
OPPOSITE = {"cw": "ccw", "ccw": "cw"}


def turn(items: Items, i: int, value: str) -> None:
    """Claim a turn, with its view when the sentence gives one."""
    if "view" in items.roles[i]:
        return
    if _both_ways(items, i, value):
        items.claim("turn", ("either", None), i, i + 2)
        return
    found = _view_of(items, i)
    if found:
        items.claim("turn", (value, found[0]), i, found[1])
    else:
        items.claim("turn", (value, None), i)


def turn_and_view(items: Items, i: int, value: str) -> None:
    """`CWLE`, `CCW (ODE)`: both in one."""
    which, view = value.split()
    if _both_ways(items, i, which):
        items.claim("turn", ("either", None), i, i + 2)
        return
    items.claim("turn", (which, view), i)


def _both_ways(items: Items, i: int, which: str) -> bool:
    """`CWLE/CCWLE`, `CW or CCW by program`: the other way is offered in the same breath."""
    other = items.said(i + 2, "turn") or (items.said(i + 2, "turnview") or "").partition(" ")[0]
    return items.word(i + 1) in ("/", "or", "&") and other == OPPOSITE[which] and not items.muted[i]


def either(items: Items, i: int, _value: str) -> None:
    """Reversible by plug, leads or program; not where it `doesn't say reversible`."""
    if items.has(i - 1, "no") and items.clause[i - 1] == items.clause[i]:
        return
    items.claim("turn", ("either", None), i)


def rev(items: Items, i: int, _value: str) -> None:
    """`REV` alone, or behind the label of the rotation: reversible."""
    before = items.skip(i - 1, -1)
    alone = (i == 0 or items.clause[i - 1] != items.clause[i] or not items.roles[i - 1]) and (
        i + 1 == len(items) or items.clause[i + 1] != items.clause[i]
    )
    spec = (
        items.raw(i) == "REV"
        and not items.has(i - 1, "num")
        and len(items.raw(i + 1)) > 2
        and not items.has(i + 1, "num")
    )
    if spec or items.has(before, "rotlabel") or (alone and not items.has(i - 1, "num")):
        items.claim("turn", ("either", None), i)


def _view_of(items: Items, i: int) -> tuple[str, int] | None:
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
    return None


def _view_at(items: Items, j: int) -> tuple[str, int] | None:
    """A view named by a phrase, or a word of looking and the thing looked at (`viewed from the spindle`)."""
    if items.used[j]:
        return None
    if "view" in items.roles[j]:
        items.used[j] = True
        return items.roles[j]["view"], j
    if "look" not in items.roles[j]:
        return None
    turned = False
    for k in range(j + 1, min(len(items), j + 8)):
        if items.segment[k] != items.segment[j] or items.has(k, "num"):
            return None
        roles = items.roles[k]
        if "view" in roles:
            items.used[k] = True
            return roles["view"], k
        turned = turned or "opposite" in roles
        end = (
            "lead_end"
            if "leads" in roles
            else "shaft_end"
            if roles.get("subject", "")[:5] == "shaft"
            else roles.get("end")
        )
        if end:
            items.used[k] = True
            return ("shaft_end" if turned == (end == "lead_end") else "lead_end"), k
    return None


def _is_turn(items: Items, j: int) -> bool:
    return "turn" in items.roles[j] or "turnview" in items.roles[j] or "either" in items.roles[j]


def said_turn(claim: Claim) -> tuple[str, str | None]:
    """Return turn and view of a claim on `turn`."""
    which, view = cast("tuple[str, str | None]", claim.value)
    return which, view


def from_lead_end(claim: Claim) -> str | None:
    """Return a viewed turn as seen from the lead end; None for one without a view."""
    which, view = said_turn(claim)
    if view is None:
        return None
    return which if view == "lead_end" else OPPOSITE[which]


def settle_turn(claims: list[Claim]) -> tuple[dict[str, tuple[object, Claim]], list[Claim]]:
    """Return the settled facts with the claims behind them, and the claims that contradict each other.

    Reversible beats a turn; a turn with a view beats a bare one; two views of one turn are one fact,
    told from the lead end.
    """
    for claim in claims:
        if said_turn(claim)[0] == "either":
            return {"turn": ("either", claim)}, []
    viewed = [claim for claim in claims if from_lead_end(claim)]
    if not viewed:
        kinds = {said_turn(claim)[0] for claim in claims}
        return ({"turn": (kinds.pop(), claims[0])}, []) if len(kinds) == 1 else ({}, claims)
    if len({from_lead_end(claim) for claim in viewed}) > 1:
        return {}, viewed
    told = next((claim for claim in viewed if said_turn(claim)[1] == "lead_end"), viewed[0])
    which, view = said_turn(told)
    return {"turn": (which, told), "seen_from": (view, told)}, []


HANDLERS = {"turn": turn, "turnview": turn_and_view, "either": either, "rev": rev}
