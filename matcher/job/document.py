"""The document of one job: everything a user entered, nothing that can be worked out again.

A job is a frozen value. Every edit returns a new one that shares the unchanged parts, so a window
keeps the values before and after for undo and redo. Times are UTC (`2030-01-31T23:59:59Z`).
"""

from functools import lru_cache
from typing import Annotated, Self

from pydantic import AfterValidator, Field

from matcher.errors import BadValue
from matcher.job.given import Given, GivenMotor, GivenSite, overlay
from matcher.job.listing import Attachment, Listing, Reading, new_id
from matcher.job.part import Part
from matcher.job.text import Id, Line, PlainText, Section, Stamp, now
from matcher.motor import MOTOR_FIELDS, Motor, NotNegative, Site, Wanted
from matcher.record import Origin, Record
from matcher.values import value_for

CODE = 3
"""Letters of a currency's code (ISO 4217)."""
MOST_PRICE = 1e9

__all__ = ["Attachment", "Fallback", "Given", "Job", "Listing", "Reading"]


class Fallback(Part):
    """What is paid if no second-hand motor works: a repair quote, a new part at a counter."""

    price: NotNegative
    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")] = "USD"
    what: Line = "quote"
    """`"quote"`, `"new part at a counter"`, or the user's own words."""

    @classmethod
    def of(cls, price: float, currency: str, what: str = "quote") -> Self:
        """Return the fallback as somebody typed it. Raises `BadValue`, one line, for what can't be."""
        return cls(price=checked_price(price), currency=checked_currency(currency), what=what)


def checked_price(price: float) -> float:
    """Return what a fallback may cost. Raises `BadValue`."""
    if not 0 <= price < MOST_PRICE:
        raise BadValue(f"the fallback: {price:g} is no price; write it like 1150")
    return price


def checked_currency(currency: str) -> str:
    """Return a currency's code. Raises `BadValue` for what isn't three letters."""
    code = currency.strip().upper()
    if not (len(code) == CODE and code.isascii() and code.isalpha()):
        raise BadValue(f"{currency.strip()!r:.20} is no currency; write its three letters, such as USD")
    return code


@lru_cache(maxsize=64)
def read_plate_text(text: str) -> Reading:
    """Read a plate's words now."""
    from matcher.reading import read_plate  # only a job with a plate pays for the reader

    return Reading.of(read_plate(text))


def _distinct(listings: tuple[Listing, ...]) -> tuple[Listing, ...]:
    if len({listing.id for listing in listings}) < len(listings):
        raise ValueError("two listings have the same id")
    return listings


class Job(Part):
    """One job: the old motor, its place, the candidates, and what each later stage noted.

    `triage`, `arrival`, `proof`, `sheet_notes` and `worth` are named JSON values that the stage of
    that name defines; the document only keeps them.
    """

    id: Id = Field(default_factory=new_id)
    name: Line = ""
    place: Line = ""
    note: PlainText = ""
    created: Stamp = Field(default_factory=now)
    changed: Stamp = Field(default_factory=now)
    """When it was last saved; the store sets it."""
    plate_text: PlainText = ""
    given: GivenMotor = Field(default_factory=dict)
    """What was typed, measured or seen on the old motor; counts over the plate's text."""
    site: GivenSite = Field(default_factory=dict)
    listings: Annotated[tuple[Listing, ...], AfterValidator(_distinct)] = ()
    shelves: tuple[Id, ...] = ()
    """Shelves of saved stock that this job is also ranked against."""
    fallback: Fallback | None = None
    settings_changes: Section = Field(default_factory=dict)
    """Weights, priors and costs that the user changed: `{"weights": {"power": 12.0}, ...}`."""
    pictures: tuple[Attachment, ...] = ()
    """Pictures of the old motor and its place."""
    triage: Section = Field(default_factory=dict)
    arrival: Section = Field(default_factory=dict)
    proof: Section = Field(default_factory=dict)
    sheet_notes: Section = Field(default_factory=dict)
    worth: Section = Field(default_factory=dict)

    def with_given(self, field: str, value: object, *, origin: Origin = Origin.TYPED, note: str = "") -> Self:
        """Return the job with one fact of the old motor given; `None` withdraws what the plate says.

        Raises `UnknownField` or `BadValue`.
        """
        given = Given(value=value_for(Motor, field, value), origin=origin, note=note)
        return self.edited(given=self.given | {field: given})

    def without_given(self, field: str) -> Self:
        """Return the job with nothing given for one fact, so that the plate's text counts again."""
        return self.edited(given={name: one for name, one in self.given.items() if name != field})

    def with_site(self, field: str, value: object, *, origin: Origin = Origin.TYPED, note: str = "") -> Self:
        """Return the job with one fact of the site given. Raises `UnknownField` or `BadValue`."""
        given = Given(value=value_for(Site, field, value), origin=origin, note=note)
        return self.edited(site=self.site | {field: given})

    def without_site(self, field: str) -> Self:
        """Return the job with one fact of the site not known."""
        return self.edited(site={name: one for name, one in self.site.items() if name != field})

    def listing(self, listing_id: str) -> Listing:
        """Return one listing. Raises `BadValue` if the job has none with that id."""
        for listing in self.listings:
            if listing.id == listing_id:
                return listing
        raise BadValue(f"this job has no listing {listing_id:.40}; it may have been removed")

    def with_listing(self, listing: Listing) -> Self:
        """Return the job with a listing put in the place of the one with its id, or added at the end."""
        if any(other.id == listing.id for other in self.listings):
            return self.edited(listings=tuple(listing if o.id == listing.id else o for o in self.listings))
        return self.edited(listings=(*self.listings, listing))

    def without_listing(self, listing_id: str) -> Self:
        """Return the job without one listing."""
        return self.edited(listings=tuple(one for one in self.listings if one.id != listing_id))

    def plate(self) -> Reading:
        """Return what is read in the plate's text."""
        return read_plate_text(self.plate_text) if self.plate_text.strip() else Reading()

    def old_motor(self) -> Record:
        """Return the old motor as a record: the plate's facts with the given ones laid over them."""
        read = self.plate()
        facts, where, conflicts = overlay(read.facts, read.where, read.conflicts, self.given)
        return Record(self.id, facts, where, conflicts, "", self.plate_text)

    def wanted(self) -> Wanted:
        """Return the old motor and its site as the engine judges candidates against them."""
        record = self.old_motor()
        known = {name: value for name, value in record.facts.said().items() if name in MOTOR_FIELDS}
        site = {name: given.value for name, given in self.site.items()}
        return Wanted(
            motor=Motor.model_validate(known),
            site=Site.model_validate(site),
            id=self.id,
            contradicted=record.contradicted & frozenset(MOTOR_FIELDS),
        )

    def candidates(self) -> tuple[Record, ...]:
        """Return the listings as the engine judges them, in the order they were added."""
        return tuple(listing.record() for listing in self.listings)
