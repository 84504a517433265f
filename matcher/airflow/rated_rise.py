"""The heat rise against the span that the furnace's own rating plate gives."""

from matcher.airflow.entries import Values
from matcher.airflow.flow import is_electric, rise_f
from matcher.airflow.result import Limit, Result, figure

SOURCE = "the furnace's own rating plate"


def held_to_plate(values: Values, faults: dict[str, str]) -> list[Result]:
    """Return the rise held against the plate; nothing where either isn't entered.

    The plate's span holds for the furnace's own heat: beside electric heat it is named in
    `faults`. Less air takes up more heat: a rise above the plate's is too little air, one below too much.
    """
    rise = rise_f(values, faults)
    if rise is None or "rated_rise_f" not in values:
        return []
    if is_electric(values):
        faults["rated_rise_f"] = (
            "Rated rise: it is a furnace's, and what is entered is electric heat; "
            "choose furnace under Heat from, or empty it"
        )
        return []
    low, high = values["rated_rise_f"]
    limit = Limit("rated_rise", low, high, "F", "Heat rise against the furnace's plate", SOURCE)
    inside = limit.outcome(rise) == "good"
    end = "right" if inside else "too little air" if rise > high else "too much air"
    says = f"Heat rise {figure(rise)} F: {end} (its plate says {limit.span()})."
    return [Result("rated_rise", "Heat rise", rise, "F", "good" if inside else "bad", says, SOURCE)]
