"""Does it have as many speed taps as are in use?"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = False
READS = Reads(old=("speeds", "rpm_range", "motor_type"), new=("speeds", "motor_type"), site=("taps_in_use",))
A_TAP = 0.4
"""Loss of each speed in use that can't be wired."""
_UNCOUNTED = "should all be in use. Count the speed wires that are connected."
_AT_HOME = ("site.taps_in_use",)


def judge(pair: Pair) -> Finding | None:
    """Compare the taps that are needed with those that it has; airflow motors have none."""
    if "ecm_airflow" in (pair.old.motor_type, pair.new.motor_type):
        return None
    needed = pair.site.taps_in_use or pair.old.speeds
    if needed is None and not _multi_speed(pair):
        return None
    values = (_said(needed), _said(pair.new.speeds))
    return answer.finding("taps", _answer(pair, needed), values=values)


def _said(speeds: int | None) -> str:
    if speeds is None:
        return ""
    return "1 speed" if speeds == 1 else f"{speeds} speeds"


def _multi_speed(pair: Pair) -> bool:
    """Say whether the old one has several speeds though their number isn't known."""
    contradicted = "speeds" in pair.contradicted_old
    return contradicted or pair.old.rpm_range is not None or pair.old.motor_type == "ecm_torque"


def _answer(pair: Pair, needed: int | None) -> Answer:
    speeds = pair.new.speeds
    if speeds is None:
        return answer.unknown("How many speeds it has isn't said.", "speeds")
    if needed is None:
        return answer.unknown(f"It has {_said(speeds)}; how many are in use isn't known.", "site.taps_in_use")
    counted = pair.site.taps_in_use is not None
    words = f"It has {_said(speeds)}, {f'{needed} in use' if counted else f'the old one {needed}'}"
    if speeds >= needed:
        return Answer(Outcome.SAME if speeds == needed else Outcome.OK, f"{words}.")
    short = needed - speeds
    loss = min(1.0, A_TAP * short)
    if counted:
        return answer.loses(loss, f"{words}: {short} can't be wired.")
    return Answer(Outcome.LOSS, f"{words}: {short} can't be wired, {_UNCOUNTED}", loss, questions=_AT_HOME)
