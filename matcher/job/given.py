"""A value that a person gave: typed, measured, seen in a picture, or the seller's answer."""

from collections.abc import Mapping
from typing import Annotated

from pydantic import BeforeValidator, Field, JsonValue

from matcher.job.part import Part
from matcher.job.text import Line, Stamp, now
from matcher.motor import Facts, Motor, Offer, Site
from matcher.record import Conflict, Mark, Origin
from matcher.values import value_for


class Given(Part):
    """One given value with its origin; a `value` of `None` means "not known after all"."""

    value: JsonValue = None
    origin: Origin = Origin.TYPED
    note: Line = ""
    """The words behind it: what the seller wrote, which picture shows it, how it was measured."""
    when: Stamp = Field(default_factory=now)

    @property
    def withdrawn(self) -> bool:
        """Whether it takes a value away instead of giving one."""
        return self.value is None

    def mark(self) -> Mark:
        """Return where the value came from, as a record keeps it."""
        return Mark(origin=self.origin, said=self.note)


def _checked(model: type[Facts], given: object) -> object:
    if not isinstance(given, Mapping):
        return given
    checked = {}
    for field, entry in given.items():
        one = entry if isinstance(entry, Given) else Given.model_validate(entry)
        value = value_for(model, str(field), one.value)
        checked[str(field)] = one if one.value == value else one.model_copy(update={"value": value})
    return checked


GivenMotor = Annotated[dict[str, Given], BeforeValidator(lambda given: _checked(Motor, given))]
GivenOffer = Annotated[dict[str, Given], BeforeValidator(lambda given: _checked(Offer, given))]
GivenSite = Annotated[dict[str, Given], BeforeValidator(lambda given: _checked(Site, given))]

_UNSEATS: dict[str, tuple[str, ...]] = {
    # A fact given anew makes its read partner meaningless: a view belongs to the turn it was said
    # with, and a motor has either rated speeds or a range.
    "turn": ("seen_from",),
    "rpm": ("rpm_range",),
    "rpm_range": ("rpm",),
}


def _unseated(facts: Mapping[str, object], given: Mapping[str, Given]) -> set[str]:
    gone: set[str] = set()
    for field, entry in given.items():
        if entry.value != facts.get(field):
            gone.update(name for name in _UNSEATS.get(field, ()) if name not in given)
    return gone


def overlay(
    facts: Offer,
    where: Mapping[str, Mark],
    conflicts: tuple[Conflict, ...],
    given: Mapping[str, Given],
) -> tuple[Offer, dict[str, Mark], tuple[Conflict, ...]]:
    """Lay given values over read ones: the given one counts, its mark says so, its conflict is settled."""
    if not given:
        return facts, dict(where), conflicts
    known = facts.said()
    gone = _unseated(known, given) | {field for field, entry in given.items() if entry.withdrawn}
    kept = {field: value for field, value in known.items() if field not in gone}
    kept |= {field: entry.value for field, entry in given.items() if not entry.withdrawn}
    marks = {field: mark for field, mark in where.items() if field in kept}
    marks |= {field: entry.mark() for field, entry in given.items() if not entry.withdrawn}
    open_ones = tuple(conflict for conflict in conflicts if conflict.field not in given)
    return Offer.model_validate(kept), marks, open_ones
