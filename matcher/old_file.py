"""The file that describes the old motor and its place: JSON or TOML `{"motor": {...}, "site": {...}}`.

A trader adds `pays = 240`, what its owner would pay for a stand-in; `conflicts` names facts that the plate
says twice and differently. A text file is read as its nameplate.
Names and values are held against the contract one by one, so that the message says which name was meant,
or what to write instead.
"""

import json
import sys
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TypeVar

from pydantic import ValidationError

from matcher.errors import BadValue, SamespinError, UnknownField, UnreadableInput
from matcher.meant import meant
from matcher.motor import MOTOR_FIELDS, SITE_FIELDS, Facts, Motor, Offer, Site, Wanted
from matcher.reading import read_plate
from matcher.reading.decoding import decoded
from matcher.reading.source_kind import foreign
from matcher.refusal import first_fault
from matcher.values import value_for

LARGEST = 1_000_000
"""Bytes of a file about one motor."""
MOST_FAULTS = 6
"""Faults of one file that are told at once; it isn't searched for many more."""
STANDARD_INPUT = Path("-")
_PARTS = ("motor", "site", "id", "pays", "conflicts")

SomeFacts = TypeVar("SomeFacts", bound=Facts)


def load_wanted(path: Path) -> Wanted:
    """Return the old motor and its site from a file; `-` is standard input.

    Raises `UnreadableInput` if the file is missing, empty, or neither JSON, TOML nor text, `UnknownField` for
    a name that isn't one, with the name that was probably meant, `BadValue` for a value that its field can't
    hold.
    """
    text = _text(path)
    if path.suffix.lower() not in {".json", ".toml"} and not text.lstrip().startswith(
        ("{", "[motor]", "[site]")
    ):
        return _from_plate(text, path)
    found = _parsed(text, path)
    try:
        return _wanted(found, path)
    except SamespinError as fault:
        raise type(fault)(f"{path.name}: {fault}") from None


def _text(path: Path) -> str:
    try:
        data = _bytes(path)
    except OSError as fault:
        raise UnreadableInput(
            f"{path}: it can't be read ({(fault.strerror or str(fault)).lower()})"
        ) from None
    if len(data) > LARGEST:
        raise UnreadableInput(f"{path.name}: it is larger than a file about one motor can be")
    what = foreign(data)
    if what:
        raise UnreadableInput(f"{path.name}: {what}")
    text = decoded(data).lstrip("\ufeff")
    if not text.strip():
        raise UnreadableInput(f"{path.name}: it is empty; write the old motor's facts under [motor]")
    return text


def _bytes(path: Path) -> bytes:
    if path == STANDARD_INPUT:
        if sys.stdin is None:
            raise OSError("standard input is closed")
        return sys.stdin.buffer.read(LARGEST + 1)
    with path.open("rb") as stream:
        return stream.read(LARGEST + 1)


def _from_plate(text: str, path: Path) -> Wanted:
    plate = read_plate(text)
    known = {field: getattr(plate.facts, field) for field in plate.where if field in MOTOR_FIELDS}
    if not known and not plate.conflicts:
        raise UnreadableInput(f"{path.name}: no fact of a motor stands in it; type the plate line by line")
    motor = Motor.model_validate(known)
    return Wanted(motor=motor, id=path.name, contradicted=plate.contradicted & set(MOTOR_FIELDS))


def _parsed(text: str, path: Path) -> Mapping[str, object]:
    try:
        is_json = path.suffix.lower() == ".json" or text.lstrip().startswith("{")
        found = json.loads(text) if is_json else tomllib.loads(text)
    except json.JSONDecodeError as fault:
        raise UnreadableInput(
            f"{path.name}, line {fault.lineno}: it is no JSON ({fault.msg.lower()})"
        ) from None
    except tomllib.TOMLDecodeError as fault:
        raise UnreadableInput(f"{path.name}: it is no TOML ({str(fault).lower()})") from None
    except (RecursionError, ValueError):
        raise UnreadableInput(f"{path.name}: it is nested too deep, or a number is too long") from None
    if not isinstance(found, Mapping):
        raise UnreadableInput(f'{path.name}: it is no object; write {{"motor": {{...}}, "site": {{...}}}}')
    return found


def _wanted(found: Mapping[str, object], path: Path) -> Wanted:
    for name in found:
        if name not in _PARTS:
            raise UnknownField(_unknown_part(name))
    conflicts = _conflicts(found.get("conflicts"))
    motor, site = _motor_and_site(found)
    # What the file itself calls contradicted isn't known, whatever value stands beside it.
    motor = motor.model_copy(update=dict.fromkeys(conflicts))
    if not motor.said() and not conflicts:
        raise UnreadableInput("no fact of the old motor stands in it; write them under motor")
    given = found.get("id")
    name = str(given) if isinstance(given, str | int) and given else path.name
    return Wanted(motor=motor, site=site, id=name, pays=_pays(found.get("pays")), contradicted=conflicts)


def _conflicts(given: object) -> frozenset[str]:
    """Return the names in `conflicts`: plain ones, or those of what `samespin read` writes."""
    if given is None:
        return frozenset()
    if not isinstance(given, Sequence) or isinstance(given, str):
        raise UnreadableInput("conflicts must be a list of facts' names")
    names = [str(entry.get("field") if isinstance(entry, Mapping) else entry) for entry in given]
    for name in names:
        if name not in MOTOR_FIELDS:
            raise UnknownField(_unknown_fact(name, Motor, "motor"))
    return frozenset(names)


def _pays(given: object) -> float | None:
    """Return what the owner would pay for a stand-in that fits, in USD."""
    if given is None:
        return None
    if isinstance(given, bool) or not isinstance(given, int | float) or not 0 <= given < 1e9:
        raise BadValue(f"pays must be a sum of US dollars, 0 or more, not {given!r:.40}")
    return float(given)


def _unknown_part(name: str) -> str:
    home = "motor" if name in MOTOR_FIELDS else "site" if name in SITE_FIELDS else ""
    if home:
        return f"{name!r:.60} stands outside; put it under {home!r}"
    return f"{name!r:.60} is no part of this file; its parts are motor and site{meant(name, _PARTS)}"


def _motor_and_site(found: Mapping[str, object]) -> tuple[Motor, Site]:
    """Return both parts; every name and value that can't be is told at once."""
    faults: list[SamespinError] = []
    motor = _facts(Motor, found.get("motor"), "motor", faults)
    site = _facts(Site, found.get("site"), "site", faults)
    if faults:
        raise _together(faults)
    return motor, site


def _facts(model: type[SomeFacts], given: object, part: str, faults: list[SamespinError]) -> SomeFacts:
    """Return the facts of one part; `faults` takes those that can't be."""
    if given is None:
        return model()
    if not isinstance(given, Mapping):
        raise UnreadableInput(f"{part} must hold facts, not {given!r:.40}")
    facts: dict[str, object] = {}
    for name, value in given.items():
        if len(faults) > MOST_FAULTS:
            break
        try:
            if (known := _value(model, str(name), value, part)) is not None:
                facts[name] = known
        except (UnknownField, BadValue) as fault:
            faults.append(fault)
    if faults:
        return model()
    try:
        return model.model_validate(facts)
    except ValidationError as fault:
        raise UnreadableInput(f"{part}: {first_fault(fault)}") from None


def _value(model: type[Facts], name: str, value: object, part: str) -> object:
    if name not in model.model_fields:
        raise UnknownField(_unknown_fact(name, model, part))
    return value_for(model, name, value)


def _together(faults: Sequence[SamespinError]) -> SamespinError:
    """Return several faults as one line, to be mended in one go; its kind is the first one's."""
    said = [str(fault) for fault in faults[:MOST_FAULTS]]
    said += ["and more like these"] if len(faults) > MOST_FAULTS else []
    return type(faults[0])("; ".join(said))


def _unknown_fact(name: str, model: type[Facts], part: str) -> str:
    """Say which fact was probably meant, or under which part it belongs."""
    other, home = (Site, "site") if model is Motor else (Motor, "motor")
    if name in other.model_fields:
        return f"{name!r:.60} is no fact of a {part}; put it under {home!r}"
    if name in Offer.model_fields:
        return f"{name!r:.60} is a fact of an offer, not of the old {part}"
    return f"{name!r:.60} is no fact of a {part}{meant(name, tuple(model.model_fields))}"
