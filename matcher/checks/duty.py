"""May it run for hours where the old one did?"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = False
READS = Reads(old=("duty",), new=("duty",))
SETTLED = Reads(old=("duty",), new=("duty",))


def judge(pair: Pair) -> Finding | None:
    """Compare duties; does not apply where the new one's isn't said."""
    old, new = pair.old.duty, pair.new.duty
    if new is None and "duty" not in pair.contradicted_new:
        return None
    return answer.finding("duty", _answer(old, new), values=(old or "", new or ""))


def _answer(old: str | None, new: str | None) -> Answer:
    if new is None:
        return answer.unknown("Its duty is said twice and differently. Ask what stands beside TIME.", "duty")
    if old == "continuous" and new == "intermittent":
        return answer.loses(
            0.8, "It is for intermittent duty, the old one ran continuously: it would overheat.", poor=True
        )
    if old == new:
        return answer.same(f"It is for {new} duty, as the old one.")
    return Answer(Outcome.OK, f"It is for {new} duty, which serves here.")
