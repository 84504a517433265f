"""Is it marked for a hazardous location where the old one is?"""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = True
READS = Reads(old=("explosion_proof", "enclosure"), new=("explosion_proof", "enclosure"))
IN_PASSING = ("enclosure",)
SETTLED = Reads(old=("explosion_proof",))
_SAID = {True: "explosion-proof", False: "not explosion-proof", None: ""}


def judge(pair: Pair) -> Finding | None:
    """Compare the markings."""
    values = (_SAID[pair.old.explosion_proof], _SAID[pair.new.explosion_proof])
    return answer.finding("hazard", _answer(pair), hard=HARD, values=values)


def _answer(pair: Pair) -> Answer:
    old, new = pair.old, pair.new
    if not old.explosion_proof:
        return answer.ok("The old one is not marked for a hazardous location, so no marking is needed.")
    if new.explosion_proof:
        return answer.same("Marked explosion-proof, as the old one is.")
    if new.explosion_proof is False:
        return answer.fails("The old one is explosion-proof and this one is not: never put it there.")
    if old.enclosure is not None and new.enclosure is not None and old.enclosure != new.enclosure:
        return answer.fails(
            f"The old one is explosion-proof, {old.enclosure}; this is {new.enclosure} and doesn't say so:"
            " never put it there."
        )
    return answer.unknown(
        "The old one is explosion-proof; whether this one is marked so isn't said. Ask for the plate.",
        "explosion_proof",
    )
