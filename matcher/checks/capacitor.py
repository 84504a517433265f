"""Does the run capacitor that is at hand serve the new plate?"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import percent
from matcher.limit import over
from matcher.motor import Motor

HARD = False
_PLATE = ("motor_type", "capacitor_uf", "capacitor_vac")
READS = Reads(old=_PLATE, new=_PLATE)
SETTLED = Reads(old=("capacitor_uf", "capacitor_vac"), new=("capacitor_uf", "capacitor_vac"))
WITHIN = 0.10
"""Share of the wanted microfarads that the old capacitor may be away."""
ANOTHER = 0.3
"""Loss of having to buy the matching one."""


def judge(pair: Pair) -> Finding | None:
    """Compare the old capacitor with what the new plate demands; for split-capacitor motors alone."""
    old, new = pair.old, pair.new
    if new.motor_type != "psc" and not (old.motor_type == "psc" and new.motor_type is None):
        return None
    answers = [_microfarads(old, new), *_volts(old, new)]
    return answer.finding("capacitor", answers, values=(_said(old), _said(new)))


def _said(motor: Motor) -> str:
    said = (
        f"{motor.capacitor_uf:g} uF" if motor.capacitor_uf is not None else "",
        f"{motor.capacitor_vac} VAC" if motor.capacitor_vac is not None else "",
    )
    return " ".join(filter(None, said))


def _microfarads(old: Motor, new: Motor) -> Answer:
    have, wanted = old.capacitor_uf, new.capacitor_uf
    if wanted is None:
        return answer.unknown("Which run capacitor it wants isn't said.", "capacitor_uf")
    if have is None:
        why = f"It wants a run capacitor of {wanted:g} uF and none is known to be at hand: buy one."
        return answer.loses(ANOTHER, why, "capacitor")
    words = f"It wants {wanted:g} uF; the old capacitor has {have:g}"
    if over(abs(have - wanted), WITHIN * wanted):
        return answer.loses(
            ANOTHER, f"{words}, over {percent(WITHIN)} away: buy the matching one.", "capacitor"
        )
    equal = (have, old.capacitor_vac) == (wanted, new.capacitor_vac)
    return Answer(Outcome.SAME if equal else Outcome.OK, f"{words}: it serves.")


def _volts(old: Motor, new: Motor) -> list[Answer]:
    have, wanted = old.capacitor_vac, new.capacitor_vac
    if have is None or wanted is None or have >= wanted:
        return []
    why = f"It wants a capacitor of {wanted} VAC; the old one has only {have}: buy the matching one."
    return [answer.loses(ANOTHER, why, "capacitor")]
