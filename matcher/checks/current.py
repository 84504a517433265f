"""Does it draw much more than the old one, or more than its circuit may carry?

Amperes are compared at the supply's voltage; a circuit must carry 125 % of the full-load current of a
motor that runs for hours (NEC 430.22).
"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import percent
from matcher.limit import at_most, over
from matcher.motor import Motor
from matcher.trade.plate_amps import at, common
from matcher.trade.supply import systems

HARD = False
READS = Reads(
    old=("amps", "volts", "hertz"),
    new=("amps", "volts"),
    site=("circuit_amps", "measured_volts", "supply_volts", "supply_hertz"),
)
SETTLED = Reads(old=("amps", "volts"), new=("amps", "volts"))
SOURCE = "common practice; NEC 430.22 for the circuit"
HARMLESS = 1.10
"""Times the old amperes that need no thought."""
NOTABLE = 1.25
"""Times the old amperes above which it costs most."""
CONTINUOUS = 1.25
"""NEC 430.22: conductors of a single continuous-duty motor carry 125 % of its full-load current."""


def judge(pair: Pair) -> Finding | None:
    """Compare full-load amperes at the supply's voltage, and with the circuit where it is known."""
    supplied = systems(pair.old, pair.site)
    old, new = common(pair.old, pair.new, supplied)
    circuit = _circuit(pair, new)
    values = (_said(pair.old, old), _said(pair.new, new))
    return answer.finding("current", [_ratio(pair, old, new), *circuit], source=SOURCE, values=values)


def _said(motor: Motor, amps: float | None) -> str:
    if amps is not None:
        return f"{amps:g} A"
    return f"{'/'.join(f'{figure:g}' for figure in motor.amps)} A" if motor.amps else ""


def _ratio(pair: Pair, old: float | None, new: float | None) -> Answer:
    if new is None:
        return answer.unknown(_unplaced("Its", pair.new), "amps")
    if old is None:
        return answer.unknown(_unplaced("The old one's", pair.old), "old.amps")
    words = f"It draws {new:g} A, the old one {old:g} A"
    if over(new, NOTABLE * old):
        return answer.loses(0.7, f"{words}: over {percent(NOTABLE - 1)} more; check wire and fuse.")
    if over(new, HARMLESS * old):
        return answer.loses(0.3, f"{words}: over {percent(HARMLESS - 1)} more; check wire and fuse.")
    return Answer(Outcome.SAME if new == old else Outcome.OK, f"{words}.")


def _unplaced(whose: str, motor: Motor) -> str:
    if not motor.amps:
        return f"{whose} full-load current isn't known."
    if motor.volts is None:
        return f"{whose} {_said(motor, None)} can't be placed: its volts aren't known."
    return f"{whose} {_said(motor, None)} can't be placed among {motor.volts} V at this supply."


def _circuit(pair: Pair, new: float | None) -> list[Answer]:
    """Judge the candidate's current against the circuit, even where the old one's isn't known."""
    circuit = pair.site.circuit_amps
    drawn = _drawn(pair) if new is None else new
    if circuit is None or drawn is None or at_most(CONTINUOUS * drawn, circuit):
        return []
    why = (
        f"It draws {drawn:g} A, which wants a circuit of {CONTINUOUS * drawn:g} A ({percent(CONTINUOUS)});"
        f" there is one of {circuit:g} A."
    )
    return [answer.loses(1.0, why, poor=True)]


def _drawn(pair: Pair) -> float | None:
    supplied = systems(pair.old, pair.site)
    if supplied:
        placed = (at(pair.new, system) for system in supplied)
        return next((figure for figure in placed if figure is not None), None)
    # Nothing is known of the supply: the first figure is the highest, the careful one.
    return pair.new.amps[0] if pair.new.amps else None
