"""Volts, amps and speed of the motor under load, held against its plate."""

from collections.abc import Iterator

from matcher.airflow.entries import Values
from matcher.airflow.flow import one
from matcher.airflow.result import Outcome, Result, figure, limits
from matcher.airflow.unbalance import DO_NOT_RUN_ABOVE, derating, unbalance_percent
from matcher.judging.saying import percent
from matcher.motor import Motor, Offer, Site
from matcher.trade.plate_at import plate_amps_at
from matcher.trade.rated import TOLERANCE, ratings


def electrical(values: Values, new: Offer, old: Motor, site: Site) -> Iterator[Result]:
    """Yield what volts, amps and speed come to."""
    volts, amps = values.get("volts", ()), values.get("amps", ())
    if volts and new.volts:
        yield _voltage(sum(volts) / len(volts), new.volts)
    if len(volts) == 3:
        yield _unbalance(volts)
    if amps:
        supplied = sum(volts) / len(volts) if volts else site.measured_volts
        yield from _current(max(amps), supplied, new, old, site)
    speed = one(values, "rpm")
    if speed is not None:
        yield from _speed(speed, new)


def _voltage(volts: float, rated: str) -> Result:
    limit = limits()["voltage_ratio"]
    fits = [rating for rating in ratings(rated) if rating.tolerates(volts, volts)]
    nearest = min(ratings(rated), key=lambda rating: rating.away(volts))
    span = f"{nearest.least:g} to {nearest.most:g} V"
    where, end = ("within", ".") if fits else ("outside", ": don't run it there.")
    about = f"{percent(TOLERANCE)} about its plate ({rated} V)"
    says = f"{figure(volts)} V at the motor lies {where} {span}, {about}{end}"
    return Result("voltage", "Volts", volts, "V", "good" if fits else "bad", says, limit.source)


def _unbalance(volts: tuple[float, ...]) -> Result:
    limit = limits()["voltage_unbalance"]
    percent = unbalance_percent(volts)
    factor = derating(percent)
    outcome: Outcome = limit.outcome(percent)
    if percent > DO_NOT_RUN_ABOVE or factor is None:
        outcome, end = "bad", f"above {DO_NOT_RUN_ABOVE:g} % it must not run; have the supply put right."
    elif outcome == "good":
        end = f"at most {limit.high:g} % is right."
    else:
        end = f"it may give {factor:.2f} of its rated power; have the supply looked at."
    says = f"The three voltages are unbalanced by {figure(percent)} %: {end}"
    return Result("voltage_unbalance", "Unbalance", percent, "%", outcome, says, limit.source)


def _current(amps: float, volts: float | None, new: Offer, old: Motor, site: Site) -> Iterator[Result]:
    place = site.model_copy(update={"measured_volts": volts}) if volts else site
    plate = plate_amps_at(new, old, place)
    limit = limits()["amps_ratio"]
    if plate is None:
        why = "measure the volts as well" if new.amps and volts is None else "its plate's figure isn't known"
        says = f"{figure(amps)} A can't be held against the plate: {why}."
        yield Result("amps", "Amps", amps, "A", "note", says, limit.source)
        return
    ratio = amps / plate
    outcome, end = _loaded(ratio, limit.outcome(ratio), new.service_factor or 1.0)
    says = f"{figure(amps)} A is {figure(100 * ratio)} % of the {plate:g} A on the plate: {end}"
    yield Result("amps", "Amps", amps, "A", outcome, says, f"the motor's plate; {limit.source}")


def _loaded(ratio: float, outcome: Outcome, service_factor: float) -> tuple[Outcome, str]:
    if outcome == "good":
        return "good", "it isn't overloaded."
    if ratio <= service_factor:
        return "watch", f"within its service factor of {service_factor:g}, but it will not last as long."
    return "bad", "it is overloaded; look at speed tap, static pressure and volts before it runs on."


def _speed(rpm: float, new: Offer) -> Iterator[Result]:
    limit = limits()["speed_ratio"]
    if new.rpm_range:
        low, high = new.rpm_range
        inside = limit.outcome(rpm / min(max(rpm, low), high)) == "good"
        says = f"{figure(rpm)} rpm lies {'within' if inside else 'outside'} its range of {low} to {high} rpm."
        yield Result("speed", "Speed", rpm, "rpm", "good" if inside else "watch", says, limit.source)
    elif new.rpm:
        near = min(new.rpm, key=lambda rated: abs(rated - rpm))
        outcome = limit.outcome(rpm / near)
        end = "as it should be." if outcome == "good" else _why_off(rpm, near, new)
        says = f"{figure(rpm)} rpm is {figure(100 * rpm / near)} % of the {near} rpm on the plate: {end}"
        yield Result("speed", "Speed", rpm, "rpm", outcome, says, f"the motor's plate; {limit.source}")


def _why_off(rpm: float, rated: int, new: Offer) -> str:
    if rpm > rated:
        return "it moves less air than it was made for, or the reading counts a reflection twice."
    if (new.speeds or 1) > 1:
        return "a lower tap, or it is overloaded or short of volts."
    return "it is overloaded, short of volts, or its capacitor is weak."
