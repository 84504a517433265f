"""The part of the store that keeps stock: a shop's list, a lot sheet, a flipper's book."""

from collections.abc import Iterable, Iterator

from matcher.job import Given, Listing
from matcher.record import Record
from matcher.store import offers as offer_rows
from matcher.store import shelves as shelf_rows
from matcher.store.desk import Desk
from matcher.store.merge import Clash
from matcher.store.offers import OfferLine
from matcher.store.shelves import ShelfLine


class Stock(Desk):
    """Shelves of saved offers, apart from all jobs; a job names those it is also ranked against."""

    def shelves(self, *, removed: bool = False) -> tuple[ShelfLine, ...]:
        """Return the shelves, last changed first; `removed` lists the removed ones instead."""
        with self._use() as db:
            return shelf_rows.shelves(db, removed=removed)

    def add_shelf(self, name: str, note: str = "") -> str:
        """Make an empty shelf and return its id."""
        with self._write() as db:
            return shelf_rows.new_shelf(db, name, note)

    def edit_shelf(self, shelf: str, *, name: str, note: str = "", removed: bool = False) -> None:
        """Rename a shelf, take it out of the list, or bring it back. Raises `NotInStore`."""
        with self._write() as db:
            shelf_rows.edit_shelf(db, shelf, name=name, note=note, removed=removed)

    def add_offers(self, shelf: str, records: Iterable[Record]) -> int:
        """Put offers on a shelf, all of them or none, and return how many. Raises `NotInStore`.

        The store is busy as long as `records` takes to come: hand over what is already read.
        """
        with self._write() as db:
            return shelf_rows.add_offers(db, shelf, records)

    def not_kept(self, records: Iterable[Record]) -> list[Record]:
        """Return the records that no shelf holds yet, by file, title and text."""
        with self._use() as db:
            return list(offer_rows.not_kept(records, offer_rows.kept_already(db)))

    def source_names(self, shelf: str) -> dict[int, str]:
        """Return where each offer of a shelf came from, as `lot.csv#3`, by number. Raises `NotInStore`."""
        with self._use() as db:
            return offer_rows.source_names(db, shelf)

    def offers(
        self, shelf: str, query: str = "", *, after: int = 0, limit: int = 200
    ) -> tuple[OfferLine, ...]:
        """Return one page of a shelf: up to `limit` offers whose number is above `after`.

        With a query: those that hold all its words, the last letters of which may be missing, or a
        part number that begins so; where none does, those with a number nearly the same.
        """
        with self._use() as db:
            return offer_rows.offers(db, shelf, query, after=after, limit=limit)

    def records(self, shelf: str, *, words: bool = True) -> Iterator[Record]:
        """Return all offers of a shelf as the engine judges them, read page by page.

        Without `words` the listing's text and the words behind its facts are left out: for ranking.
        The ids are `stock-<number>`. The lock is free between pages.
        """
        last, more = 0, True
        while more:
            with self._use() as db:
                page, last = offer_rows.records_page(db, shelf, last, words=words)
            yield from page
            more = bool(page)

    def offer(self, n: int) -> Listing:
        """Return one offer as a candidate for a job, with its corrections. Raises `NotInStore`."""
        with self._use() as db:
            return offer_rows.listing(db, n)

    def correct_offer(
        self, n: int, field: str, given: Given | None, before: Given | None = None
    ) -> Clash | None:
        """Correct one fact of an offer (`None`: as read again); `before` is the correction seen so far.

        Returns a `Clash`, and changes nothing, where another window corrected it meanwhile. Raises
        `NotInStore`, `UnknownField` or `BadValue`.
        """
        with self._write() as db:
            return offer_rows.correct(db, n, field, given, before)

    def remove_offers(self, numbers: Iterable[int]) -> None:
        """Delete offers for good."""
        with self._write() as db:
            offer_rows.remove_offers(db, numbers)

    def move_offers(self, numbers: Iterable[int], shelf: str) -> None:
        """Put offers on another shelf; on a removed one they are out of the way. Raises `NotInStore`."""
        with self._write() as db:
            offer_rows.move_offers(db, numbers, shelf)
