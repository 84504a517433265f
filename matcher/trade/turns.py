"""Which way a motor turns, whichever end it is looked at from.

NEMA MG 1 looks from the end opposite the shaft (the lead end), IEC 60034-8 at the shaft: clockwise from the
shaft end is counter-clockwise from the lead end.
"""

from matcher.motor import Motor

OPPOSITE = {"cw": "ccw", "ccw": "cw"}


def lead_end(motor: Motor) -> str | None:
    """Return a motor's turn as seen from the lead end; None when turn or view isn't known.

    >>> lead_end(Motor(turn="cw", seen_from="shaft_end")), lead_end(Motor(turn="cw"))
    ('ccw', None)
    """
    if motor.turn is None or motor.seen_from is None:
        return None
    return motor.turn if motor.seen_from == "lead_end" else OPPOSITE.get(motor.turn, motor.turn)
