"""What people know better about a listing: corrections, settled conflicts, and where it was split.

Each method changes the job by one undo step and returns the line that says why it can't be, else nothing.
"""

from collections.abc import Sequence

from PySide6.QtCore import QObject

from matcher.job import Listing
from matcher.job.repeats import not_held
from matcher.record import Origin
from matcher.refusal import told
from ui.desk import Desk
from ui.fields import label
from ui.words import counted, held_already

LONGEST_NOTE = 400


class ListingEdits(QObject):
    """Edits listings of the open job."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk

    def _put(self, words: str, listing: Listing) -> None:
        self._desk.session.edit(words, self._desk.session.job.with_listing(listing))

    def add(self, listings: Sequence[Listing]) -> str:
        """Add the listings that the job doesn't hold yet; returns the line that says which it does."""
        job = self._desk.session.job
        fresh = not_held(job, listings)
        if fresh:
            self._desk.session.edit(
                self.tr("adding {}").format(counted(len(fresh), "listing")),
                job.edited(listings=(*job.listings, *fresh)),
            )
        return held_already(len(listings) - len(fresh), len(listings))

    def correct(self, listing: Listing, field: str, text: str, origin: Origin) -> str:
        """Take a typed, seen or answered value for a field."""
        try:
            note = text[:LONGEST_NOTE] if origin is Origin.ANSWERED else ""
            metric = self._desk.units.metric
            changed = listing.told(field, text[:LONGEST_NOTE], origin=origin, metric=metric, note=note)
        except ValueError as fault:
            return f"{label(field)}: {told(fault)}"
        self._put(self.tr("correcting {}").format(label(field).lower()), changed)
        return ""

    def settle(self, listing: Listing, field: str, value: object, said: str) -> None:
        """Take one of the values that the listing gives twice."""
        changed = listing.settled(field, value, said[:LONGEST_NOTE])
        self._put(self.tr("settling {}").format(label(field).lower()), changed)

    def words_are(self, listing: Listing, field: str, words: str) -> str:
        """Take selected words as the value of a field: as the reader understands them, else as typed."""
        from matcher.reading import read_listing

        value = getattr(read_listing(words).facts, field)
        try:
            value = self._desk.units.entered(field, words) if value is None else value
            changed = listing.corrected(field, value, note=words[:LONGEST_NOTE])
        except ValueError as fault:
            return f"{label(field)}: {told(fault)}"
        self._put(self.tr("saying what words mean"), changed)
        return ""

    def split(self, listing: Listing, at: int) -> str:
        """Cut a listing in two before a character of its text; returns the id of the new second part."""
        rest = Listing(text=listing.text[at:], source_name=listing.source_name)
        self._replace(
            self.tr("splitting a listing"), listing, [listing.edited(text=listing.text[:at]), rest], 0
        )
        return rest.id

    def join(self, listing: Listing, after: Listing) -> None:
        """Take the listing below as the rest of this one."""
        text = "\n".join(filter(None, (listing.text, after.title, after.text)))
        self._replace(self.tr("joining two listings"), listing, [listing.edited(text=text)], 1)

    def _replace(self, words: str, listing: Listing, new: list[Listing], swallowed: int) -> None:
        job = self._desk.session.job
        at = job.listings.index(listing)
        kept = (*job.listings[:at], *new, *job.listings[at + 1 + swallowed :])
        self._desk.session.edit(words, job.edited(listings=kept))

    def remove(self, listing: Listing) -> None:
        """Take a listing out of the job; undo brings it back."""
        job = self._desk.session.job
        self._desk.session.edit(self.tr("removing a listing"), job.without_listing(listing.id))

    def add_pictures(self, listing_id: str, kept: tuple[object, ...]) -> None:
        """Add kept pictures to a listing."""
        listing = self._desk.session.job.listing(listing_id)
        pictures = tuple(dict.fromkeys((*listing.pictures, *kept)))
        self._put(self.tr("adding pictures"), listing.edited(pictures=pictures))
