"""What is presumed before anything is judged: facts by equal number, then what an unsaid kind means.

A contradicted fact is not missing: nothing is ever presumed over it.
"""

import re
from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType
from typing import TypeVar

from matcher.judging.pair import NOTHING, Pair
from matcher.motor import MOTOR_FIELDS, Motor, Offer, Wanted
from matcher.record import Record
from matcher.trade.frames import bare_frame
from matcher.trade.numbers import same_brand, same_code
from matcher.trade.rated import ratings

BY_NUMBER = "same maker and number"
BY_KIND = "from what else is said of it"
BY_FRAME = "usual for the frame"

BODY_OF_48Y = 5.6
"""Inches; frames 48Y and 48YZ have this shell (common practice, no source)."""

_OWN_WAY = ("module", "module_number", "program_number")
"""They travel on their own, so an equal number says nothing of them."""
_NUMBERS = ("brand", "part_number", "other_numbers")
_BY_NUMBER = tuple(name for name in MOTOR_FIELDS if name not in (*_OWN_WAY, *_NUMBERS))
_CONTROLLED = ("module", "module_number", "program_number", "rpm_range", "control_signal")
_SINGLE_PHASE = frozenset({"psc", "split_phase", "capacitor_start", "shaded_pole"})
ELECTRONIC = frozenset({"ecm", "ecm_torque", "ecm_airflow"})
_FACE_FRAME = re.compile(r"\d+[A-Z]*C")

READS_KIND = ("motor_type", "plug_pins", "phase", "volts", "speeds", "frame", "item")
"""Facts whose values `by_kind` looks at; tests hold the two together."""
READS_KIND_SAID = (
    ("module",),
    ("module_number", "program_number", "rpm_range", "control_signal"),
    ("capacitor_uf", "capacitor_vac"),
    ("body_diameter_in",),
    ("mounting",),
)
"""Facts of which it only asks whether any of them is said."""

Side = TypeVar("Side", bound=Motor)


def prepare(wanted: Wanted, candidate: Record) -> Pair:
    """Return the pair with everything presumed that the rules presume, and what relates the two.

    The old side depends on `wanted` alone, and the new one too unless maker and number are equal.
    """
    old, presumed_old = old_side(wanted)
    new, contradicted = candidate.facts, candidate.contradicted
    brand = same_brand(old.brand, new.brand)
    equal = brand is True and same_code(old.part_number, new.part_number) is True
    taken: dict[str, object] = {}
    if equal:
        taken = by_number(wanted.motor, new, contradicted)
        new = new.model_copy(update=taken)
    implied = by_kind(new, contradicted)
    if implied:
        new = new.model_copy(update=implied)
    return Pair(
        old=old,
        new=new,
        site=wanted.site,
        presumed_old=presumed_old,
        presumed_new=_reasons(taken, implied),
        contradicted_old=wanted.contradicted,
        contradicted_new=contradicted,
        same_number=equal,
        same_brand=brand,
        same_program=same_code(old.program_number, new.program_number),
        same_module=same_code(old.module_number, new.module_number),
    )


@lru_cache(maxsize=64)
def old_side(wanted: Wanted) -> tuple[Motor, Mapping[str, str]]:
    """Return the old motor with what its kind implies, and the reasons; no candidate changes it."""
    implied = by_kind(wanted.motor, wanted.contradicted)
    return wanted.motor.model_copy(update=implied), _reasons({}, implied)


def new_side(offer: Offer, contradicted: frozenset[str]) -> tuple[Offer, Mapping[str, str]]:
    """Return an offer with what its kind implies, and the reasons; for every old motor of another number."""
    implied = by_kind(offer, contradicted)
    return (offer.model_copy(update=implied) if implied else offer), _reasons({}, implied)


def _reasons(taken: Mapping[str, object], implied: Mapping[str, object]) -> Mapping[str, str]:
    if not taken and not implied:
        return NOTHING
    kinds = {name: BY_FRAME if name == "body_diameter_in" else BY_KIND for name in implied}
    return MappingProxyType(dict.fromkeys(taken, BY_NUMBER) | kinds)


def _sold_alone(motor: Motor, contradicted: frozenset[str]) -> dict[str, object]:
    """Return that an offer of a module alone is just that, where its `module` isn't said."""
    alone = isinstance(motor, Offer) and motor.item == "module"
    unsaid = motor.module is None and "module" not in contradicted
    return {"module": "module_only"} if alone and unsaid else {}


def by_number(old: Motor, new: Offer, contradicted: frozenset[str]) -> dict[str, object]:
    """Return the new one's missing motor facts as an old one of equal maker and number has them."""
    blocked = contradicted | _one_of_two(new, contradicted)
    return {
        name: value
        for name in _BY_NUMBER
        if name not in blocked and getattr(new, name) is None and (value := getattr(old, name)) is not None
    }


def _one_of_two(new: Offer, contradicted: frozenset[str]) -> frozenset[str]:
    """Return the facts that may not be presumed because their other half is said."""

    def said(name: str) -> bool:
        return getattr(new, name) not in (None, False) or name in contradicted

    blocked = set()
    for one, other in (("rpm", "rpm_range"), ("plug_pins", "leads")):
        blocked |= {other} if said(one) else set()
        blocked |= {one} if said(other) else set()
    if said("turn") or said("seen_from"):
        blocked |= {"turn", "seen_from"}
    return frozenset(blocked)


def by_kind(motor: Motor, contradicted: frozenset[str]) -> dict[str, object]:
    """Return what a motor's kind implies and its text does not say: type, phase, body diameter, face."""
    implied = _sold_alone(motor, contradicted)
    kind: str | None = motor.motor_type
    if kind is None and "motor_type" not in contradicted:
        kind = "ecm" if implied else _unsaid_type(motor, contradicted)
        if kind is not None:
            implied["motor_type"] = kind
    if motor.phase is None and "phase" not in contradicted:
        phase = _unsaid_phase(motor, kind)
        if phase is not None:
            implied["phase"] = phase
    if motor.frame is not None:
        implied |= _by_frame(motor, contradicted)
    return implied


def is_electronic(motor: Motor) -> bool | None:
    """Say whether a motor is electronically commutated, by its type or what else is said; None if not known.

    >>> is_electronic(Motor(program_number="55-203")), is_electronic(Motor(phase=3)), is_electronic(Motor())
    (True, False, None)
    """
    kind = motor.motor_type or by_kind(motor, frozenset()).get("motor_type")
    return None if kind is None else kind in ELECTRONIC


def _unsaid_type(motor: Motor, contradicted: frozenset[str]) -> str | None:
    """Two program numbers that can't both be true say of the kind what either of them says."""
    told = any(getattr(motor, name) is not None or name in contradicted for name in _CONTROLLED)
    if told or 16 in (motor.plug_pins or ()):
        return "ecm"
    return "polyphase" if motor.phase == 3 else None


def _unsaid_phase(motor: Motor, kind: str | None) -> int | None:
    if kind == "polyphase":
        return 3
    if kind in _SINGLE_PHASE or kind in ELECTRONIC:
        return 1
    lit = motor.volts is not None and single_phase_volts(motor.volts)
    capacitor = motor.capacitor_uf is not None or motor.capacitor_vac is not None
    return 1 if lit or capacitor or (motor.speeds or 0) >= 2 else None


@lru_cache(maxsize=4096)
def single_phase_volts(volts: str) -> bool:
    """Say whether an alternative is 265 or 277 V, or touches 110-127 V: then one phase is presumed."""
    return any(r.overlaps(110, 127) or {r.low, r.high} <= {265.0, 277.0} for r in ratings(volts))


def _by_frame(motor: Motor, contradicted: frozenset[str]) -> dict[str, object]:
    implied: dict[str, object] = {}
    frame = bare_frame(motor.frame or "")
    if frame in ("48Y", "48YZ") and motor.body_diameter_in is None and "body_diameter_in" not in contradicted:
        implied["body_diameter_in"] = BODY_OF_48Y
    if motor.mounting is None and "mounting" not in contradicted and _FACE_FRAME.fullmatch(frame):
        implied["mounting"] = ("face",)
    return implied
