"""One listing of a job: its text as found, what was read in it, and what people know better."""

from functools import lru_cache
from typing import Annotated, Any, Self
from uuid import uuid4

from pydantic import AfterValidator, Field, PlainSerializer

from matcher import __version__
from matcher.job.given import Given, GivenOffer, overlay
from matcher.job.part import Part
from matcher.job.text import Digest, FileName, Id, Line, PlainText
from matcher.job.typed import typed
from matcher.judging.told import Told, says_unknown, says_unread
from matcher.motor import Offer
from matcher.plain import as_tuples, plain_json, without_halves
from matcher.record import Conflict, Mark, Origin, Record
from matcher.values import value_for

LONGEST_WORDS = 400
"""Characters of an answer that are kept beside it."""


def new_id() -> str:
    """Return a fresh random id for a job or a listing."""
    return uuid4().hex


def _plain_mark(mark: Mark) -> Mark:
    said = without_halves(mark.said)
    return mark if said == mark.said else mark._replace(said=said)


def _frozen(conflict: Conflict) -> Conflict:
    """Return the conflict as files give it back, so that a saved one equals the one just read."""
    values = tuple(as_tuples(plain_json(value)) for value in conflict.values)
    said = tuple(without_halves(words) for words in conflict.said)
    return Conflict(conflict.field, values, said, tuple(_plain_mark(mark) for mark in conflict.marks))


class Attachment(Part):
    """A picture or original file; its bytes lie in the store under their digest, never under its name."""

    name: FileName
    digest: Digest
    note: Line = ""


class Reading(Part):
    """What the reader found in a listing's text; kept so that a job opens without reading again."""

    facts: Annotated[Offer, PlainSerializer(Offer.said, when_used="json")] = Offer()
    where: dict[str, Annotated[Mark, AfterValidator(_plain_mark)]] = Field(default_factory=dict)
    conflicts: tuple[Annotated[Conflict, AfterValidator(_frozen)], ...] = ()
    reader: str = __version__
    """Version of the program that read it."""

    @classmethod
    def of(cls, record: Record) -> Self:
        """Keep what a record says, without its text."""
        return cls(facts=record.facts, where=record.where, conflicts=record.conflicts)

    def is_of(self, title: str, text: str) -> bool:
        """Whether every word behind it stands in that title and text where its mark says."""
        marks = [*self.where.values(), *(mark for conflict in self.conflicts for mark in conflict.marks)]
        return all(
            (title if mark.source == "title" else text)[slice(*mark.span)] == mark.said
            for mark in marks
            if mark.origin is Origin.READ and mark.source
        )


@lru_cache(maxsize=256)
def read_listing_text(title: str, text: str) -> Reading:
    """Read a listing's words now, whatever was kept before."""
    from matcher.reading import read_listing  # only jobs with unread text pay for the reader

    return Reading.of(read_listing(text, title))


def _read(text: str) -> Offer:
    return read_listing_text("", text).facts


class Listing(Part):
    """One candidate of a job; frozen, every edit returns a new one.

    Corrections lie beside what was read and survive reading again. A correction whose value is
    `None` takes a read value away ("not known after all"). Settling a conflict is a correction.
    """

    id: Id = Field(default_factory=new_id)
    title: PlainText = ""
    text: PlainText = ""
    source_name: Line = ""
    """Where it came from, as shown: a file with `#n`, "pasted", a shelf; a word, never opened."""
    original: Attachment | None = None
    """The saved page or file it came from, as it was."""
    reading: Reading | None = None
    corrections: GivenOffer = Field(default_factory=dict)
    pictures: tuple[Attachment, ...] = ()
    decision: Line = ""
    note: PlainText = ""

    @classmethod
    def of(cls, record: Record, source_name: str = "") -> Self:
        """Make a candidate of a record just read; the record's own id becomes its source's name."""
        return cls(
            title=record.title,
            text=record.text,
            source_name=source_name or record.id,
            reading=Reading.of(record),
        )

    def edited(self, **changes: Any) -> Self:
        """Return the listing with some of its parts replaced. Raises `BadValue`.

        A changed title or text drops what was read before, since its spans no longer hold.
        """
        if changes.keys() & {"title", "text"} and "reading" not in changes:
            changes["reading"] = None
        return super().edited(**changes)

    def corrected(self, field: str, value: object, *, origin: Origin = Origin.TYPED, note: str = "") -> Self:
        """Return the listing with one fact corrected, answered or settled; `None` withdraws the fact.

        Raises `UnknownField` or `BadValue`.
        """
        given = Given(value=value_for(Offer, field, value), origin=origin, note=note)
        return self.edited(corrections=self.corrections | {field: given})

    def settled(self, field: str, value: object, words: str = "") -> Self:
        """Return the listing with one of the values that it gives twice; `words` are those behind it.

        A turn's words often say from which end as well (`CWLE`): that counts with them.
        Raises `UnknownField` or `BadValue`.
        """
        chosen = self.corrected(field, value, note=words)
        view = read_listing_text("", words).facts.seen_from if field == "turn" else None
        return chosen.corrected("seen_from", view, note=words) if view else chosen

    def told(
        self, field: str, text: str, *, origin: Origin = Origin.TYPED, metric: bool = False, note: str = ""
    ) -> Self:
        """Return the listing with one fact as people type it: `1/2`, or in the words of a listing, `CCWLE`.

        Lengths without a unit are inches, with `metric` millimetres. A seller who answers that he doesn't
        know is not asked again. Raises `UnknownField` or `BadValue`.
        """
        if origin is Origin.ANSWERED and says_unknown(text):
            return self.corrected(field, None, origin=origin, note=note or text.strip()[:LONGEST_WORDS])
        told = self
        for name, value in typed(field, text, _read, metric=metric).items():
            told = told.corrected(name, value, origin=origin, note=note)
        return told

    def told_unknown(self) -> Told:
        """Return what the seller can't tell, by the listing's words and by what he answered."""
        unknown = {
            name for name, one in self.corrections.items() if one.withdrawn and one.origin is Origin.ANSWERED
        }
        return Told(frozenset(unknown), says_unread(f"{self.title}\n{self.text}"))

    def withdrawn(self, field: str, note: str = "") -> Self:
        """Return the listing with one fact taken away: not known after all."""
        return self.corrected(field, None, note=note)

    def as_read(self, field: str) -> Self:
        """Return the listing with the correction of one fact undone, so that the text counts again."""
        rest = {name: given for name, given in self.corrections.items() if name != field}
        return self.edited(corrections=rest)

    def read_again(self) -> Self:
        """Return the listing read anew by this program; corrections stay."""
        return self.edited(reading=read_listing_text(self.title, self.text))

    def current_reading(self) -> Reading:
        """Return what was read in the text, reading it now where that wasn't kept or is of another text."""
        kept = self.reading
        if kept is not None and kept.is_of(self.title, self.text):
            return kept
        return read_listing_text(self.title, self.text)

    def record(self) -> Record:
        """Return the listing as the engine judges it: read facts with the corrections laid over them."""
        read = self.current_reading()
        facts, where, conflicts = overlay(read.facts, read.where, read.conflicts, self.corrections)
        return Record(self.id, facts, where, conflicts, self.title, self.text)


def plain_record(record: Record) -> Record:
    """Return the record with every half character in its words replaced, itself where there is none."""
    title, text = without_halves(record.title), without_halves(record.text)
    if title == record.title and text == record.text:
        return record
    read = Reading.of(record)
    return Record(record.id, read.facts, read.where, read.conflicts, title, text)
