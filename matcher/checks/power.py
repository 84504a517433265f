"""Is it strong enough, and not far too strong? Steps are those of the NEMA MG 1 10.32 ratings."""

from functools import cache

from matcher import tables
from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import horsepower
from matcher.limit import at_most

HARD = False
ASKS = True
READS = Reads(old=("power_hp",), new=("power_hp", "service_factor"))
SOURCE = "NEMA MG 1 10.32"
WITHIN = 0.05
"""Share by which a power may be off its rating, or two of them apart, and count as equal."""
TWO_STEPS = 0.3
"""Loss of two steps more than the old one."""
MORE_STEPS = 0.6
"""Loss of more than two."""
ON_SERVICE_FACTOR = 0.4
"""Loss of a smaller one that carries the load on its service factor."""


def judge(pair: Pair) -> Finding | None:
    """Compare rated powers; a smaller one must carry the load on its service factor."""
    old, new = pair.old.power_hp, pair.new.power_hp
    found = answer.finding("power", _answer(pair), source=SOURCE, values=(horsepower(old), horsepower(new)))
    return answer.asking(found)


def _answer(pair: Pair) -> Answer:
    old, new = pair.old.power_hp, pair.new.power_hp
    if new is None:
        return answer.unknown("Its power isn't said. Ask what the plate says beside HP.", "power_hp")
    if old is None:
        return answer.unknown(f"It gives {horsepower(new)}; the old one's power isn't known.", "old.power_hp")
    if at_most(abs(new - old), WITHIN * old):
        return answer.same(f"It gives {horsepower(new)}, as the old one.")
    return _larger(old, new) if new > old else _smaller(pair, old, new)


def _larger(old: float, new: float) -> Answer:
    steps = step(new) - step(old)
    words = f"It gives {horsepower(new)}, the old one {horsepower(old)}"
    if steps <= 1:
        return answer.ok(f"{words}: at most one step up, which does no harm.")
    loss = TWO_STEPS if steps == 2 else MORE_STEPS
    return answer.loses(loss, f"{words}: {steps} steps up; it draws more and runs far below its rating.")


def _smaller(pair: Pair, old: float, new: float) -> Answer:
    words = f"It gives {horsepower(new)}, the old one {horsepower(old)}"
    if "service_factor" in pair.contradicted_new:
        return answer.unknown(f"{words}, and its service factor is said twice.", "service_factor")
    factor = pair.new.service_factor or 1.0
    overload = old / (new * factor)
    if at_most(overload, 1):
        return answer.loses(
            ON_SERVICE_FACTOR, f"{words}: it carries the load only on its service factor of {factor:g}."
        )
    return answer.loses(1.0, f"{words}: it would run {overload - 1:.0%} overloaded and burn out.", poor=True)


def step(power: float) -> int:
    """Return the place of a power (hp) among the ratings: its step within 5 %, else the next one up."""
    steps = _steps()
    for place, rating in enumerate(steps):
        if at_most(power, rating) or at_most(abs(power - rating), WITHIN * rating):
            return place
    return len(steps)


@cache
def _steps() -> tuple[float, ...]:
    return tuple(tables.number(row, "hp") for row in tables.rows("ratings"))
