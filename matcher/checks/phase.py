"""Does the candidate run on as many phases as reach it?"""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = True
READS = Reads(old=("phase",), new=("phase",), site=("supply_phase",))
_SAID = {1: "single phase", 3: "three phases", None: ""}


def judge(pair: Pair) -> Finding | None:
    """Compare the candidate's phases with the supply's, or else the old one's."""
    return answer.finding(
        "phase", _answer(pair), hard=HARD, values=(_SAID[pair.old.phase], _SAID[pair.new.phase])
    )


def _answer(pair: Pair) -> Answer:
    site, new = pair.site.supply_phase, pair.new.phase
    supply = pair.old.phase if site is None else site
    if new is None:
        return answer.unknown("Its phase isn't said. Ask what the plate says beside PH.", "phase")
    if supply is None:
        return answer.unknown(
            f"It wants {_SAID[new]}; how many phases reach the motor isn't known.", "site.supply_phase"
        )
    if new != supply:
        return answer.fails(f"It wants {_SAID[new]}; the supply is {_SAID[supply]}. It would not run.")
    said = "as the old one did" if site is None else "which is what reaches it"
    return answer.same(f"It runs on {_SAID[new]}, {said}.")
