"""Can the one kind of motor be driven where the other was?"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.presume import ELECTRONIC
from matcher.judging.saying import kind
from matcher.trade.swaps import driven, torque_place

HARD = True
READS = Reads(
    old=("motor_type", "control_signal", "plug_pins"),
    new=("motor_type", "control_signal", "plug_pins", "module"),
    site=("module_health",),
    pair=("same_number", "same_brand"),
)
SETTLED = Reads(old=("motor_type",), new=("motor_type",))
_SIGNALS = {
    "taps_24v": "24 V taps",
    "pwm": "a pulse-width signal",
    "serial": "serial messages",
    "thermostat": "the thermostat",
}


def judge(pair: Pair) -> Finding | None:
    """Compare the kinds of motor, and what tells an electronic one what to do."""
    old, new = pair.old.motor_type, pair.new.motor_type
    answered = _answer(pair)
    unsaid = answered.outcome is Outcome.OK and (old is None or new is None)
    presumed = ("motor_type",) if unsaid else ()
    return answer.finding("drive", answered, hard=HARD, values=(kind(old), kind(new)), presumed=presumed)


def _answer(pair: Pair) -> Answer:
    old, new = pair.old.motor_type, pair.new.motor_type
    if pair.same_number and not _exactly_different(old, new):
        return answer.same("The same maker and number: it is driven as the old one was.")
    if old is None or new is None:
        return _unsaid(old, new)
    cell = driven(_group(old), _group(new))
    if cell.outcome == "types":
        return _by_torque(old, new)
    if cell.outcome == "signal":
        answered = _by_signal(pair)
    else:
        answered = _by_table(old, new, Outcome(cell.outcome), cell.loss)
    undone = answered.outcome is Outcome.UNKNOWN or (
        cell.outcome == "signal" and answered.outcome is Outcome.FAIL
    )
    if undone and _module_moves_over(pair):
        return answer.ok(
            "It comes without a module: the old one moves over, and brings what it is told to do."
        )
    return answered


def _group(motor_type: str) -> str:
    return "line" if torque_place(motor_type) else motor_type


def _exactly_different(old: str | None, new: str | None) -> bool:
    return old is not None and new is not None and old != new and "ecm" not in (old, new)


def _module_moves_over(pair: Pair) -> bool:
    """Say whether the healthy old module goes onto the new motor of the same make."""
    electronic = pair.old.motor_type in ELECTRONIC and pair.new.motor_type in ELECTRONIC
    healthy = pair.site.module_health == "good"
    return electronic and pair.new.module == "without" and healthy and pair.same_brand is True


def _unsaid(old: str | None, new: str | None) -> Answer:
    known = new if old is None else old
    if known is not None and not torque_place(known):
        if old is None:
            return answer.unknown(f"It is {kind(new)}; what the old one is isn't known.", "old.motor_type")
        return answer.unknown(f"The old one is {kind(old)}; what this one is isn't said.", "motor_type")
    return answer.ok("What kind of motor isn't said; a line-voltage motor is presumed.")


def _by_table(old: str, new: str, outcome: Outcome, loss: float) -> Answer:
    words = f"It is {kind(new)}, the old one {kind(old)}"
    if outcome is Outcome.SAME:
        return answer.same(f"It is {kind(new)}, as the old one was.")
    if outcome is Outcome.LOSS:
        return answer.loses(loss, f"{words}: its low-voltage taps must be driven.")
    if outcome is Outcome.UNKNOWN:
        return answer.unknown(f"{words}. Ask how it is told what to do.", "motor_type", "control_signal")
    return answer.fails(f"{words}: what is there can't drive it.")


def _by_torque(old: str, new: str) -> Answer:
    if old == new:
        return answer.same(f"It is {kind(new)}, as the old one was.")
    words = f"It is {kind(new)}, the old one {kind(old)}"
    down = (torque_place(new) or 0) - (torque_place(old) or 0)
    if down < 0:
        return answer.ok(f"{words}: it starts harder, which does no harm.")
    if down == 1:
        return answer.loses(0.4, f"{words}: it starts one step weaker; see that the wheel comes up to speed.")
    return answer.loses(0.8, f"{words}: it starts much weaker, and may not start the load.", poor=True)


def _by_signal(pair: Pair) -> Answer:
    old, new = pair.old, pair.new
    ask = "How is it told how much air to move? Ask."
    if "control_signal" in pair.contradicted_old | pair.contradicted_new:
        return answer.unknown(f"What tells it how much air to move is said twice. {ask}", "control_signal")
    if old.control_signal and new.control_signal:
        words = f"It is told by {_SIGNALS[new.control_signal]}"
        if old.control_signal == new.control_signal:
            return answer.same(f"{words}, as the old one was.")
        return answer.fails(f"{words}, the old one by {_SIGNALS[old.control_signal]}: it would not be told.")
    if old.plug_pins is not None and new.plug_pins is not None:
        if old.plug_pins == new.plug_pins:
            return answer.ok(
                "What tells it how much air to move isn't said, but its plugs are the old one's."
            )
        return answer.unknown(f"Its plugs aren't the old one's. {ask}", "control_signal")
    return answer.unknown(f"Neither signal nor plugs are known of both. {ask}", "control_signal", "plug_pins")
