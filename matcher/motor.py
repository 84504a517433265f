"""The facts about a motor, an offer of one, and the place where it must run.

Field names, units and meaning are the program's contract with its files and commands: every
name that measures something carries its unit. An absent field (`None`) means *not known*,
never a default. The models are frozen and hashable, so that equal facts can be judged once.
"""

import re
from typing import Annotated, Literal, Self

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, model_validator

Turn = Literal["cw", "ccw", "either"]
View = Literal["lead_end", "shaft_end"]
Mounting = Literal["band", "studs", "lugs", "cradle", "rigid_base", "face", "yoke"]
Enclosure = Literal["ODP", "OAO", "TEAO", "TENV", "TEFC"]
Bearing = Literal["sleeve", "ball"]
ShaftPosition = Literal["horizontal", "up", "down", "any"]
InsulationClass = Literal["A", "B", "F", "H"]
Duty = Literal["continuous", "intermittent"]
Protector = Literal["auto", "manual", "impedance", "none"]
MotorType = Literal[
    "psc",
    "split_phase",
    "capacitor_start",
    "shaded_pole",
    "ecm",
    "ecm_torque",
    "ecm_airflow",
    "polyphase",
]
ModuleSupply = Literal["with", "without", "module_only"]
ControlSignal = Literal["taps_24v", "pwm", "serial", "thermostat"]
Condition = Literal["new", "open_box", "rebuilt", "used_tested", "used", "for_parts"]
Payer = Literal["buyer", "seller"]
Item = Literal["module", "part"]
Health = Literal["good", "bad", "unknown"]

_RATING = r"\d{2,4}(?:\.\d+)?(?:-\d{2,4}(?:\.\d+)?)?"
_VOLTS = re.compile(rf"{_RATING}(?:/{_RATING})*")
_HERTZ = re.compile(r"(?:50|60|50/60)")


def _as_text(value: object) -> object:
    """Let files say `volts: 115` and `hertz: 60` as plain numbers."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return f"{value:g}"
    return value


def _volts(text: str) -> str:
    if not _VOLTS.fullmatch(text):
        raise ValueError('write volts as "115", "208-230", "115/230" or "115/208-230"')
    for rating in text.split("/"):
        low, _, high = rating.partition("-")
        if high and float(low) > float(high):
            raise ValueError("write a range of volts with the lower end first")
    return text


def _hertz(text: str) -> str:
    if not _HERTZ.fullmatch(text):
        raise ValueError('write hertz as "50", "60" or "50/60"')
    return text


def _highest_first(values: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(sorted(values, reverse=True))


def _ascending(values: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(sorted(set(values)))


def _lowest_to_highest(values: tuple[int, int]) -> tuple[int, int]:
    if values[0] > values[1]:
        raise ValueError("write the lowest speed first")
    return values


Positive = Annotated[float, Field(gt=0, lt=1e6)]
NotNegative = Annotated[float, Field(ge=0, lt=1e9)]
Count = Annotated[int, Field(ge=1, lt=10**9)]
Whole = Annotated[int, Field(ge=0, lt=10**9)]
PerCent = Annotated[float, Field(ge=0, le=100)]
Text = Annotated[str, Field(min_length=1, max_length=400)]
Volts = Annotated[str, BeforeValidator(_as_text), AfterValidator(_volts)]
Hertz = Annotated[str, BeforeValidator(_as_text), AfterValidator(_hertz)]


class Facts(BaseModel):
    """A frozen set of facts; unknown names are refused, absent ones stay `None`."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

    def said(self) -> dict[str, object]:
        """Return the known facts alone, in field order, as JSON would hold them."""
        return self.model_dump(mode="json", exclude_none=True)


class Motor(Facts):
    """One motor's plate and body; lengths in inches, power in hp, currents in amperes."""

    brand: Text | None = None
    part_number: Text | None = None
    other_numbers: tuple[Text, ...] | None = None
    power_hp: Positive | None = None
    volts: Volts | None = None
    phase: Literal[1, 3] | None = None
    hertz: Hertz | None = None
    amps: Annotated[tuple[Positive, ...], Field(min_length=1), AfterValidator(_highest_first)] | None = None
    rpm: Annotated[tuple[Count, ...], Field(min_length=1), AfterValidator(_highest_first)] | None = None
    rpm_range: Annotated[tuple[Count, Count], AfterValidator(_lowest_to_highest)] | None = None
    speeds: Count | None = None
    turn: Turn | None = None
    seen_from: View | None = None
    shaft_diameter_in: Positive | None = None
    shaft_length_in: Positive | None = None
    shaft_flats: Literal[0, 1, 2] | None = None
    shaft_keyed: bool | None = None
    shaft_ends: Literal[1, 2] | None = None
    body_diameter_in: Positive | None = None
    body_length_in: Positive | None = None
    mounting: Annotated[tuple[Mounting, ...], Field(min_length=1)] | None = None
    bolt_circle_in: Positive | None = None
    frame: Text | None = None
    enclosure: Enclosure | None = None
    bearing: Bearing | None = None
    shaft_position: ShaftPosition | None = None
    insulation_class: InsulationClass | None = None
    ambient_c: Annotated[int, Field(ge=-60, le=200)] | None = None
    service_factor: Annotated[float, Field(gt=0, le=3)] | None = None
    duty: Duty | None = None
    protector: Protector | None = None
    capacitor_uf: Positive | None = None
    capacitor_vac: Count | None = None
    motor_type: MotorType | None = None
    module: ModuleSupply | None = None
    module_number: Text | None = None
    program_number: Text | None = None
    plug_pins: Annotated[tuple[Count, ...], Field(min_length=1), AfterValidator(_ascending)] | None = None
    control_signal: ControlSignal | None = None
    explosion_proof: bool | None = None
    leads: bool | None = None
    lead_length_in: Positive | None = None


class Offer(Motor):
    """A motor, module or part for sale; money in `currency`, per piece."""

    price: NotNegative | None = None
    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")] | None = None
    shipping: NotNegative | None = None
    condition: Condition | None = None
    return_days: Whole | None = None
    return_shipping: Payer | None = None
    restocking_pct: PerCent | None = None
    warranty_days: Whole | None = None
    quantity: Whole | None = None
    seller_rating_pct: PerCent | None = None
    item: Item | None = None


class Site(Facts):
    """Where the motor must run, as measured or known there; all optional."""

    supply_volts: Positive | None = None
    measured_volts: Positive | None = None
    supply_phase: Literal[1, 3] | None = None
    supply_hertz: Annotated[float, Field(gt=0, le=400)] | None = None
    taps_in_use: Count | None = None
    room_length_in: Positive | None = None
    shaft_length_min_in: Positive | None = None
    circuit_amps: Positive | None = None
    outdoors: bool | None = None
    in_airstream: bool | None = None
    module_health: Health | None = None
    motor_health: Health | None = None
    altitude_ft: Annotated[float, Field(ge=-1500, le=30000)] | None = None


class Wanted(BaseModel):
    """The failed motor with the place where its stand-in must run."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    motor: Motor = Motor()
    site: Site = Site()
    id: str = ""
    contradicted: frozenset[str] = frozenset()
    """Names of motor facts that its plate gives twice and differently; they are `None` in `motor`."""
    pays: NotNegative | None = None
    """What its owner would pay for a stand-in that fits, in USD; only a trader asks."""

    @model_validator(mode="after")
    def _contradicted_is_absent(self) -> Self:
        both = [name for name in self.contradicted if getattr(self.motor, name, None) is not None]
        if both:
            raise ValueError(f"{', '.join(sorted(both))}: contradicted, so it can't also be known")
        return self


MOTOR_FIELDS: tuple[str, ...] = tuple(Motor.model_fields)
OFFER_FIELDS: tuple[str, ...] = tuple(Offer.model_fields)
SITE_FIELDS: tuple[str, ...] = tuple(Site.model_fields)
