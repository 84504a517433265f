"""Does the wheel go on the shaft: its diameter, ends, length and form?"""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import inches
from matcher.limit import at_most, over, under
from matcher.motor import Motor

HARD = True
_SHAFT = ("shaft_diameter_in", "shaft_ends", "shaft_length_in", "shaft_flats", "shaft_keyed")
READS = Reads(old=_SHAFT, new=_SHAFT, site=("shaft_length_min_in",))
SETTLED = Reads(old=_SHAFT, new=_SHAFT)
SOURCE = "NEMA MG 1 4.9 (shaft tolerance); lengths and form: common practice"
SAME_DIAMETER = 0.002
"""Inches: 1/2, .5, .4995 and 12.7 mm are one shaft; 16 mm is not 5/8."""
STRIKES_FROM = 1.0
"""Inches: a shaft longer than the old one by more is cut, or it may strike."""


def judge(pair: Pair) -> Finding | None:
    """Compare diameter, ends, length and form."""
    answers = [_diameter(pair), *_ends(pair), *_length(pair), *_form(pair)]
    return answer.finding(
        "shaft",
        answers,
        hard=HARD,
        source=SOURCE,
        values=(_said(pair.old), _said(pair.new)),
    )


_FLATS = {0: "round", 1: "one flat", 2: "two flats"}


def _said(motor: Motor) -> str:
    """Say all of a shaft that can differ: `1/2 in x 5 in, one flat`."""
    sizes = [inches(motor.shaft_diameter_in), inches(motor.shaft_length_in)]
    if not sizes[0]:
        return ""
    form = (
        "keyed"
        if motor.shaft_keyed
        else _FLATS.get(motor.shaft_flats if motor.shaft_flats is not None else -1)
    )
    return ", ".join(filter(None, (" x ".join(filter(None, sizes)), form)))


def _diameter(pair: Pair) -> Answer:
    old, new = pair.old.shaft_diameter_in, pair.new.shaft_diameter_in
    if new is None:
        return answer.unknown("Its shaft diameter isn't said. Ask for it, measured.", "shaft_diameter_in")
    if old is None:
        return answer.unknown(
            f"Its shaft is {inches(new)}; the old one's isn't known. Measure it.", "old.shaft_diameter_in"
        )
    if at_most(abs(new - old), SAME_DIAMETER):
        outcome = Outcome.OK if _differs_elsewhere(pair) else Outcome.SAME
        rest = "the rest of it differs harmlessly." if outcome is Outcome.OK else "as the old one's."
        return Answer(outcome, f"Its shaft is {inches(new)}, {rest}", questions=_unsaid_form(pair))
    bush = " A reducing bush is not counted as a fit." if new < old else ""
    return answer.fails(
        f"Its shaft is {inches(new)}, the old one's {inches(old)}: only {inches(SAME_DIAMETER)} may differ."
        f" The wheel won't go on true.{bush}"
    )


def _differs_elsewhere(pair: Pair) -> bool:
    for name in _SHAFT[1:]:
        old, new = getattr(pair.old, name), getattr(pair.new, name)
        if old is not None and new is not None and over(abs(old - new), 0):
            return True
    return False


def _unsaid_form(pair: Pair) -> tuple[str, ...]:
    unsaid = pair.new.shaft_flats is None and pair.new.shaft_keyed is None
    return ("shaft_flats",) if unsaid else ()


def _ends(pair: Pair) -> list[Answer]:
    old, new = pair.old.shaft_ends, pair.new.shaft_ends
    if old == 2 and new == 1:
        return [answer.fails("It has one shaft end; the old one drove something with each of its two.")]
    if old == 2 and new is None:
        return [answer.unknown("The old one has two shaft ends; whether this has isn't said.", "shaft_ends")]
    if old == 1 and new == 2:
        why = "It has two shaft ends, the old one had one: cap or cut the spare end."
        return [answer.loses(0.3, why)]
    return []


def _length(pair: Pair) -> list[Answer]:
    old, new, least = pair.old.shaft_length_in, pair.new.shaft_length_in, pair.site.shaft_length_min_in
    answers = []
    if least is not None:
        answers += _against_least(new, least)
    elif old is not None and new is not None:
        answers += _shorter(old, new)
    if old is not None and new is not None and may_strike(pair.old, pair.new):
        why = f"Its shaft is {inches(new)} long, the old one's {inches(old)}: cut it, or it may strike."
        answers.append(answer.loses(0.2, why))
    return answers


def may_strike(old: Motor, new: Motor) -> bool:
    """Say whether the new shaft is so much longer that it must be cut, or it may strike."""
    one, other = old.shaft_length_in, new.shaft_length_in
    return one is not None and other is not None and over(other - one, STRIKES_FROM)


def _against_least(new: float | None, least: float) -> list[Answer]:
    if new is None:
        why = f"The wheel takes {inches(least)} of shaft; how long this one is isn't said."
        return [answer.unknown(why, "shaft_length_in")]
    if under(new, least):
        why = f"Its shaft is {inches(new)} long; the wheel takes at least {inches(least)}."
        return [answer.fails(why)]
    return []


def _shorter(old: float, new: float) -> list[Answer]:
    words = f"Its shaft is {inches(new)} long, the old one's {inches(old)}"
    if over(old - new, 1.5):
        return [answer.unknown(f"{words}. How much shaft does the wheel take?", "site.shaft_length_min_in")]
    if over(old - new, 0.5):
        return [answer.loses(0.4, f"{words}: see that the hub still gets a full grip.")]
    return []


def lacks_flat(old: Motor, new: Motor) -> bool:
    """Say whether the new shaft is round where the old one had a flat, so that one must be filed."""
    return (old.shaft_flats or 0) >= 1 and new.shaft_flats == 0 and new.shaft_keyed is not True


def _form(pair: Pair) -> list[Answer]:
    old, new = pair.old, pair.new
    answers = []
    if old.shaft_keyed and (
        new.shaft_keyed is False or (new.shaft_keyed is None and new.shaft_flats is not None)
    ):
        answers.append(
            answer.loses(0.5, "The old shaft has a keyway and this one has none: the hub must suit.")
        )
    if lacks_flat(old, new):
        answers.append(
            answer.loses(0.4, "Its shaft is round and the old one has a flat: file one for the screw.")
        )
    if old.shaft_flats == 2 and new.shaft_flats == 1:
        answers.append(
            answer.loses(0.2, "Its shaft has one flat, the old one two: use one screw, or file one.")
        )
    return answers
