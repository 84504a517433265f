"""Takes rows of a lot out of the window: the selected ones to the clipboard, those shown into a CSV file."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QTableView, QWidget

from ui.lot import LotRow
from ui.lot_out import lines
from ui.models.lot_table import LotTable
from ui.save_as import ask_where
from ui.words import counted
from ui.work import Work

Fill = Callable[[list[LotRow], Callable[[], None]], None]
"""Fetches the reasons that rows still lack, then goes on."""


class LotExits(QObject):
    """Writes on workers, since a lot may hold 50,000 rows."""

    said = Signal(str)
    """What was done, in one line."""
    trouble = Signal(str)

    def __init__(self, work: Work, model: LotTable, table: QTableView, fill: Fill, parent: QWidget) -> None:
        super().__init__(parent)
        self._work, self._model, self._table, self._page = work, model, table, parent
        self._fill = fill

    def copy(self) -> None:
        """Put the selected rows on the clipboard as a spreadsheet takes them, with their head."""
        rows = self._model.marked(self._table)
        if rows:
            self._fill(rows, lambda: self._copy(self._model.marked(self._table)))

    def _copy(self, rows: list[LotRow]) -> None:
        from ui.export import tabbed

        said = self.tr("{} copied").format(counted(len(rows), "offer"))
        task = self._work.run(lambda: tabbed(lines(rows)))
        task.done.connect(lambda words: QGuiApplication.clipboard().setText(words))
        task.done.connect(lambda _words: self.said.emit(said))

    def choose_csv(self) -> None:
        """Ask where to save the rows shown."""
        path = ask_where(self._page, self.tr("offers"), "csv")
        if path is not None:
            self.save_shown(path)

    def save_shown(self, path: Path) -> None:
        """Save the rows shown, in their order, as CSV."""
        self._fill(self._model.rows, lambda: self._save(path))

    def _save(self, path: Path) -> None:
        from ui.export import save_csv

        rows = self._model.shown_rows()
        task = self._work.run(lambda: save_csv(path, "", lines(rows)))
        said = self.tr("{} saved as {}").format(counted(len(rows), "offer"), path.name)
        task.done.connect(lambda _nothing: self.trouble.emit(""))
        task.done.connect(lambda _nothing: self.said.emit(said))
        task.failed.connect(lambda fault: self.trouble.emit(self._not_saved(path, fault)))

    def _not_saved(self, path: Path, fault: Exception) -> str:
        why = fault.strerror if isinstance(fault, OSError) and fault.strerror else str(fault)
        return self.tr("{}: not saved ({}); choose another place").format(path.name, why.lower())
