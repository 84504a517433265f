"""Takes the chosen offers of a lot into the open job as candidates."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QTableView, QWidget

from matcher.job import Job, Listing
from ui.called import name_of
from ui.desk import Desk
from ui.lot import LotRow
from ui.models.lot_table import LotTable
from ui.words import counted, held_already

MOST = 200
"""Offers taken into a job at once; more are a lot to rank and no choice to compare."""


class LotChoice(QObject):
    """Asks the clerk for the chosen offers and leaves out what is in the job already."""

    said = Signal(str)
    """What was done, in one line."""
    trouble = Signal(str)

    def __init__(self, desk: Desk, model: LotTable, table: QTableView, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._model, self._table = desk, model, table
        self._added: set[str] = set()
        """The ids that the line about the last adding speaks of."""
        desk.session.changed.connect(self._look_again)

    def current(self) -> LotRow | None:
        """Return the offer that the keyboard is on."""
        row = self._table.currentIndex().row()
        return self._model.rows[row] if 0 <= row < len(self._model.rows) else None

    def add_to_job(self) -> None:
        """Take all selected offers into the job as candidates."""
        rows = self._model.marked(self._table)
        if not rows:
            self.trouble.emit(self.tr("Choose an offer first."))
            return
        if len(rows) > MOST:
            words = self.tr("{} are selected: choose {} at most for one job.")
            self.trouble.emit(words.format(counted(len(rows), "offer"), MOST))
            return
        self._added = set()
        self.trouble.emit("")
        asked = [(row.at, row.id) for row in rows]
        task = self._desk.work.run_ticking(self._desk.clerk.listings, asked)
        task.done.connect(self._add)
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))

    def _add(self, listings: list[Listing]) -> None:
        session = self._desk.session
        known = {_likeness(listing) for listing in session.job.listings}
        fresh = [listing for listing in listings if _likeness(listing) not in known]
        job = session.job
        for listing in fresh:
            job = job.with_listing(listing)
        if fresh:
            one = len(fresh) == 1
            session.edit(self.tr("adding an offer") if one else self.tr("adding offers"), job)
        self.said.emit(self._words(fresh, len(listings) - len(fresh)))
        self._added = {listing.id for listing in fresh}

    def _look_again(self, job: Job) -> None:
        """Take back the line about what was added once that is undone."""
        if self._added and not self._added & {listing.id for listing in job.listings}:
            self._added = set()
            self.said.emit("")

    def _words(self, fresh: list[Listing], held: int) -> str:
        if not fresh:
            return held_already(held, held)
        what = name_of(fresh[0]) if len(fresh) == 1 else counted(len(fresh), "offer")
        words = self.tr("Added to this job: {}").format(what)
        return words + (self.tr("; {} in it already").format(held) if held else "")


def _likeness(listing: Listing) -> tuple[str, str, str]:
    return listing.source_name, listing.title, listing.text
