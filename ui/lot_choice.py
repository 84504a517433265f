"""What is done with the chosen offers of a lot: taking them into the job."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QTableView, QWidget

from matcher.job import Listing
from ui.called import name_of
from ui.desk import Desk
from ui.lot import LotRow
from ui.models.lot_table import LotTable


class LotChoice(QObject):
    """Asks the clerk for the chosen offers."""

    said = Signal(str)
    """What was done, in one line."""
    trouble = Signal(str)

    def __init__(self, desk: Desk, model: LotTable, table: QTableView, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._model, self._table = desk, model, table

    def current(self) -> LotRow | None:
        """Return the offer that the keyboard is on."""
        row = self._table.currentIndex().row()
        return self._model.rows[row] if 0 <= row < len(self._model.rows) else None

    def add_to_job(self) -> None:
        """Take the chosen offer into the job as a candidate."""
        chosen = self.current()
        if chosen is None:
            self.trouble.emit(self.tr("Choose an offer first."))
            return
        task = self._desk.work.run_ticking(self._desk.clerk.listing, (chosen.at, chosen.id))
        task.done.connect(self._add)
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))

    def _add(self, listing: Listing) -> None:
        session = self._desk.session
        session.edit(self.tr("adding an offer"), session.job.with_listing(listing))
        self.said.emit(self.tr("Added to this job: {}").format(name_of(listing)))
