"""Does the candidate's rated voltage suit the supply?

A rating tolerates +-10 % (NEMA MG 1 12.44); a supply system delivers a band (ANSI C84.1, range A at the
motor; IEC 60038 at 50 Hz). The whole band must lie inside the tolerance.
"""

from enum import IntEnum

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import both, either, percent, volts
from matcher.trade.rated import TOLERANCE, Rating, equal_ratings, ratings
from matcher.trade.supply import System, said_hertz, systems

HARD = True
READS = Reads(old=("volts", "hertz"), new=("volts",), site=("measured_volts", "supply_volts", "supply_hertz"))
SOURCE = "NEMA MG 1 12.44; ANSI C84.1"
ON_ITS_EDGE = 0.5
"""Loss of a rating that tolerates a system's nominal voltage but not its whole band."""


class Service(IntEnum):
    """How well a rating serves a system."""

    NONE = 0
    """The nominal voltage lies outside the tolerance."""
    MARGINAL = 1
    """The nominal voltage lies inside, the whole band doesn't."""
    WHOLE = 2


def judge(pair: Pair) -> Finding | None:
    """Compare the candidate's ratings with what reaches the motor."""
    return answer.finding(
        "voltage",
        _answer(pair),
        hard=HARD,
        source=SOURCE,
        values=(volts(pair.old.volts), volts(pair.new.volts)),
    )


def _answer(pair: Pair) -> Answer:
    if pair.new.volts is None:
        return answer.unknown("Its rated voltage isn't said. Ask what the plate says beside VOLTS.", "volts")
    equal = equal_ratings(pair.old.volts, pair.new.volts)
    offered = ratings(pair.new.volts)
    if equal and pair.site.supply_volts is None and pair.site.measured_volts is None:
        return answer.same(f"Rated {pair.new.volts} V, as the old one is.{_link_as_before(offered)}")
    supplied = systems(pair.old, pair.site)
    if not supplied:
        return answer.unknown(
            f"Rated {pair.new.volts} V, but what the supply brings isn't known. Measure it at the motor.",
            "site.supply_volts",
        )
    if pair.site.measured_volts is not None:
        return _measured(supplied[0], offered, equal=equal)
    if len(supplied) == 1:
        return _on_one(supplied[0], offered, equal=equal)
    return _on_several(pair, supplied, offered, equal=equal)


def service(offered: tuple[Rating, ...], system: System) -> tuple[Service, Rating]:
    """Return how well the best of the ratings serves a system, and which one that is."""

    def served(rating: Rating) -> Service:
        if rating.tolerates(system.low, system.high):
            return Service.WHOLE
        return Service(rating.tolerates(system.nominal, system.nominal))

    best = max(offered, key=lambda rating: (served(rating), -rating.away(system.nominal)))
    return served(best), best


def _link(offered: tuple[Rating, ...], best: Rating) -> str:
    return f" Set the voltage link for {best} V first." if len(offered) > 1 else ""


def _link_as_before(offered: tuple[Rating, ...]) -> str:
    return " Set the voltage link as the old one's was first." if len(offered) > 1 else ""


def _measured(measured: System, offered: tuple[Rating, ...], *, equal: bool) -> Answer:
    served, best = service(offered, measured)
    if served is Service.NONE:
        return answer.fails(
            f"Measured {measured.nominal:g} V; it tolerates only {_limits(best)} ({best} V rated,"
            f" +-{percent(TOLERANCE)})."
        )
    why = f"Measured {measured.nominal:g} V lies inside its {_limits(best)}.{_link(offered, best)}"
    return Answer(Outcome.SAME if equal else Outcome.OK, why)


def _limits(rating: Rating) -> str:
    return f"{rating.least:g} to {rating.most:g} V"


def _on_one(system: System, offered: tuple[Rating, ...], *, equal: bool) -> Answer:
    served, best = service(offered, system)
    name = f"A {system.nominal:g} V supply brings {system.low:g} to {system.high:g} V"
    if served is Service.WHOLE:
        why = f"{name}; rated {best} V, it tolerates {_limits(best)}.{_link(offered, best)}"
        return Answer(Outcome.SAME if equal else Outcome.OK, why)
    if served is Service.MARGINAL:
        return answer.loses(
            ON_ITS_EDGE,
            f"{name}, but rated {best} V it tolerates only {_limits(best)}. Measure it at the motor"
            f" before buying.{_link(offered, best)}",
        )
    return answer.fails(f"{name}; rated {best} V, it tolerates only {_limits(best)}. It would not last.")


def _on_several(
    pair: Pair, supplied: tuple[System, ...], offered: tuple[Rating, ...], *, equal: bool
) -> Answer:
    served = [service(offered, system)[0] for system in supplied]
    names = either(f"{volt:g} V" for volt in dict.fromkeys(system.nominal for system in supplied))
    rated = both(f"{rating} V" for rating in offered)
    if min(served) is Service.WHOLE:
        why = f"The supply may be {names}; rated {rated}, it serves each of them whole."
        link = " Set the voltage link for the one that is there first." if len(offered) > 1 else ""
        return Answer(Outcome.SAME if equal else Outcome.OK, why + link)
    if max(served) is Service.NONE:
        return answer.fails(f"The supply may be {names}; rated {rated}, it tolerates none of them.")
    return answer.unknown(
        f"The supply may be {names}, and rated {rated} it does not serve each of them whole."
        " Which supply is it on? Measure it at the motor.",
        *_questions(pair),
    )


def _questions(pair: Pair) -> tuple[str, ...]:
    hertz = () if len(said_hertz(pair.old, pair.site)) == 1 else ("site.supply_hertz",)
    return hertz if pair.site.supply_volts is not None else ("site.supply_volts", *hertz)
