"""A record: what is known of one motor or offer, and where each value came from."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

from matcher.motor import Offer


class Origin(StrEnum):
    """How a value came to be known; the window marks each one differently."""

    READ = "read"
    """Read from the listing's or plate's text."""
    TYPED = "typed"
    """Typed in by the user, or corrected by him."""
    SEEN = "seen"
    """Seen by the user in a picture."""
    MEASURED = "measured"
    """Measured on the part itself."""
    ANSWERED = "answered"
    """The seller's answer."""
    PRESUMED = "presumed"
    """Taken over from the old motor, or implied by another fact; never said."""


class Mark(NamedTuple):
    """Where one value came from; a tuple, because the reader makes a score of them for each listing.

    `source` is `"title"` or `"text"` for a value that was read, else empty; `span` is the half-open
    character range in that source, and `said` the words there: `source_text[span[0]:span[1]] == said`.
    """

    origin: Origin = Origin.READ
    source: str = ""
    span: tuple[int, int] = (0, 0)
    said: str = ""


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two spans that give one field values that can't both be true; the field stays out of the facts."""

    field: str
    values: tuple[object, ...]
    said: tuple[str, ...]
    marks: tuple[Mark, ...] = ()


@dataclass(slots=True)
class Record:
    """One listing or plate: its text as found, the facts in it, the words behind each, its conflicts."""

    id: str
    facts: Offer = field(default_factory=Offer)
    where: dict[str, Mark] = field(default_factory=dict)
    conflicts: tuple[Conflict, ...] = ()
    title: str = ""
    text: str = ""

    @property
    def contradicted(self) -> frozenset[str]:
        """Names of the facts that the text gives twice and differently."""
        return frozenset(conflict.field for conflict in self.conflicts)
