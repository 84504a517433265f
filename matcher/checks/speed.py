"""Does it turn the wheel as fast? A direct-drive fan's power goes with the cube of its speed."""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import percent
from matcher.limit import EPSILON, at_most, over, under
from matcher.motor import Motor
from matcher.trade.supply import said_hertz

HARD = False
ASKS = True
READS = Reads(old=("rpm", "rpm_range", "hertz"), new=("rpm", "rpm_range"), site=("supply_hertz",))
SETTLED = Reads(old=("rpm", "rpm_range"), new=("rpm", "rpm_range"))
SOURCE = "fan laws (power with the cube of speed); poles from 120 f / rpm"
WITHIN = 0.05
"""Share by which rated speeds of one pole count may differ."""
TOO_MUCH_POWER = 1.25
"""Times the old fan power from which it would overload."""
TOO_SLOW = 0.8
"""Share of the old speed below which too little air moves."""
NEAR_TOP = 0.95
"""Share of the old speed that a variable one must reach."""


def judge(pair: Pair) -> Finding | None:
    """Compare rated speeds, fixed or variable."""
    found = answer.finding("speed", _answer(pair), source=SOURCE, values=(_said(pair.old), _said(pair.new)))
    return answer.asking(found)


def _said(motor: Motor) -> str:
    if motor.rpm_range is not None:
        return f"{motor.rpm_range[0]} to {motor.rpm_range[1]} rpm"
    return f"{motor.rpm[0]} rpm" if motor.rpm else ""


def _answer(pair: Pair) -> Answer:
    old, new = pair.old, pair.new
    if not _said(new):
        return answer.unknown("Its speed isn't said. Ask what the plate says beside RPM.", "rpm")
    if not _said(old):
        return answer.unknown(f"It turns at {_said(new)}; the old one's speed isn't known.", "old.rpm")
    if old.rpm_range is not None:
        return _for_variable(pair, old.rpm_range)
    assert old.rpm is not None  # noqa: S101 - said, and not variable
    if new.rpm_range is not None:
        return _variable_for_fixed(pair, float(old.rpm[0]), new.rpm_range)
    assert new.rpm is not None  # noqa: S101 - said, and not variable
    return _fixed(pair, old.rpm[0], new.rpm[0])


def poles(rpm: float, hertz: float) -> int:
    """Return the largest even pole count whose synchronous speed 120 f / p is not below `rpm`; 0 if none.

    >>> poles(1075, 60), poles(1075, 50)
    (6, 4)
    """
    return 2 * int((120 * hertz / rpm + EPSILON) // 2)


def _fixed(pair: Pair, old: int, new: int) -> Answer:
    hertz = said_hertz(pair.old, pair.site)
    supply = hertz[0] if len(hertz) == 1 else 60.0
    count = poles(new, supply)
    if count == poles(old, supply) and at_most(abs(new - old), WITHIN * old):
        if new == old:
            return answer.same(f"Turns at {new} rpm, as the old one.")
        return answer.ok(
            f"Turns at {new} rpm, the old one at {old}: {count} poles both, within {percent(WITHIN)}."
        )
    words = f"Turns at {new} rpm, the old one at {old}"
    return _faster(new / old, words) if new > old else _slower(new / old, words)


def _faster(ratio: float, words: str) -> Answer:
    cube = ratio**3
    why = f"{words}: the wheel would ask {cube:.2f} times the power."
    poor = over(cube, TOO_MUCH_POWER)
    return answer.loses(cube - 1, f"{why} It would overload." if poor else why, poor=poor)


def _slower(ratio: float, words: str) -> Answer:
    why = f"{words}: it moves only {ratio:.0%} of the air."
    return answer.loses(2 * (1 - ratio), why, poor=under(ratio, TOO_SLOW))


def _for_variable(pair: Pair, old: tuple[int, int]) -> Answer:
    new = pair.new.rpm_range
    if new is None:
        return answer.unknown(
            f"Turns at {_said(pair.new)} only; the old one's speed varies. At which speed did it run?",
            "old.rpm",
        )
    words = f"Turns at up to {new[1]} rpm, the old one at up to {old[1]}"
    if under(new[1], NEAR_TOP * old[1]):
        return _slower(new[1] / old[1], words)
    outcome = Outcome.SAME if new == old else Outcome.OK
    return Answer(outcome, f"{words}.")


def _variable_for_fixed(pair: Pair, old: float, new: tuple[int, int]) -> Answer:
    words = f"Turns at {_said(pair.new)}, the old one at {old:g}"
    if under(new[1], NEAR_TOP * old):
        return _slower(new[1] / old, words)
    if over(new[0], (1 + WITHIN) * old):
        return _faster(new[0] / old, words)
    return answer.ok(f"{words}: it can be set to that.")
