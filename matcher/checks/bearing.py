"""Do its bearings suit the position of the shaft, and last as long?"""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = False
_SIDE = ("bearing", "shaft_position")
READS = Reads(old=_SIDE, new=_SIDE)
SETTLED = Reads(old=_SIDE, new=_SIDE)
_POSITION = {
    "horizontal": "with the shaft level",
    "up": "with the shaft up",
    "down": "with the shaft down",
    "any": "in any position",
}


def judge(pair: Pair) -> Finding | None:
    """Compare kinds of bearing and allowed positions."""
    old, new = pair.old, pair.new
    values = (_said(old.bearing, old.shaft_position), _said(new.bearing, new.shaft_position))
    return answer.finding("bearing", [_position(pair), _kind(pair)], values=values)


def _said(kind: str | None, position: str | None) -> str:
    return ", ".join(filter(None, (f"{kind} bearings" if kind else "", _POSITION.get(position or "", ""))))


def _position(pair: Pair) -> Answer:
    old, new = pair.old.shaft_position, pair.new.shaft_position
    if new == "any":
        return (
            answer.same("It runs in any position.") if old == new else answer.ok("It runs in any position.")
        )
    if new is None:
        return answer.unknown("In which positions it may run isn't said.", "shaft_position")
    if old is None:
        return answer.unknown(
            f"It runs {_POSITION[new]}; how the old one lies isn't known.", "old.shaft_position"
        )
    if old == new:
        return answer.same(f"It runs {_POSITION[new]}, as the old one.")
    if old == "any":
        why = f"It runs only {_POSITION[new]}; the old one could lie anyhow. How does it lie?"
        return answer.unknown(why, "old.shaft_position")
    why = (
        f"It runs only {_POSITION[new]}, the old one {_POSITION[old]}: oil leaves a bearing that lies wrong."
    )
    return answer.loses(0.6, why, poor=True)


def _kind(pair: Pair) -> Answer:
    old, new = pair.old.bearing, pair.new.bearing
    if new is None:
        return answer.unknown("Whether it has sleeve or ball bearings isn't said.", "bearing")
    if old is None:
        return answer.unknown(f"It has {new} bearings; what the old one has isn't known.", "old.bearing")
    if old == new:
        return answer.same(f"It has {new} bearings, as the old one.")
    words = f"It has {new} bearings, the old one {old}"
    if new == "ball":
        return answer.ok(f"{words}: a little louder, and it lasts.")
    return answer.loses(0.3, f"{words}: oil it, and expect a shorter life.")
