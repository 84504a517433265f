"""The old motor and one candidate, made ready to be judged together."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from matcher.motor import Motor, Offer, Site

NOTHING: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Reads:
    """Names of the facts that a check reads, by side; `pair` names relations of `Pair`."""

    old: tuple[str, ...] = ()
    new: tuple[str, ...] = ()
    site: tuple[str, ...] = ()
    pair: tuple[str, ...] = ()
    quoted: tuple[str, ...] = ()
    """Facts that the finding's words only quote: whatever they say, the answer stays the same."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Two motors and the place: everything that a check may look at.

    `presumed_*` maps each presumed fact to the reason; `contradicted_*` names facts that a text gives
    twice and differently, which are `None` in the motor and are never presumed over.
    """

    old: Motor
    new: Offer
    site: Site = field(default_factory=Site)
    presumed_old: Mapping[str, str] = field(default_factory=lambda: NOTHING)
    presumed_new: Mapping[str, str] = field(default_factory=lambda: NOTHING)
    contradicted_old: frozenset[str] = frozenset()
    contradicted_new: frozenset[str] = frozenset()
    same_number: bool = False
    """Brand and part number are said on both sides and equal."""
    same_brand: bool | None = None
    """None when a brand is not said."""
    same_program: bool | None = None
    """None when a program number is not said."""
    same_module: bool | None = None
    """None when a module number is not said."""


RELATIONS: tuple[str, ...] = ("same_number", "same_brand", "same_program", "same_module")
