"""Which way the shaft turns, and the end from which that is seen.

In a sentence each turn takes the view that stands with it: `CW facing shaft, CCW facing leads`,
`looking at the shaft it turns clockwise`. What several claims come to is settled in `settle_turn`.
"""

from matcher.reading.items import Claim, Items

OPPOSITE = {"cw": "ccw", "ccw": "cw"}


def turn(items: Items, i: int, value: str) -> None:
    """Claim a turn, with its view when the sentence gives one."""
    if "view" in items.roles[i]:
        return
    j = _view_of(items, i)
    view = items.roles[j]["view"] if j is not None else None
    items.claim("turn", (value, view), i, j)


def turn_and_view(items: Items, i: int, value: str) -> None:
    """`CWLE`, `CCW (ODE)`: both in one."""
    which, view = value.split()
    items.claim("turn", (which, view), i)


def either(items: Items, i: int, _value: str) -> None:
    """Reversible by plug, leads or program."""
    items.claim("turn", ("either", None), i)


def rev(items: Items, i: int, _value: str) -> None:
    """`REV` alone, or behind the label of the rotation: reversible."""
    before = items.skip(i - 1, -1)
    alone = (i == 0 or items.clause[i - 1] != items.clause[i] or not items.roles[i - 1]) and (
        i + 1 == len(items) or items.clause[i + 1] != items.clause[i]
    )
    if items.has(before, "rotlabel") or (alone and not items.has(i - 1, "num")):
        items.claim("turn", ("either", None), i)


def _view_of(items: Items, i: int) -> int | None:
    """Return the view that belongs to the turn at `i`: the next before another turn, else the last."""
    segment = items.segment[i]
    j = i + 1
    while j < len(items) and items.segment[j] == segment and not _is_turn(items, j):
        if "view" in items.roles[j] and not items.used[j]:
            items.used[j] = True
            return j
        j += 1
    j = i - 1
    while j >= 0 and items.segment[j] == segment and not _is_turn(items, j):
        if "view" in items.roles[j] and not items.used[j]:
            items.used[j] = True
            return j
        j -= 1
    return None


def _is_turn(items: Items, j: int) -> bool:
    return "turn" in items.roles[j] or "turnview" in items.roles[j] or "either" in items.roles[j]


def from_lead_end(claim: Claim) -> str | None:
    """Return a viewed turn as seen from the lead end; None for one without a view."""
    which, view = claim.value  # type: ignore[misc]
    if view is None:
        return None
    return which if view == "lead_end" else OPPOSITE[which]


def settle_turn(claims: list[Claim]) -> tuple[dict[str, tuple[object, Claim]], list[Claim]]:
    """Return the settled facts with the claims behind them, and the claims that contradict each other.

    Reversible beats a turn; a turn with a view beats a bare one; two views of one turn are one fact,
    told from the lead end.
    """
    for claim in claims:
        if claim.value[0] == "either":  # type: ignore[index]
            return {"turn": ("either", claim)}, []
    viewed = [claim for claim in claims if from_lead_end(claim)]
    if not viewed:
        kinds = {claim.value[0] for claim in claims}  # type: ignore[index]
        return ({"turn": (kinds.pop(), claims[0])}, []) if len(kinds) == 1 else ({}, claims)
    if len({from_lead_end(claim) for claim in viewed}) > 1:
        return {}, viewed
    told = next((claim for claim in viewed if claim.value[1] == "lead_end"), viewed[0])  # type: ignore[index]
    which, view = told.value  # type: ignore[misc]
    return {"turn": (which, told), "seen_from": (view, told)}, []


HANDLERS = {"turn": turn, "turnview": turn_and_view, "either": either, "rev": rev}
