"""The proof run of one job: entries in, results held against their limits, and what to draw."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from matcher.airflow.curve import Point
from matcher.airflow.electrical import electrical
from matcher.airflow.entries import Values, values_in
from matcher.airflow.fan_laws import FanPoint, at_speed
from matcher.airflow.flow import agreement, flows, one
from matcher.airflow.rated_rise import held_to_plate
from matcher.airflow.result import Outcome, Result, figure, limits
from matcher.airflow.static import MOST_IN_WC, total_external_static_in_wc
from matcher.errors import BadValue
from matcher.judging.presume import is_electronic
from matcher.motor import Motor, Offer, Site
from matcher.tables import rows

SAME_SPEED = 0.05
"""Share of a rated speed within which the motor is taken to run at it (common practice)."""


@dataclass(frozen=True, slots=True)
class Proof:
    """Everything that follows from a proof run's entries."""

    results: tuple[Result, ...]
    cfm: float | None
    """The airflow that counts."""
    static_in_wc: float | None
    """The total external static."""
    rpm: float | None
    others: tuple[FanPoint, ...]
    """What the same fan in the same ducts would do at other speeds."""
    fan_table: tuple[Point, ...]
    reminders: tuple[str, ...]
    faults: Mapping[str, str]
    """By entry, one line on why it doesn't count."""

    @property
    def outcome(self) -> Outcome:
        """Return the worst outcome of all results; `note` while nothing was held against a limit."""
        found = {result.outcome for result in self.results}
        worst: tuple[Outcome, ...] = ("bad", "watch", "good")
        return next((outcome for outcome in worst if outcome in found), "note")

    @property
    def says(self) -> str:
        """Return the run in one line, for a rail or a head."""
        if not self.results:
            return "nothing measured yet"
        words = {"bad": "not right yet", "watch": "look at it again", "good": "proved", "note": "measured"}
        return f"{words[self.outcome]}{f', {figure(self.cfm)} CFM' if self.cfm else ''}"


def prove(texts: Mapping[str, str], new: Offer, old: Motor | None = None, site: Site | None = None) -> Proof:
    """Return what a proof run's entries come to; entries that can't be are named in `faults`."""
    old, site = old or Motor(), site or Site()
    values, faults = values_in(texts)
    altitude = one(values, "altitude_ft")
    found = flows(values, site.altitude_ft or 0.0 if altitude is None else altitude, faults)
    cfm = found[0].value if found else None
    static = _static(values, faults)
    rise = held_to_plate(values, faults)
    results = [
        *found,
        *agreement(found),
        *rise,
        *_air(values, cfm, static),
        *electrical(values, new, old, site),
    ]
    table = _fan_table(values, faults)
    return Proof(
        results=tuple(results),
        cfm=cfm,
        static_in_wc=static,
        rpm=one(values, "rpm"),
        others=tuple(_others(values, cfm, static, new, faults)),
        fan_table=table,
        reminders=_reminders(new, old, site),
        faults=faults,
    )


def _static(values: Values, faults: dict[str, str]) -> float | None:
    supply, back = one(values, "supply_static"), one(values, "return_static")
    if supply is None or back is None:
        return None
    if supply < 0 < back:
        faults["supply_static"] = (
            f"Supply static: {supply:g} in. w.c. can't be below the room while the return is above; "
            "the two hoses are swapped"
        )
        return None
    return total_external_static_in_wc(supply, back)


def _air(values: Values, cfm: float | None, static: float | None) -> Iterator[Result]:
    tons, watts = one(values, "tons"), one(values, "watts")
    if cfm is not None and tons is not None:
        yield _per_ton(cfm / tons, tons)
    if static is not None:
        yield _external(static)
    for name, what in (("filter_drop", "filter"), ("coil_drop", "coil")):
        drop = one(values, name)
        if drop is not None:
            yield _drop(name, what, drop)
    if cfm is not None and watts is not None:
        yield _fan_power(watts / cfm)


def _per_ton(each: float, tons: float) -> Result:
    limit = limits()["cfm_per_ton"]
    outcome = limit.outcome(each)
    end = "right" if outcome == "good" else "too much air" if each > (limit.high or 0) else "too little air"
    says = f"{figure(each)} CFM for each of {tons:g} tons: {end} ({limit.span()})."
    return Result("cfm_per_ton", "Air for each ton", each, "CFM/ton", outcome, says, limit.source)


def _external(static: float) -> Result:
    limit, better = limits()["external_static"], limits()["external_static_good"]
    if better.outcome(static) == "good":
        outcome: Outcome = "good"
        end = f"the ducts are easy on it (near {better.high:g} is right)."
    elif limit.outcome(static) == "good":
        outcome, end = (
            "watch",
            f"below {limit.high:g}, but near {better.high:g} would be right: filter, coil, ducts.",
        )
    else:
        outcome, end = "bad", f"above {limit.high:g}: something is blocked, closed or too small."
    says = f"Total external static {figure(static)} in. w.c.: {end}"
    return Result("external_static", "External static", static, "in. w.c.", outcome, says, limit.source)


def _drop(name: str, what: str, drop: float) -> Result:
    limit = limits()[name]
    outcome = limit.outcome(drop)
    end = "as it should be" if outcome == "good" else "clean or change it"
    says = f"The {what} takes {figure(drop)} in. w.c.: {end} ({limit.span()})."
    return Result(name, f"The {what} takes", drop, "in. w.c.", outcome, says, limit.source)


def _fan_power(each: float) -> Result:
    limit = limits()["watts_per_cfm"]
    outcome = limit.outcome(each)
    end = "moderate" if outcome == "good" else "much: high static, or an inefficient motor"
    says = f"{figure(each)} W for each CFM: {end} ({limit.span()})."
    return Result("watts_per_cfm", "Fan power", each, "W/CFM", outcome, says, limit.source)


def _others(
    values: Values, cfm: float | None, static: float | None, new: Offer, faults: dict[str, str]
) -> Iterator[FanPoint]:
    """Yield the working points at other speeds: those asked for, else the plate's other ones."""
    rpm = one(values, "rpm")
    if rpm is None or cfm is None:
        return
    amps = max(values["amps"]) if "amps" in values else None
    now = FanPoint(rpm, cfm, static, amps=amps, watts=one(values, "watts"))
    wanted = values.get("other_rpm") or tuple(
        float(rated) for rated in new.rpm or () if abs(rated - rpm) > SAME_SPEED * rated
    )
    for other in wanted[:12]:
        try:
            yield at_speed(now, other)
        except BadValue as refused:
            faults["other_rpm"] = str(refused)


def _fan_table(values: Values, faults: dict[str, str]) -> tuple[Point, ...]:
    numbers = values.get("fan_table", ())
    pairs = tuple(zip(numbers[::2], numbers[1::2], strict=False))
    wrong = len(numbers) % 2 or any(static > MOST_IN_WC for _, static in pairs)
    if numbers and (wrong or len(pairs) < 2 or len({flow for flow, _ in pairs}) < len(pairs)):
        faults["fan_table"] = (
            "The fan's table: enter at least two pairs of CFM and in. w.c., as 800 0.9 1000 0.7 1200 0.4"
        )
        return ()
    return tuple(sorted(pairs))


def _reminders(new: Offer, old: Motor, site: Site) -> tuple[str, ...]:
    kinds = {"any", "outdoors" if site.outdoors else "indoors"}
    if is_electronic(new) or is_electronic(old):
        kinds.add("ecm")
    return tuple(row["says"] for row in rows("proof_reminders") if row["for"] in kinds)
