"""Measured facts laid over what a listing says, and where the two differ."""

from collections.abc import Mapping
from dataclasses import dataclass

from matcher.entry import entered, spoken
from matcher.errors import SamespinError
from matcher.job.given import Given, overlay
from matcher.judging.saying import fact, turn, unit
from matcher.limit import at_most
from matcher.motor import MOTOR_FIELDS, Offer
from matcher.record import Origin, Record
from matcher.trade.numbers import compact
from matcher.trade.rated import equal_ratings
from matcher.trade.turns import lead_end

ROUNDING = 0.02
SHAFT_ROUNDING_IN = 0.005
"""Two values within 2 %, shafts within 0.005 in, are one thing said more or less exactly."""
TURN = ("turn", "seen_from")
"""The two facts that say one thing together."""
_ONE_WAY = ("cw", "ccw")


@dataclass(frozen=True, slots=True)
class Deviation:
    """One fact that the listing says and that was measured otherwise."""

    field: str
    listed: str
    """The listing's value as people say it, with its unit."""
    said: str
    """The listing's own words; empty for a value that was typed in."""
    measured: str

    @property
    def says(self) -> str:
        """Return it as one sentence of a note to the seller."""
        words = f'the listing says "{self.said}" ({self.listed})' if self.said else f"listed as {self.listed}"
        told, verb = ("turn", "turns") if self.field in TURN else (self.field, "measures")
        return f"{fact(told).capitalize()}: {words}; it {verb} {self.measured}."


def values_in(measured: Mapping[str, str]) -> tuple[dict[str, object], dict[str, str]]:
    """Return the typed measurements as values, and by field why one can't be."""
    values: dict[str, object] = {}
    faults: dict[str, str] = {}
    for name, text in measured.items():
        if name not in MOTOR_FIELDS:
            faults[name] = f"{name!r:.60} is no fact of a motor"
            continue
        try:
            value = entered(name, text)
        except SamespinError as refused:
            faults[name] = str(refused)
        else:
            if value is not None:
                values[name] = value
    return values, faults


def measured_record(candidate: Record, values: Mapping[str, object]) -> Record:
    """Return the candidate with measured facts over its listed ones; a conflict on them is settled.

    A reversible motor that was seen to turn one way stays reversible.
    """
    seen_one_way = candidate.facts.turn == "either" and values.get("turn") in _ONE_WAY
    given = {
        name: Given.model_validate({"value": value, "origin": Origin.MEASURED})
        for name, value in values.items()
        if not (seen_one_way and name in ("turn", "seen_from"))
    }
    facts, where, conflicts = overlay(candidate.facts, candidate.where, candidate.conflicts, given)
    return Record(candidate.id, facts, where, conflicts, candidate.title, candidate.text)


def deviations(candidate: Record, measured: Record, names: Mapping[str, object]) -> tuple[Deviation, ...]:
    """Return the facts in `names` that the listing says otherwise than they were measured.

    A turn and the end that it is seen from are one thing: it is named once, under the one of the two that
    was listed otherwise.
    """
    differing = [name for name in MOTOR_FIELDS if _differs(name, candidate.facts, measured.facts, names)]
    return tuple(_deviation(name, candidate, measured.facts) for name in differing)


def _differs(name: str, listed: Offer, found: Offer, names: Mapping[str, object]) -> bool:
    if name not in names or getattr(listed, name) is None:
        return False
    if name not in TURN:
        return not same(name, listed, found)
    if "turn" not in names or same("turn", listed, found):
        return False
    return name == ("seen_from" if listed.turn == found.turn else "turn")


def _deviation(name: str, candidate: Record, found: Offer) -> Deviation:
    told = "turn" if name in TURN else name
    mark = candidate.where.get(told)
    said = _quoted(mark.said) if mark and mark.source else ""
    return Deviation(name, in_words(told, candidate.facts), said, in_words(told, found))


def _quoted(words: str) -> str:
    flat = " ".join(words.split())
    return flat if len(flat) <= 120 else f"{flat[:117]}..."


def same(name: str, one: Offer, other: Offer) -> bool:
    """Tell whether two records say the same of one fact, within rounding."""
    if name in TURN:
        return _same_turn(one, other)
    left, right = getattr(one, name), getattr(other, name)
    if isinstance(left, bool) or isinstance(right, bool) or name in ("shaft_flats", "shaft_ends"):
        return bool(left == right)
    if name == "volts":
        return equal_ratings(left, right)
    if isinstance(left, tuple) and isinstance(right, tuple) and isinstance(left[0], (int, float)):
        return len(left) == len(right) and all(map(_near, left, right))
    if isinstance(left, float) and isinstance(right, float) and name == "shaft_diameter_in":
        return abs(left - right) <= SHAFT_ROUNDING_IN
    if isinstance(left, (int, float)) and isinstance(right, (int, float)):
        return _near(left, right)
    if isinstance(left, str) and isinstance(right, str):
        return compact(left) == compact(right)
    return bool(left == right)


def _near(left: float, right: float) -> bool:
    return at_most(abs(left - right), ROUNDING * max(abs(left), abs(right)))


def _same_turn(one: Offer, other: Offer) -> bool:
    """Tell whether two turns are one; where only one of them names its end, nobody can say otherwise."""
    is_open = (one.seen_from is None) != (other.seen_from is None)
    if is_open and one.turn in _ONE_WAY and other.turn in _ONE_WAY:
        return True
    return _turn(one) == _turn(other)


def _turn(facts: Offer) -> tuple[str | None, str | None]:
    """Return the turn as seen from the lead end, where its view is known; either way needs no view."""
    if facts.turn == "either":
        return facts.turn, None
    seen = lead_end(facts)
    return (facts.turn, facts.seen_from) if seen is None else (seen, "lead_end")


def in_words(name: str, facts: Offer) -> str:
    """Return a fact with its unit; a turn with the end that it is seen from. Empty when not known."""
    value = getattr(facts, name)
    if value is None:
        return ""
    if name == "turn":
        return turn(facts.turn, facts.seen_from)
    return f"{spoken(name, value)} {unit(name)}".strip()
