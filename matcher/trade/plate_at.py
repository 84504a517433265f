"""What a motor's plate says of its current at the supply of one place."""

from matcher.motor import Motor, Site
from matcher.trade import plate_amps
from matcher.trade.supply import systems


def plate_amps_at(new: Motor, old: Motor, site: Site) -> float | None:
    """Return the plate's full-load amperes at this supply; `None` while they can't be placed.

    A dual plate's figures belong to its volts; with several possible supplies the figure counts only when
    all of them give the same.
    """
    supplied = systems(old, site)
    figures = {plate_amps.at(new, system) for system in supplied}
    if not supplied and new.amps and len(set(new.amps)) == 1 and "/" not in (new.volts or ""):
        return new.amps[0]
    return figures.pop() if len(figures) == 1 else None
