"""Does its enclosure suit the place: weather, dirt, and the air that must cool it?

Air-over motors (OAO, TEAO) are rated only in the stream of the wheel's air (NEMA MG 1 1.25, 1.26).
"""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = False
READS = Reads(old=("enclosure",), new=("enclosure",), site=("in_airstream", "outdoors"))
SETTLED = Reads(old=("enclosure",), new=("enclosure",))
SOURCE = "NEMA MG 1 1.25, 1.26"
_AIR_OVER = frozenset({"OAO", "TEAO"})
_OPEN = frozenset({"ODP", "OAO"})
_CLOSED = frozenset({"TEAO", "TENV", "TEFC"})
_OWN_COOLING_CLOSED = frozenset({"TENV", "TEFC"})


def judge(pair: Pair) -> Finding | None:
    """Compare enclosures, with what is known of the place."""
    values = (pair.old.enclosure or "", pair.new.enclosure or "")
    return answer.finding("enclosure", _answers(pair), source=SOURCE, values=values)


def _answers(pair: Pair) -> list[Answer]:
    old, new = pair.old.enclosure, pair.new.enclosure
    if new is None:
        return [answer.unknown("Its enclosure isn't said.", "enclosure")]
    no_air = pair.site.in_airstream is False and new in _AIR_OVER
    answers = [_without_air(new)] if no_air else []
    if old == new:
        return answers or [answer.same(f"It is {new}, as the old one.")]
    exposed = _exposed(pair, old, new)
    if exposed is not None:
        answers.append(exposed)
    if old is None:
        return answers or [_old_unknown(new)]
    answers += _air(pair, old, new)
    return answers or [answer.ok(f"It is {new}, the old one {old}: that suits.")]


def _without_air(new: str) -> Answer:
    why = f"It is {new}, which only the wheel's air cools, and there is no air stream: it would overheat."
    return answer.loses(1.0, why, poor=True)


def _exposed(pair: Pair, old: str | None, new: str) -> Answer | None:
    """Judge an open motor outdoors, or where a closed one was."""
    outdoors = pair.site.outdoors is True
    if new not in _OPEN or not (outdoors or old in _CLOSED):
        return None
    place = "it runs outdoors" if outdoors else f"the old one is closed ({old})"
    why = f"It is {new}, open, and {place}: water and dirt get in."
    return answer.loses(0.8, why, poor=outdoors or old == "TEAO")


def _old_unknown(new: str) -> Answer:
    if new in _OWN_COOLING_CLOSED:
        return answer.ok(f"It is {new}, closed and without need of the wheel's air: that suits any place.")
    return answer.unknown(f"It is {new}; the old one's enclosure isn't known.", "old.enclosure")


def _air(pair: Pair, old: str, new: str) -> list[Answer]:
    if old in _AIR_OVER:
        if new in _AIR_OVER:
            return []
        why = f"It is {new}, the old one {old}: it doesn't use the air that is there, and may run larger."
        return [answer.loses(0.1, why)]
    if new in _AIR_OVER and pair.site.in_airstream is None:
        why = f"It is {new}, which only the wheel's air cools. Does it stand in the air stream?"
        return [answer.unknown(why, "site.in_airstream")]
    return []
