"""The airflow of a proof run by every way that was measured; the first one counts.

Heat comes first: it measures all the air that the unit moves. A traverse sees one duct, the unit's own
reading is what its control believes.
"""

from matcher.airflow.entries import Values
from matcher.airflow.heat_rise import USUAL_EFFICIENCY, airflow_cfm, electric_heat_btu_h, furnace_heat_btu_h
from matcher.airflow.result import Result, figure, limits
from matcher.airflow.traverse import traverse_cfm
from matcher.errors import BadValue

ELECTRIC, FURNACE = 0.0, 1.0
"""The places of `electric` and `furnace` among the choices of `heat_source`."""
SOURCES = {
    "heat": "CFM = Btu/h / (1.08 x density ratio x rise), trade formula",
    "traverse": "mean velocity x area",
    "unit": "the unit's own reading",
}
WAYS = {"heat": "from the heat rise", "traverse": "from the traverse", "unit": "by the unit's own reading"}


def one(values: Values, name: str) -> float | None:
    """Return the single reading of an entry, `None` when it wasn't made."""
    return values[name][0] if name in values else None


def flows(values: Values, altitude_ft: float, faults: dict[str, str]) -> list[Result]:
    """Return a result for each way; what can't be is named in `faults` under the entry to mend."""
    found = {
        "heat": _from_heat(values, altitude_ft, faults),
        "traverse": _from_traverse(values, faults),
        "unit": one(values, "unit_cfm"),
    }
    return [
        Result(
            f"airflow_{way}", "Airflow", cfm, "CFM", "note", f"{figure(cfm)} CFM {WAYS[way]}.", SOURCES[way]
        )
        for way, cfm in found.items()
        if cfm is not None
    ]


RISE_ROUNDING_F = 2.0
"""Two thermometers read to a degree each: a rise within 2 F of supply less return is the same one."""


def rise_f(values: Values, faults: dict[str, str]) -> float | None:
    """Return the heat rise in degrees F: as entered, else supply less return; none where the two differ."""
    entered = one(values, "rise_f")
    supply, back = one(values, "supply_f"), one(values, "return_f")
    if supply is None or back is None:
        return entered
    if entered is not None:
        if abs(supply - back - entered) <= RISE_ROUNDING_F:
            return entered
        faults["rise_f"] = (
            f"Heat rise: {entered:g} F, yet supply less return is {supply - back:g} F; empty the wrong one"
        )
        return None
    if supply <= back:
        faults["supply_f"] = (
            f"Heat rise: {supply:g} F supply, {back:g} F return is no rise; measure again while it heats"
        )
        return None
    return supply - back


def _from_heat(values: Values, altitude_ft: float, faults: dict[str, str]) -> float | None:
    rise = rise_f(values, faults)
    try:
        heat = _heat(values)
        return airflow_cfm(heat, rise, altitude_ft) if heat is not None and rise is not None else None
    except BadValue as refused:
        faults["rise_f"] = str(refused)
        return None


def is_electric(values: Values) -> bool:
    """Say whether the heat is that of electric elements: as chosen, else where their readings are entered."""
    source = one(values, "heat_source")
    if source is not None:
        return source == ELECTRIC
    return any(f"heater_{what}" in values for what in ("watts", "volts", "amps"))


def _heat(values: Values) -> float | None:
    """Return the heat in Btu/h; `None` when it isn't known."""
    if one(values, "heat_source") == FURNACE:
        output, rate = one(values, "furnace_output"), one(values, "furnace_input")
        if output is None and rate is None:
            return None
        per_cent = one(values, "furnace_efficiency_pct")
        share = USUAL_EFFICIENCY if per_cent is None else per_cent / 100
        return furnace_heat_btu_h(output=output, input_rate=rate, efficiency=share)
    watts, volts, amps = (one(values, f"heater_{what}") for what in ("watts", "volts", "amps"))
    if watts is None and (volts is None or amps is None):
        return None
    phase = 3 if one(values, "heater_phase") == 1.0 else 1
    return electric_heat_btu_h(watts=watts, volts=volts, amps=amps, phase=phase)


def _from_traverse(values: Values, faults: dict[str, str]) -> float | None:
    area = one(values, "area_ft2")
    if "traverse_fpm" not in values or area is None:
        return None
    try:
        return traverse_cfm(values["traverse_fpm"], area)
    except BadValue as refused:
        faults["traverse_fpm"] = str(refused)
        return None


def agreement(found: list[Result]) -> list[Result]:
    """Return how well the other ways agree with the one that counts."""
    limit = limits()["airflow_agreement"]
    results = []
    for other in found[1:]:
        apart = 100 * abs(other.value - found[0].value) / found[0].value
        outcome = limit.outcome(apart)
        end = "they agree." if outcome == "good" else "measure both again before you trust either."
        counts = f"{figure(found[0].value)} CFM {_way(found[0])}"
        says = f"{other.says[:-1]}, {counts}: {figure(apart)} % apart, {end}"
        results.append(Result(f"{other.name}_agrees", "Two ways", apart, "%", outcome, says, limit.source))
    return results


def _way(result: Result) -> str:
    return WAYS[result.name.removeprefix("airflow_")]
