"""Can it be held the way the old one was held?

How the old one is held decides. Either side may list several kinds: each pair is judged with its sizes,
and the best pair counts. Body diameters, bolt circles and frames are in inches and NEMA or IEC numbers.
"""

from dataclasses import replace

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import inches, mounting
from matcher.limit import at_most, over
from matcher.motor import Motor
from matcher.trade.frames import Kinship, kinship, slot_loss
from matcher.trade.swaps import held

HARD = True
_SIDE = ("mounting", "body_diameter_in", "bolt_circle_in", "frame")
READS = Reads(old=_SIDE, new=_SIDE)
SETTLED = Reads(old=_SIDE, new=_SIDE)
SOURCE = "common practice; NEMA MG 1 Part 4 for frames"
SAME_BODY = 0.125
"""Inches by which bodies may differ and still take one band."""
OTHER_BODY = 1.0
"""Inches from which no band of the old one's kind holds it."""
SAME_CIRCLE = 0.0625
"""Inches by which bolt circles may differ."""
_BEST_FIRST = (Outcome.SAME, Outcome.OK, Outcome.LOSS, Outcome.UNKNOWN, Outcome.FAIL)
_BY_FRAME = frozenset({"rigid_base", "cradle", "face"})


def judge(pair: Pair) -> Finding | None:
    """Judge each pair of kinds and let the best one count."""
    values = (mounting(pair.old.mounting), mounting(pair.new.mounting))
    return answer.finding("mounting", _answer(pair), hard=HARD, source=SOURCE, values=values)


def _answer(pair: Pair) -> Answer:
    old, new = pair.old.mounting, pair.new.mounting
    if old is None:
        return answer.unknown("How the old one is held isn't known. Look at it.", "old.mounting")
    if new is None:
        return _unsaid(pair, old)
    options = [_held(pair, one, other) for one in old for other in new]
    return min(options, key=lambda option: (_BEST_FIRST.index(option.outcome), option.loss))


def held_by_frame(motor: Motor) -> bool:
    """Say whether the frame's number fixes how a motor is held (NEMA MG 1 Part 4)."""
    return not _BY_FRAME.isdisjoint(motor.mounting or ())


def _unsaid(pair: Pair, old: tuple[str, ...]) -> Answer:
    one, other = pair.old.body_diameter_in, pair.new.body_diameter_in
    if "band" in old and one is not None and other is not None and at_most(abs(one - other), SAME_BODY):
        return answer.ok(
            f"How it is held isn't said, but its body of {inches(other)} takes the old one's band.",
            "mounting",
        )
    return answer.unknown(
        f"How it is held isn't said; the old one is held by {mounting(old)}. Ask for a picture of the"
        " mounting.",
        "mounting",
    )


def _held(pair: Pair, old: str, new: str) -> Answer:
    cell = held(old, new)
    if cell.outcome is Outcome.FAIL:
        return answer.fails(
            f"It is held by {mounting([new])}, the old one by {mounting([old])}: they don't match."
        )
    answers = [_cell(cell.outcome, cell.loss, cell.needs, old, new)]
    if old == "band":
        answers.append(_body(pair))
    if old == new and old in ("studs", "face"):
        answers.append(_circle(pair, old))
    if old in _BY_FRAME and new in _BY_FRAME:
        answers.append(_frame(pair, old, new))
    first = answer.worst(answers, hard=True)
    questions = tuple(dict.fromkeys(name for one in answers for name in one.questions))
    return replace(first, questions=questions, needs=_needs(answers, first))


def _needs(answers: list[Answer], first: Answer) -> tuple[str, ...]:
    if first.outcome is not Outcome.LOSS:
        return ()
    return tuple(dict.fromkeys(need for one in answers for need in one.needs))


def _cell(outcome: Outcome, loss: float, needs: tuple[str, ...], old: str, new: str) -> Answer:
    words = f"It is held by {mounting([new])}, the old one by {mounting([old])}"
    if outcome is Outcome.SAME:
        return answer.same(f"It is held by {mounting([new])}, as the old one was.")
    if outcome is Outcome.OK:
        return answer.ok(f"{words}: the band goes round its shell.")
    kit = " with a band kit" if "band_kit" in needs else ""
    return Answer(Outcome.LOSS, f"{words}: it can be made to hold{kit}.", loss, needs=needs)


def _body(pair: Pair) -> Answer:
    old, new = pair.old.body_diameter_in, pair.new.body_diameter_in
    if old is None or new is None:
        field = "body_diameter_in" if new is None else "old.body_diameter_in"
        return Answer(Outcome.SAME, "The band goes round it if the body is the same.", questions=(field,))
    words = f"Its body is {inches(new)} across, the old one's {inches(old)}"
    if over(abs(old - new), OTHER_BODY):
        return answer.fails(f"{words}: more than {inches(OTHER_BODY)} apart, the band can't hold it.")
    if over(abs(old - new), SAME_BODY):
        return answer.loses(0.6, f"{words}: it needs another band, and must pass the inlet.", "band_kit")
    return answer.same(f"{words}: the band fits.")


def _circle(pair: Pair, kind: str) -> Answer:
    old, new = pair.old.bolt_circle_in, pair.new.bolt_circle_in
    if old is not None and new is not None:
        words = f"Its bolt circle is {inches(new)}, the old one's {inches(old)}"
        if over(abs(old - new), SAME_CIRCLE):
            return answer.fails(f"{words}: only {inches(SAME_CIRCLE)} may differ.")
        return answer.same(f"{words}.")
    if kind == "face" and kinship(pair.old.frame, pair.new.frame) in (Kinship.EQUAL_NEMA, Kinship.KIN):
        return answer.same("Equal frames have equal faces.")
    field = "bolt_circle_in" if new is None else "old.bolt_circle_in"
    whose = "its bolt circle isn't said" if new is None else "the old one's bolt circle isn't known"
    return answer.unknown(f"It is held by {mounting([kind])} as the old one was, but {whose}.", field)


def _frame(pair: Pair, old: str, new: str) -> Answer:
    one, other = pair.old.frame, pair.new.frame
    kin = kinship(one, other)
    if kin is Kinship.MISSING:
        whose = "its frame isn't said" if other is None else "the old one's frame isn't known"
        field = "frame" if other is None else "old.frame"
        return answer.unknown(f"The frame fixes the bolt pattern, and {whose}.", field)
    words = f"Its frame is {other}, the old one's {one}"
    if kin is Kinship.DIFFERENT:
        return answer.fails(f"{words}: the bolt patterns don't match.")
    if kin is Kinship.KIN and (old, new) != ("face", "face"):
        return answer.loses(slot_loss(one, other), f"{words}: the slots overlap, it can be bolted down.")
    return answer.same(f"{words}: the bolt patterns are equal.")
