"""Takes rows of a lot out of the window: the selected ones to the clipboard, those shown into a CSV file."""

from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QTableView, QWidget

from ui.lot_out import lines
from ui.models.lot_table import LotTable
from ui.save_as import ask_where
from ui.words import counted
from ui.work import Work


class LotExits(QObject):
    """Writes on workers, since a lot may hold 50,000 rows."""

    said = Signal(str)
    """What was done, in one line."""
    trouble = Signal(str)

    def __init__(self, work: Work, model: LotTable, table: QTableView, parent: QWidget) -> None:
        super().__init__(parent)
        self._work, self._model, self._table, self._page = work, model, table, parent

    def copy(self) -> None:
        """Put the selected rows on the clipboard as a spreadsheet takes them, with their head."""
        from ui.export import tabbed

        rows = self._model.marked(self._table)
        if rows:
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
        from ui.export import save_csv

        rows = self._model.shown_rows()
        task = self._work.run(lambda: save_csv(path, "", lines(rows)))
        said = self.tr("{} saved as {}").format(counted(len(rows), "offer"), path.name)
        task.done.connect(lambda _nothing: self.trouble.emit(""))
        task.done.connect(lambda _nothing: self.said.emit(said))
        task.failed.connect(lambda fault: self.trouble.emit(self.tr("not saved: {}").format(fault)))
