"""Do its plugs or leads go to what is there? A plug counts before leads."""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import both, inches
from matcher.limit import at_most
from matcher.motor import Motor

HARD = False
_SIDE = ("plug_pins", "leads", "lead_length_in")
READS = Reads(old=_SIDE, new=_SIDE)
SETTLED = Reads(old=_SIDE, new=_SIDE)
SPLICE = 0.4
"""Loss of leads where a plug was, or a plug where leads were."""
OTHER_PLUG = 0.7
"""Loss of plugs with other pins."""
SHORT_LEADS = 0.3
"""Loss of leads that may not reach."""
SHORTER_BY = 2.0
"""Inches that leads may be shorter than the old ones."""


def judge(pair: Pair) -> Finding | None:
    """Compare plugs, leads, and how far the leads reach."""
    values = (_said(pair.old), _said(pair.new))
    return answer.finding("connector", [_ends(pair), *_reach(pair)], values=values)


def _said(motor: Motor) -> str:
    if motor.plug_pins is not None:
        return f"plugs of {both(str(pins) for pins in motor.plug_pins)} pins"
    return "loose leads" if motor.leads else ""


def _ends(pair: Pair) -> Answer:
    old, new = _said(pair.old), _said(pair.new)
    if not new:
        return answer.unknown("Whether it has plugs or leads isn't said.", "plug_pins")
    if not old:
        return answer.unknown(f"It has {new}; what the old one has isn't known.", "old.plug_pins")
    if old == new:
        return answer.same(f"It has {new}, as the old one.")
    words = f"It has {new}, the old one {old}"
    if pair.old.plug_pins is not None and pair.new.plug_pins is not None:
        return answer.loses(OTHER_PLUG, f"{words}: it needs an adapter harness.", "harness")
    return answer.loses(SPLICE, f"{words}: splice them, or use an adapter harness.", "harness")


def _reach(pair: Pair) -> list[Answer]:
    old, new = pair.old.lead_length_in, pair.new.lead_length_in
    if old is None or new is None or at_most(old - new, SHORTER_BY):
        return []
    why = f"Its leads are {inches(new)} long, the old one's {inches(old)}: see that they reach."
    return [answer.loses(SHORT_LEADS, why)]
