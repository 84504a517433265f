"""Which way the shaft turns, and the end from which that is seen.

In a sentence each turn takes the view that stands with it: `CW facing shaft, CCW facing leads`,
`looking at the shaft it turns clockwise`. What several claims come to is settled in `settle_turn`.
"""

from typing import cast

from matcher.reading.claim import Claim
from matcher.reading.denial import denied
from matcher.reading.items import Items
from matcher.reading.view import end_at, view_of

_NEAR = 8  # items
_FEW = 5
_FAR = 40  # items
OPPOSITE = {"cw": "ccw", "ccw": "cw"}


def turn(items: Items, i: int, value: str) -> None:
    """Claim a turn, with its view when the sentence gives one."""
    spaced = " " in items.word(i) and items.raw(i) in ("C", "c")
    if (spaced and items.is_glued(i - 1)) or _is_not(items, i):
        return  # `R-C-W-Y-G`: terminals
    if "view" in items.roles[i] or _asks_which(items, i):
        return
    if _is_legend(items, i, value):
        items.claim("turn", ("either", None), i)
        return
    if _both_ways(items, i, value):
        items.claim("turn", ("either", None), i, i + 2)
        return
    if _by_hand(items, i):
        return
    found = view_of(items, i)
    if found:
        items.claim("turn", (value, found[0]), i, found[1])
    elif not _of_wheel(items, i):
        items.claim("turn", (value, None), i)


def turn_and_view(items: Items, i: int, value: str) -> None:
    """`CWLE`, `CCW (ODE)`: both in one."""
    which, view = value.split()
    if _is_not(items, i):
        return
    if _both_ways(items, i, which, view):
        items.claim("turn", ("either", None), i, i + 2)
        return
    items.claim("turn", (which, view), i)


def _is_not(items: Items, i: int) -> bool:
    """`CCW, not CW`; a `no` before a turn may as well correct the one before it."""
    return items.has(i - 1, "not") and items.clause[i - 1] == items.clause[i]


def _both_ways(items: Items, i: int, which: str, view: str = "") -> bool:
    """`CWLE/CCWLE`, `CW or CCW by program`: the other way is offered in the same breath.

    `CW LE / CCW SHAFT` is one way, told from either end.
    """
    other, _, end = (items.said(i + 2, "turnview") or items.said(i + 2, "turn") or "").partition(" ")
    if items.word(i + 1) not in ("/", "or", "&") or other != OPPOSITE[which] or items.muted[i]:
        return False
    end = end or items.said(i + 3, "view") or end_at(items, i + 3) or ""
    return not (view and end) or view == end


_WHEELS = ("wheel", "blade", "impeller", "prop", "propeller")
_SCREWS = ("screw", "nut", "bolt", "knob")  # `turn the set screw counterclockwise`
_CHOICE = frozenset(
    {
        "need",
        "which",
        "specify",
        "state",
        "choose",
        "tell",
        "check",
        "whether",
        "ordering",
        "order",
        "ask",
        "pick",
    }
)


def _of_wheel(items: Items, i: int) -> bool:
    """`CW wheel`, `blower wheel 10 x 8, CCW`: a wheel is made for one way too."""
    if items.word(i + 1).startswith(_WHEELS) and items.clause[i] == items.clause[i + 1]:
        return True
    if items.has(items.skip(i - 1, -1), "rotlabel") or "rot" in items.word(i):
        return False
    for j in range(i - 1, max(-1, i - 1 - _NEAR), -1):
        if items.segment[j] != items.segment[i] or "motor" in items.roles[j] or "unit" in items.roles[j]:
            return False
        word = items.word(j).removesuffix(" is")
        if word.endswith(_WHEELS) or (word.endswith(_SCREWS) and items.clause[j] == items.clause[i]):
            return True
    return False


def _by_hand(items: Items, i: int) -> bool:
    """`I spun it clockwise by hand`: how somebody turned it."""
    near = range(max(0, i - _FEW), min(len(items), i + _FEW))
    return any(
        items.word(j).endswith("by hand") or (items.word(j) == "hand" and items.word(j - 1) == "by")
        for j in near
    )


def _asks_which(items: Items, i: int) -> bool:
    """`Specify CW or CCW`, `check the rotation before ordering: CW or CCW`: for the buyer to say."""
    if " or " not in items.word(i) and items.word(i + 1) not in ("or", "/") and items.word(i - 1) != "or":
        return False
    near = range(max(0, i - _NEAR), i)
    return any(items.word(j) in _CHOICE and items.segment[j] == items.segment[i] for j in near)


def _is_legend(items: Items, i: int, which: str) -> bool:
    """`CCW: T1 to L1, T4 to L2. CW: swap T5 and T8`: how to wire it for each."""
    if items.word(i + 1) not in (":", "="):
        return False
    for j in range(i + 2, min(len(items), i + _FAR)):
        roles = items.roles[j]
        if "view" in roles or "look" in roles or "money" in roles:
            return False
        if roles.get("turn") == OPPOSITE[which]:
            return items.word(j + 1) in (":", "=")
    return False


def either(items: Items, i: int, _value: str) -> None:
    """Reversible by plug, leads or program; not `doesn't say reversible`, `rotation programmed CCW`."""
    refused = items.word(i + 1) in (":", "=", "?") and items.word(i + 2) in ("no", "none", "n")
    told = "program" in items.word(i) and {"turn", "turnview"} & items.roles[i + 1].keys()
    depends = items.word(i + 1)[:6] == "depend"  # `cw/ccw depends which end`
    if (
        told
        or refused
        or depends
        or denied(items, i)
        or (items.word(i)[-2:] == "cw" and _asks_which(items, i))
    ):
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
    point = items.scan.gaps[items.last[i]][:1] == "." and _opens_sentence(items, i + 1)
    cell = items.word(i - 1) in ("/", "|", ",", ".", "") and not items.has(i - 1, "num")
    if spec or (point and cell) or items.has(before, "rotlabel") or (alone and not items.has(i - 1, "num")):
        items.claim("turn", ("either", None), i)


def _opens_sentence(items: Items, i: int) -> bool:
    raw = items.raw(i)
    said = len(raw) > 2 or " " in items.word(i)  # in `Rev. No. 4` it is a revision
    return said and raw[0].isupper() and raw[1].islower()


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
