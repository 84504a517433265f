"""Can the old electronic module move over, or does the one that comes serve?

A module holds the appliance maker's program, so the number of the program, not only the motor, decides.
"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.presume import ELECTRONIC
from matcher.trade.rated import ratings
from matcher.trade.swaps import Cell, moved, torque_place

HARD = False
READS = Reads(
    old=("motor_type", "volts", "module_number", "program_number"),
    new=("motor_type", "volts", "module", "module_number", "program_number"),
    site=("module_health", "motor_health"),
    pair=("same_number", "same_brand", "same_program", "same_module"),
    quoted=("module_number", "program_number"),
)
MISMATCH = 0.3
"""Added once when the module must move to another make or to volts that don't overlap."""
_COMES = {
    "with": "It comes with its module",
    "without": "It comes without a module",
    "module_only": "It is a module alone",
    "not_said": "Whether it comes with its module isn't said",
}
_NUMBERS = {
    "equal": ", of the old one's program",
    "differ": ", of another program",
    "not_said": ", of a program that isn't said",
}


def judge(pair: Pair) -> Finding | None:
    """Judge what comes with the offer against what is healthy; only where either motor is electronic."""
    if not _applies(pair):
        return None
    comes = pair.new.module or "not_said"
    says = _code(pair.new.program_number, pair.new.module_number)
    told = ", ".join(filter(None, (comes.replace("_", " "), says)))
    values = (_code(pair.old.program_number, pair.old.module_number), told)
    found = answer.finding("module", _answer(pair, comes), values=values)
    return found if pair.site.module_health == "good" else answer.asking(found)


def _code(program: str | None, module: str | None) -> str:
    said = (f"program {program}" if program else "", f"module {module}" if module else "")
    return ", ".join(filter(None, said))


def numbers(pair: Pair) -> str:
    """Say whether the two programs are `equal`, `differ`, or that is `not_said`.

    Both program numbers decide; else equal maker and number; else differing module numbers.
    """
    contradicted = pair.contradicted_old | pair.contradicted_new
    if pair.same_program is not None:
        return "equal" if pair.same_program else "differ"
    if "program_number" in contradicted:
        return "not_said"
    if pair.same_number:
        return "equal"
    return "differ" if pair.same_module is False else "not_said"


def moves_over(pair: Pair) -> bool:
    """Say whether the old module goes on the new motor, as a sheet of steps must know."""
    if not _applies(pair) or _ran_on_line_voltage(pair):
        return False
    return _cell(pair, pair.new.module or "not_said", numbers(pair)).moves


def _applies(pair: Pair) -> bool:
    return pair.old.motor_type in ELECTRONIC or pair.new.motor_type in ELECTRONIC


def _ran_on_line_voltage(pair: Pair) -> bool:
    return torque_place(pair.old.motor_type or "") is not None


def _cell(pair: Pair, comes: str, told: str) -> Cell:
    health, motor_health = (pair.site.module_health or "unknown", pair.site.motor_health or "unknown")
    return moved(comes, told, health, motor_health)


def _answer(pair: Pair, comes: str) -> Answer:
    if _ran_on_line_voltage(pair) and comes != "not_said":
        return _for_line_voltage(comes)
    told = numbers(pair)
    health = pair.site.module_health or "unknown"
    cell = _cell(pair, comes, told)
    words = _COMES[comes] + (_NUMBERS[told] if comes in ("with", "module_only") else "")
    why = f"{words}; the old module is {'of unknown health' if health == 'unknown' else health}."
    if cell.outcome == Outcome.UNKNOWN:
        test_motor = comes == "module_only" and pair.site.motor_health not in ("good", "bad")
        return _not_known(why, comes, told, test_motor=test_motor)
    if _is_open(pair, comes):
        return answer.unknown(
            f"{why} Two different program numbers are said: ask which one is true.", "program_number"
        )
    if cell.outcome == Outcome.SAME:
        return answer.same(why)
    return _losing(pair, cell, why, comes)


def _is_open(pair: Pair, comes: str) -> bool:
    """Say whether the program's number is contradicted where it would decide."""
    if pair.same_program is not None or "program_number" not in pair.contradicted_old | pair.contradicted_new:
        return False
    health, motor = pair.site.module_health or "unknown", pair.site.motor_health or "unknown"
    return moved(comes, "equal", health, motor) != moved(comes, "differ", health, motor)


def _for_line_voltage(comes: str) -> Answer:
    words = f"{_COMES[comes]}; the old motor ran on line voltage"
    if comes == "with":
        return answer.ok(f"{words}.")
    return answer.loses(1.0, f"{words} and has no module to lend.", "module", poor=True)


def _not_known(why: str, comes: str, told: str, *, test_motor: bool) -> Answer:
    if comes == "not_said":
        ask = "Ask whether the module is in the sale, and its numbers."
        return answer.unknown(f"{why} {ask}", "module", "program_number")
    program = ("program_number",) if told == "not_said" else ()
    if test_motor:
        return answer.unknown(f"{why} Test the motor first.", "site.motor_health", *program)
    return answer.unknown(f"{why} Ask for the program number on the module.", *program)


def _losing(pair: Pair, cell: Cell, why: str, comes: str) -> Answer:
    health = pair.site.module_health or "unknown"
    loss = cell.loss
    questions: tuple[str, ...] = ()
    sentences = [why, _what_to_do(comes, health, cell, pair.site.motor_health)]
    if cell.moves:
        mismatch, questions = _mismatch(pair)
        loss += MISMATCH if mismatch else 0
        sentences.append(mismatch)
    if health == "unknown":  # whatever comes, a look at home changes this answer
        questions = ("site.module_health", *questions)
    needs = ("module",) if cell.poor and comes != "module_only" else ()
    return Answer(
        Outcome.LOSS, " ".join(filter(None, sentences)), min(1.0, loss), cell.poor, questions, needs
    )


def _what_to_do(comes: str, health: str, cell: Cell, motor_health: str | None) -> str:
    if comes == "module_only":
        if health == "good":
            return "It replaces what isn't broken."
        if health == "unknown":
            return "Test the old module first: it may not be what failed."
        if motor_health == "bad":
            return "The old motor is bad too."
        return "It can't do the old one's job." if cell.poor else "Put it on the old motor."
    if health == "good":
        return "Move the old module over."
    if health == "unknown":
        return "Test the old module: only a good one can move over."
    return "A module with the right program must be bought as well."


def _mismatch(pair: Pair) -> tuple[str, tuple[str, ...]]:
    """Say what keeps the module from moving, and what to ask where that isn't known."""
    old, new = pair.old.volts, pair.new.volts
    known = old is not None and new is not None
    apart = old is not None and new is not None and not _overlap(old, new)
    said = []
    if pair.same_brand is False:
        said.append("it is of another make")
    if apart:
        said.append(f"its {new} V don't overlap the old one's {old} V")
    questions = [
        name for name, said in (("brand", pair.same_brand is not None), ("volts", known)) if not said
    ]
    return (f"But {' and '.join(said)}: that may not work." if said else ""), tuple(questions)


def _overlap(old: str, new: str) -> bool:
    return any(one.overlaps(other.low, other.high) for one in ratings(old) for other in ratings(new))
