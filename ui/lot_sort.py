"""Sorts a lot by a column, on a worker; a second time the other way round."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QTableView

from ui.lot import LotRow
from ui.models.lot_table import LotTable, sorted_rows, turned_rows
from ui.work import Task, Work

Take = Callable[[list[LotRow]], None]


class LotSort(QObject):
    """Knows by which column the rows stand, and shows it at the head of the table."""

    def __init__(self, work: Work, model: LotTable, table: QTableView, parent: QObject) -> None:
        super().__init__(parent)
        self._work, self._model, self._header = work, model, table.horizontalHeader()
        self._column = -1

    def as_ranked(self) -> None:
        """Take note that the rows stand in the order of the ranking."""
        self._column = -1
        self._header.setSortIndicatorShown(False)

    def by(self, column: int) -> Task:
        """Return the task that brings the rows sorted."""
        rows, header = self._model.every_row, self._header
        again = column == self._column
        turned = again and header.sortIndicatorOrder() == Qt.SortOrder.AscendingOrder
        header.setSortIndicator(
            column, Qt.SortOrder.DescendingOrder if turned else Qt.SortOrder.AscendingOrder
        )
        header.setSortIndicatorShown(True)
        self._column = column
        return self._work.run(turned_rows, rows) if again else self._work.run(sorted_rows, rows, column)
