"""Which of a plate's full-load currents flows at the supply's voltage.

A dual plate's amperes pair with its volts in order, the lowest volts with the highest amperes. A single
rating's figure always counts: one for each end of a range where there are as many, else the highest.
One figure on a dual plate can't be placed.
"""

from functools import lru_cache

from matcher.motor import Motor
from matcher.trade.rated import Rating, ratings
from matcher.trade.supply import System

Placed = tuple[tuple[Rating, tuple[float, ...]], ...]


def common(old: Motor, new: Motor, supplied: tuple[System, ...]) -> tuple[float | None, float | None]:
    """Return both motors' amperes at the supply, at the first one that both sides have.

    A side that has no figure there is None.
    """
    pairs = [(_serving(old, system), _serving(new, system)) for system in supplied]
    pairs += [(at(old, system), at(new, system)) for system in supplied]
    for pair in pairs:
        if None not in pair:
            return pair
    return max(pairs, key=_known, default=(None, None))


def _known(pair: tuple[float | None, float | None]) -> int:
    return 2 * (pair[1] is not None) + (pair[0] is not None)


def at(motor: Motor, system: System) -> float | None:
    """Return a motor's full-load amperes on a system; a single rating's figure counts on any."""
    served = _serving(motor, system)
    if served is not None or motor.volts is None or motor.amps is None:
        return served
    figures = placed(motor.volts, motor.amps)
    return _figure(*figures[0], system.nominal) if len(figures) == 1 else None


def _serving(motor: Motor, system: System) -> float | None:
    """Return the amperes at the rating that serves a system best; None where none serves it."""
    if motor.volts is None or motor.amps is None:
        return None
    nominal = system.nominal
    serving = [one for one in placed(motor.volts, motor.amps) if one[0].tolerates(nominal, nominal)]
    if not serving:
        return None

    def closeness(one: tuple[Rating, tuple[float, ...]]) -> tuple[bool, float]:
        return not one[0].tolerates(system.low, system.high), one[0].away(nominal)

    return _figure(*min(serving, key=closeness), nominal)


def _figure(rating: Rating, figures: tuple[float, ...], nominal: float) -> float:
    if len(figures) == 1:
        return figures[0]
    nearest = min(range(2), key=lambda place: abs(rating.ends[place] - nominal))
    return figures[nearest]


@lru_cache(maxsize=4096)
def placed(volts: str, amps: tuple[float, ...]) -> Placed:
    """Return each rating with its amperes, highest first; empty where they can't be placed.

    >>> [(str(rating), figures) for rating, figures in placed("115/208-230", (10.8, 5.6, 5.4))]
    [('115', (10.8,)), ('208-230', (5.6, 5.4))]
    """
    alternatives = ratings(volts)
    ends = sum(len(rating.ends) for rating in alternatives)
    if len(alternatives) == 1 and len(amps) != ends:
        return ((alternatives[0], (max(amps),)),)
    if len(amps) == len(alternatives):
        return tuple((rating, (figure,)) for rating, figure in zip(alternatives, amps, strict=True))
    if len(amps) != ends:
        return ()
    figures = iter(amps)
    return tuple((rating, tuple(next(figures) for _ in rating.ends)) for rating in alternatives)
