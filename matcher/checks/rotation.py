"""Does it turn the right way? Every turn is compared as it is seen from the lead end."""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import turn
from matcher.motor import Motor
from matcher.trade.turns import lead_end

HARD = True
READS = Reads(
    old=("turn", "seen_from", "shaft_ends"),
    new=("turn", "seen_from", "shaft_ends", "motor_type"),
    pair=("same_number",),
)
IN_PASSING = ("motor_type",)
SOURCE = "NEMA MG 1 (seen from the end opposite the shaft); IEC 60034-8"


def judge(pair: Pair) -> Finding | None:
    """Compare the two turns."""
    old, new = pair.old, pair.new
    across = _across_ends(pair)
    values = (_said(old, across=across), _said(new, across=across))
    return answer.finding("rotation", _answer(pair), hard=HARD, source=SOURCE, values=values)


def _across_ends(pair: Pair) -> bool:
    """Say whether the two turns are told from different ends, so that equal words are opposite turns."""
    views = {motor.seen_from for motor in (pair.old, pair.new) if lead_end(motor) is not None}
    return len(views) > 1 and not _seen_from_unclear_end(pair)


def _said(motor: Motor, *, across: bool) -> str:
    """Say a turn; where two ends are compared, first as it is seen from the lead end."""
    words = turn(motor.turn, motor.seen_from)
    if not across or motor.seen_from != "shaft_end":
        return words
    return f"{turn(lead_end(motor), 'lead_end')} = {words}"


def _answer(pair: Pair) -> Answer:
    old, new = pair.old, pair.new
    if new.turn == "either":
        return answer.ok("It can turn either way: set the turn before mounting the wheel.")
    if new.motor_type == "polyphase":
        return answer.ok(
            "A three-phase motor turns the other way when two leads are swapped: check the turn before the"
            " load goes on."
        )
    if new.turn is None:
        return answer.unknown("Which way it turns isn't said. Ask, and from which end.", "turn")
    if old.turn is None:
        return answer.unknown(
            f"It turns {turn(new.turn, new.seen_from)}; which way the old one turned isn't known.", "old.turn"
        )
    if old.turn == "either":
        return answer.unknown(
            f"It turns {turn(new.turn, new.seen_from)} only; the old one could be set. Which way was the old"
            " one set?",
            "old.turn",
        )
    if old.seen_from is None or new.seen_from is None:
        return _bare(pair)
    if _seen_from_unclear_end(pair):
        return _double_ended(pair)
    return _in_one_view(pair)


def _in_one_view(pair: Pair) -> Answer:
    across = _across_ends(pair)
    old, new = lead_end(pair.old), lead_end(pair.new)
    words = f"Turns {_said(pair.new, across=across)}"
    if old == new:
        same = f" turned {_said(pair.old, across=True)}: the same" if across else " did"
        return answer.same(f"{words}{'; the old one' if across else ', as the old one'}{same}.")
    before = _said(pair.old, across=True) if across else turn(pair.old.turn)
    return answer.fails(f"{words}; the old one turned {before}. The wheel would blow backwards.")


def _bare(pair: Pair) -> Answer:
    old, new = pair.old, pair.new
    words = f"It turns {turn(new.turn, new.seen_from)}, the old one {turn(old.turn, old.seen_from)}"
    equal = pair.same_number and "seen_from" not in pair.contradicted_old | pair.contradicted_new
    if equal and old.turn == new.turn:
        return answer.same(f"{words}: the same maker and number say the same turn.")
    if equal and old.seen_from is None and new.seen_from is None:
        return answer.fails(f"{words}, and both are of one maker and number. The wheel would blow backwards.")
    field = "old.seen_from" if new.seen_from is not None else "seen_from"
    also = ("old.seen_from",) if old.seen_from is None and field == "seen_from" else ()
    return answer.unknown(
        f"{words}, but not both say from which end, and two makers may look from different ends. Ask from"
        " which end it is seen.",
        field,
        *also,
    )


def _seen_from_unclear_end(pair: Pair) -> bool:
    """Say whether a double-ended motor's turn is said from "the" shaft end, which it has two of."""
    return _unclear(pair.old, pair.contradicted_old) or _unclear(pair.new, pair.contradicted_new)


def _unclear(motor: Motor, contradicted: frozenset[str]) -> bool:
    return motor.seen_from == "shaft_end" and (motor.shaft_ends == 2 or "shaft_ends" in contradicted)


def _double_ended(pair: Pair) -> Answer:
    old, new = pair.old, pair.new
    if pair.same_number and (old.turn, old.seen_from) == (new.turn, new.seen_from):
        return answer.same(
            f"Turns {turn(new.turn, new.seen_from)}; the same maker and number say the same of the old one."
        )
    field = "seen_from" if _unclear(new, pair.contradicted_new) else "old.seen_from"
    return answer.unknown(
        f"It turns {turn(new.turn, new.seen_from)}, the old one {turn(old.turn, old.seen_from)}, but a"
        " double-ended motor has two shaft ends. Ask for the turn seen from the lead end.",
        field,
    )
