"""Random motors, offers and places, invented throughout, for tests, benchmarks and the simulation.

`catalogue` draws models as the trade builds them: facts that belong together come together. `listing` makes
an offer of one of them with facts left out at random, as sellers do. `wild_offer` and `wild_wanted` know no
sense at all: every fact is drawn by itself from a few values that lie on both sides of the rules' limits.
"""

import random
from collections.abc import Mapping, Sequence

from matcher.motor import MOTOR_FIELDS, Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record

MAKERS = (
    "Quarrendale",
    "Hexmoor",
    "Velmarrow",
    "Ostrellin",
    "Brackfen",
    "Tolvarre",
    "Ennisquill",
    "Durmantle",
)

_KINDS = {
    "psc": 60,
    "shaded_pole": 8,
    "split_phase": 7,
    "capacitor_start": 7,
    "ecm_torque": 8,
    "ecm_airflow": 5,
    "polyphase": 5,
}
_ECM = ("ecm_torque", "ecm_airflow")
_VOLTS = {"polyphase": ("208-230/460", "460", "200"), "shaded_pole": ("115", "208-230")}
_LINE_VOLTS = ("115", "115", "208-230", "208-230", "230", "277", "115/208-230", "460")
_SPEEDS = {"shaded_pole": (1550, 1050), "capacitor_start": (1725, 1140), "split_phase": (1725, 1140)}
_POWERS = (1 / 12, 1 / 8, 1 / 6, 1 / 5, 1 / 4, 1 / 3, 1 / 2, 3 / 4, 1.0)
_BODIES = (3.3, 5.0, 5.5, 5.6, 5.625, 6.5)
_MOUNTS = (
    ("band",),
    ("band",),
    ("band", "studs"),
    ("studs",),
    ("lugs",),
    ("cradle",),
    ("rigid_base",),
    ("face",),
)


def random_motor(rng: random.Random, maker: str | None = None) -> Motor:
    """Draw one complete motor whose facts belong together."""
    kind = rng.choices(tuple(_KINDS), tuple(_KINDS.values()))[0]
    facts = _plate(rng, kind) | _shaft(rng) | _body(rng, kind) | _control(rng, kind)
    brand = maker or rng.choice(MAKERS)
    number = f"{brand[0]}{rng.choice('ACEHKMT')}-{rng.randint(20, 56)}{rng.randint(100, 999)}"
    return Motor(brand=brand, part_number=number, motor_type=kind, **facts)


def _plate(rng: random.Random, kind: str) -> dict[str, object]:
    volts = rng.choice(_VOLTS.get(kind, _LINE_VOLTS[:4] if kind in _ECM else _LINE_VOLTS))
    power = rng.choice(_POWERS)
    amps = round(power * 8 * 115 / float(volts.split("/")[0].split("-")[0]) + 0.3, 1)
    return {
        "volts": volts,
        "phase": 3 if kind == "polyphase" else 1,
        "hertz": rng.choice(("60", "60", "60", "60", "60", "50/60")),
        "power_hp": power,
        "amps": (amps,),
        "enclosure": rng.choice(("OAO", "OAO", "OAO", "TEAO", "ODP", "TENV", "TEFC")),
        "bearing": rng.choice(("sleeve", "ball")),
        "shaft_position": rng.choice(("horizontal", "horizontal", "any", "up", "down")),
        "insulation_class": rng.choice(("A", "B", "B", "F")),
        "ambient_c": rng.choice((40, 40, 40, 60)),
        "duty": rng.choice(("continuous", "continuous", "continuous", "intermittent")),
        "protector": rng.choice(("auto", "auto", "auto", "impedance", "none")),
        "service_factor": rng.choice((1.0, 1.0, 1.15)),
    }


def _shaft(rng: random.Random) -> dict[str, object]:
    diameter = rng.choice((0.3125, 0.5, 0.5, 0.5, 0.625))
    return {
        "shaft_diameter_in": diameter,
        "shaft_length_in": rng.choice((2.25, 3.0, 4.0, 5.0, 6.0)),
        "shaft_flats": rng.choice((0, 1, 1, 1, 2)),
        "shaft_ends": rng.choice((1, 1, 1, 2)),
        "turn": rng.choice(("cw", "ccw", "cw", "ccw", "either")),
        "seen_from": rng.choice(("lead_end", "lead_end", "shaft_end")),
    }


def _body(rng: random.Random, kind: str) -> dict[str, object]:
    mounting = rng.choice(_MOUNTS)
    body: dict[str, object] = {
        "mounting": mounting,
        "body_diameter_in": rng.choice(_BODIES),
        "body_length_in": rng.choice((3.5, 4.5, 5.0, 5.5, 6.0, 7.0)),
    }
    if "studs" in mounting:
        body["bolt_circle_in"] = rng.choice((3.375, 4.25))
    if kind == "polyphase" or mounting in (("rigid_base",), ("cradle",), ("face",)):
        body["frame"] = rng.choice(("56C", "143TC") if mounting == ("face",) else ("48", "56", "56H", "143T"))
    elif body["body_diameter_in"] == 5.6:
        body["frame"] = "48Y"
    return body


def _control(rng: random.Random, kind: str) -> dict[str, object]:
    if kind in _ECM:
        return {
            "rpm_range": rng.choice(((600, 1200), (300, 1100), (600, 1050))),
            "module": rng.choice(("with", "with", "without", "module_only")),
            "module_number": f"MO-{rng.randint(100, 140)}",
            "program_number": f"PR{rng.randint(1, 12):03}",
            "plug_pins": (16,) if kind == "ecm_torque" else (5, 16),
            "control_signal": "taps_24v"
            if kind == "ecm_torque"
            else rng.choice(("pwm", "serial", "thermostat")),
        }
    rated = rng.choice(_SPEEDS.get(kind, (1075, 1075, 825, 1625)))
    control: dict[str, object] = {"rpm": (rated,), "speeds": rng.choice((1, 1, 2, 3, 4)), "leads": True}
    control["lead_length_in"] = rng.choice((12.0, 24.0, 36.0))
    if kind == "psc":
        control |= {
            "capacitor_uf": rng.choice((3.0, 5.0, 7.5, 10.0)),
            "capacitor_vac": rng.choice((370, 440)),
        }
    return control


def catalogue(rng: random.Random, size: int) -> list[Motor]:
    """Draw the models that the offers of one market are of."""
    return [random_motor(rng) for _ in range(size)]


_SAID: Mapping[str, float] = {
    "brand": 0.9,
    "part_number": 0.8,
    "motor_type": 0.5,
    "volts": 0.9,
    "power_hp": 0.9,
    "rpm": 0.85,
    "hertz": 0.5,
    "phase": 0.5,
    "turn": 0.75,
    "seen_from": 0.6,
    "shaft_diameter_in": 0.75,
    "amps": 0.6,
    "mounting": 0.5,
    "frame": 0.6,
    "module": 0.8,
}
"""How often a listing says a fact; the others are said in about one of three."""


def listing(rng: random.Random, motor: Motor, number: int) -> Record:
    """Return an offer of a motor as a listing says it: with facts left out, seldom with a contradiction."""
    said = {
        name: value
        for name in MOTOR_FIELDS
        if (value := getattr(motor, name)) is not None and rng.random() < _SAID.get(name, 0.35)
    }
    conflicts: tuple[Conflict, ...] = ()
    if said and rng.random() < 0.03:
        field = rng.choice(sorted(said))
        said.pop(field)
        conflicts = (Conflict(field, (), ()),)
    facts = Offer.model_construct(None, **said, **terms(rng))
    return Record(f"lot-{number}", facts, conflicts=conflicts, title=f"{motor.brand} motor")


def terms(rng: random.Random) -> dict[str, object]:
    """Draw what an offer says of money, condition and returns."""
    drawn: dict[str, object] = {"price": round(rng.lognormvariate(4.4, 0.5), 2)}
    if rng.random() < 0.03:
        drawn = {}
    if rng.random() < 0.9:
        drawn["currency"] = "USD"
    if rng.random() < 0.7:
        drawn["shipping"] = rng.choice((0.0, 9.9, 12.5, 15.0, 18.0))
    if rng.random() < 0.85:
        drawn["condition"] = rng.choice(
            ("new", "open_box", "rebuilt", "used_tested", "used", "used", "for_parts")
        )
    if rng.random() < 0.6:
        drawn["return_days"] = rng.choice((0, 0, 14, 30, 30, 60))
        if rng.random() < 0.5:
            drawn["return_shipping"] = rng.choice(("buyer", "seller"))
        if rng.random() < 0.3:
            drawn["restocking_pct"] = rng.choice((0.0, 10.0, 15.0, 20.0))
    if rng.random() < 0.4:
        drawn["quantity"] = rng.choice((1, 1, 2, 3, 10))
    if rng.random() < 0.02:
        drawn["item"] = rng.choice(("part", "module"))
    return drawn


def market(rng: random.Random, models: Sequence[Motor], size: int, start: int = 0) -> list[Record]:
    """Return `size` listings of the given models."""
    return [listing(rng, rng.choice(models), start + number) for number in range(size)]


def wanted(rng: random.Random, motor: Motor, number: int = 0) -> Wanted:
    """Return a failed motor with its place, as its owner knows them."""
    known = {name: getattr(motor, name) for name in MOTOR_FIELDS if rng.random() < 0.85}
    site = Site(
        supply_volts=rng.choice((None, None, 120, 208, 240)),
        in_airstream=rng.choice((None, True, True, False)),
        outdoors=rng.choice((None, None, False, True)),
        room_length_in=rng.choice((None, None, None, 7.0)),
        taps_in_use=rng.choice((None, None, 1, 2)),
        module_health=rng.choice((None, "good", "bad", "unknown")),
        motor_health=rng.choice((None, None, "good", "bad")),
    )
    known.pop("module", None)
    return Wanted(motor=Motor(**known), site=site, id=f"old-{number}")


_WILD: Mapping[str, tuple[object, ...]] = {
    "brand": ("Hexmoor", "HEXMOOR ", "Velmarrow", "n/a"),
    "part_number": ("HX-100", "hx 100", "HX-100B", "HX-1OO", "V 7"),
    "power_hp": (0.25, 0.333, 0.5, 0.75, 1.0),
    "volts": ("115", "208-230", "230", "115/230", "277", "460"),
    "phase": (1, 3),
    "hertz": ("60", "50", "50/60"),
    "amps": ((2.0,), (2.9,), (5.8, 2.9)),
    "rpm": ((1075,), (1075, 900), (1140,), (825,), (1625,)),
    "rpm_range": ((600, 1200), (300, 900)),
    "speeds": (1, 2, 3),
    "turn": ("cw", "ccw", "either"),
    "seen_from": ("lead_end", "shaft_end"),
    "shaft_diameter_in": (0.5, 0.499, 0.625),
    "shaft_length_in": (3.0, 4.0, 6.0),
    "shaft_flats": (0, 1, 2),
    "shaft_keyed": (True, False),
    "shaft_ends": (1, 2),
    "body_diameter_in": (5.5, 5.6, 6.5),
    "body_length_in": (4.0, 5.0, 7.0),
    "mounting": (("band",), ("studs",), ("lugs",), ("band", "studs"), ("rigid_base",), ("face",)),
    "bolt_circle_in": (3.375, 4.25),
    "frame": ("48Y", "48", "56", "56C", "143T", "145TC", "IEC71"),
    "enclosure": ("ODP", "OAO", "TEAO", "TENV", "TEFC"),
    "bearing": ("sleeve", "ball"),
    "shaft_position": ("horizontal", "up", "down", "any"),
    "insulation_class": ("A", "B", "F"),
    "ambient_c": (40, 60),
    "service_factor": (1.0, 1.15, 1.5),
    "duty": ("continuous", "intermittent"),
    "protector": ("auto", "manual", "impedance", "none"),
    "capacitor_uf": (5.0, 7.5),
    "capacitor_vac": (370, 440),
    "motor_type": ("psc", "split_phase", "shaded_pole", "ecm", "ecm_torque", "ecm_airflow", "polyphase"),
    "module": ("with", "without", "module_only"),
    "module_number": ("M-1", "m1", "M-2"),
    "program_number": ("P-1", "p 1", "P-2"),
    "plug_pins": ((16,), (5, 16), (4,)),
    "control_signal": ("taps_24v", "pwm", "serial"),
    "explosion_proof": (True, False),
    "leads": (True, False),
    "lead_length_in": (12.0, 36.0),
}
_WILD_SITE: Mapping[str, tuple[object, ...]] = {
    "supply_volts": (120, 208, 240, 277),
    "measured_volts": (118.0, 206.0),
    "supply_phase": (1, 3),
    "supply_hertz": (50, 60),
    "taps_in_use": (1, 2, 3),
    "room_length_in": (5.0, 7.0),
    "shaft_length_min_in": (3.5,),
    "circuit_amps": (3.0, 15.0),
    "outdoors": (True, False),
    "in_airstream": (True, False),
    "module_health": ("good", "bad", "unknown"),
    "motor_health": ("good", "bad", "unknown"),
}


def _drawn(rng: random.Random, pool: Mapping[str, tuple[object, ...]], share: float) -> dict[str, object]:
    return {name: rng.choice(values) for name, values in pool.items() if rng.random() < share}


def wild_offer(rng: random.Random, number: int, share: float) -> Record:
    """Draw an offer without sense; each fact is said with chance `share`, a few are contradicted."""
    facts = _drawn(rng, _WILD, share) | terms(rng)
    against = [name for name in MOTOR_FIELDS if rng.random() < 0.03]
    for name in against:
        facts.pop(name, None)
    conflicts = tuple(Conflict(name, (), ()) for name in against)
    return Record(f"wild-{number}", Offer(**facts), conflicts=conflicts, title="motor")


def wild_wanted(rng: random.Random, number: int, share: float) -> Wanted:
    """Draw an old motor and its place without sense."""
    facts = _drawn(rng, _WILD, share)
    against = frozenset(name for name in MOTOR_FIELDS if rng.random() < 0.02)
    for name in against:
        facts.pop(name, None)
    return Wanted(
        motor=Motor(**facts),
        site=Site(**_drawn(rng, _WILD_SITE, 0.4)),
        id=f"old-{number}",
        contradicted=against,
    )
