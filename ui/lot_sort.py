"""Sorts a lot by a column, on a worker; a second time the other way round."""

from PySide6.QtCore import QObject

from matcher.money.cost import OF_THE_TABLES
from ui.desk import Desk
from ui.models.lot_columns import MARK, sorted_rows, turned_rows
from ui.models.lot_table import LotTable
from ui.work import Task


class LotSort(QObject):
    """Knows by which column the rows stand, and shows it at the head of the table."""

    def __init__(self, desk: Desk, model: LotTable, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._model = desk, model
        self._column, self._is_turned = -1, False

    def as_ranked(self) -> None:
        """Take note that the rows stand in the order of the ranking."""
        self._note(MARK, turned=False)

    def as_read(self) -> None:
        """Take note that the rows stand as they were read."""
        self._note(-1, turned=False)

    def _note(self, column: int, *, turned: bool) -> None:
        self._column, self._is_turned = column, turned
        self._model.call_sorted(column, turned=turned)

    def by(self, column: int) -> Task:
        """Return the task that brings the rows sorted."""
        rows, work, again = self._model.every_row, self._desk.work, column == self._column
        self._note(column, turned=again and not self._is_turned)
        if again:
            return work.run(turned_rows, rows)
        return work.run(sorted_rows, rows, column, self._money())

    def _money(self) -> str:
        """Return the job's own currency."""
        fallback = self._desk.session.job.fallback
        return fallback.currency if fallback else OF_THE_TABLES
