"""Does its winding stand as much heat? Classes by their limits: A 105, B 130, F 155, H 180 C."""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.motor import Motor

HARD = False
_SIDE = ("insulation_class", "ambient_c")
READS = Reads(old=_SIDE, new=_SIDE)
SETTLED = Reads(old=_SIDE, new=_SIDE)
SOURCE = "common practice; IEC 60085 for the classes"
BELOW = 0.4
"""Loss of a class, or a rated ambient, below the old one's."""


def judge(pair: Pair) -> Finding | None:
    """Compare insulation classes and rated ambients, each at least the old one's."""
    old, new = pair.old, pair.new
    answers = [
        _half("insulation class", "insulation_class", old.insulation_class, new.insulation_class),
        _half("rated ambient", "ambient_c", old.ambient_c, new.ambient_c),
    ]
    return answer.finding("insulation", answers, source=SOURCE, values=(_said(old), _said(new)))


def _said(motor: Motor) -> str:
    said = (
        f"class {motor.insulation_class}" if motor.insulation_class else "",
        f"{motor.ambient_c} C ambient" if motor.ambient_c is not None else "",
    )
    return ", ".join(filter(None, said))


def _half(name: str, field: str, old: str | int | None, new: str | int | None) -> Answer:
    """Judge class or ambient; the letters A, B, F, H ascend with their limits."""
    if new is None:
        return answer.unknown(f"Its {name} isn't said.", field)
    unit = "" if isinstance(new, str) else " C"
    if old is None:
        return answer.unknown(f"Its {name} is {new}{unit}; the old one's isn't known.", f"old.{field}")
    words = f"Its {name} is {new}{unit}, the old one's {old}{unit}"
    if _rank(new) < _rank(old):
        return answer.loses(BELOW, f"{words}: it stands less heat.")
    return Answer(Outcome.SAME if old == new else Outcome.OK, f"{words}.")


def _rank(value: str | int) -> int:
    return ord(value) if isinstance(value, str) else value
