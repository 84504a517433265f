"""The plate that several tests start from: all that a fit needs to know, and no more."""

PLATE: dict[str, object] = {
    "motor_type": "psc",
    "volts": "115",
    "phase": 1,
    "hertz": "60",
    "power_hp": 0.5,
    "rpm": (1075,),
    "turn": "cw",
    "seen_from": "lead_end",
    "shaft_diameter_in": 0.5,
    "mounting": ("band",),
}
