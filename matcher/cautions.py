"""What to be careful of where something is tested or measured, from `data/cautions.tsv`."""

from typing import Literal

from matcher.judging.presume import ELECTRONIC, by_kind
from matcher.motor import Motor
from matcher.tables import rows

Place = Literal["bench", "proof", "measure"]


def cautions_for(place: Place, motor: Motor | None = None) -> tuple[str, ...]:
    """Return the cautions of a place in their order; those for another kind of motor are left out.

    Of a motor whose kind isn't known every caution counts.
    """
    kind = (motor.motor_type or by_kind(motor, frozenset()).get("motor_type")) if motor else None
    other = "" if kind is None else "ac" if kind in ELECTRONIC else "ecm"
    return tuple(row["says"] for row in rows("cautions") if row["place"] == place and row["for"] != other)
