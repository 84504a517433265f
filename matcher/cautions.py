"""What to be careful of where something is tested or measured, from `data/cautions.tsv`."""

from typing import Literal

from matcher.judging.presume import is_electronic
from matcher.motor import Motor
from matcher.tables import rows

Place = Literal["bench", "proof", "measure"]


def cautions_for(place: Place, motor: Motor | None = None) -> tuple[str, ...]:
    """Return the cautions of a place in their order; those for another kind of motor are left out.

    Of a motor whose kind isn't known every caution counts.
    """
    electronic = is_electronic(motor) if motor else None
    other = "" if electronic is None else "ac" if electronic else "ecm"
    return tuple(row["says"] for row in rows("cautions") if row["place"] == place and row["for"] != other)
