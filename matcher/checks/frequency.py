"""Does the candidate's rated frequency suit the supply?

One of the rated frequencies must lie within 5 % of itself from the supply (NEMA MG 1 12.44).
"""

from dataclasses import replace

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import percent
from matcher.trade.frames import bare_frame
from matcher.trade.rated import only_sixty_hertz
from matcher.trade.supply import FREQUENCY_TOLERANCE, near_hertz, plate_hertz, said_hertz

HARD = True
READS = Reads(old=("hertz", "volts"), new=("hertz", "volts", "frame", "currency"), site=("supply_hertz",))
IN_PASSING = ("frame",)
SOURCE = "NEMA MG 1 12.44"
_SIXTY_HERTZ_MONEY = frozenset({"USD", "CAD", "MXN"})
_ASK = "Ask what the plate says beside HZ."


def judge(pair: Pair) -> Finding | None:
    """Compare the candidate's rated frequencies with the supply's."""
    said = said_hertz(pair.old, pair.site)
    supply = said or _presumed_supply(pair)
    presumed = () if said or not supply else ("old.hertz",)
    answered, own = _answer(pair, supply)
    if presumed:
        answered = replace(
            answered, why=f"{answered.why} The supply is presumed 60 Hz from the old one's volts."
        )
    return answer.finding(
        "frequency",
        answered,
        hard=HARD,
        source=SOURCE,
        values=(_said(pair.old.hertz), _said(pair.new.hertz)),
        presumed=presumed + own,
    )


def _said(hertz: str | None) -> str:
    return f"{hertz} Hz" if hertz else ""


def _presumed_supply(pair: Pair) -> tuple[float, ...]:
    if "hertz" in pair.contradicted_old or pair.old.volts is None:
        return ()
    return (60.0,) if only_sixty_hertz(pair.old.volts) else ()


def _answer(pair: Pair, supply: tuple[float, ...]) -> tuple[Answer, tuple[str, ...]]:
    if not supply:
        why = "The supply's hertz isn't known, and the old one's volts don't settle it."
        return answer.unknown(why, "site.supply_hertz"), ()
    if pair.new.hertz is None:
        return _unsaid(pair, supply)
    return _said_on_both(pair, supply, plate_hertz(pair.new.hertz)), ()


def _unsaid(pair: Pair, supply: tuple[float, ...]) -> tuple[Answer, tuple[str, ...]]:
    sixty = len(supply) == 1 and round(supply[0]) == 60
    if sixty and "hertz" not in pair.contradicted_new and _made_for_sixty(pair):
        why = f"Its hertz isn't said; {pair.new.volts} V is a 60 Hz rating, so 60 Hz is presumed."
        return answer.ok(why, "hertz"), ("hertz",)
    return answer.unknown(
        f"Its hertz isn't said, and nothing else about it settles that. {_ASK}", "hertz"
    ), ()


def _made_for_sixty(pair: Pair) -> bool:
    """Say whether volts, frame and currency all speak for a 60 Hz motor; a contradicted one never does."""
    new = pair.new
    if new.volts is None or not only_sixty_hertz(new.volts) or {"frame", "currency"} & pair.contradicted_new:
        return False
    if new.frame is not None and bare_frame(new.frame).startswith("IEC"):
        return False
    return new.currency is None or new.currency in _SIXTY_HERTZ_MONEY


def _said_on_both(pair: Pair, supply: tuple[float, ...], rated: tuple[float, ...]) -> Answer:
    new = pair.new.hertz
    served = [any(near_hertz(there, own) for own in rated) for there in supply]
    there = " or ".join(f"{frequency:g}" for frequency in supply)
    if all(served):
        equal = rated == supply or new == pair.old.hertz
        why = f"Rated {new} Hz; the supply is {there} Hz."
        return Answer(Outcome.SAME if equal else Outcome.OK, why)
    if len(supply) > 1:
        return answer.unknown(
            f"Rated {new} Hz alone; the old plate says {there} Hz. Which of them is the supply?",
            "site.supply_hertz",
        )
    away = f"more than {percent(FREQUENCY_TOLERANCE)} away"
    return answer.fails(
        f"Rated {new} Hz; the supply is {there} Hz, {away}. It would run at the wrong speed and overheat."
    )
