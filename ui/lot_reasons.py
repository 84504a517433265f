"""The reasons of a lot's rows: fetched for what is seen, for the chosen one, and for all that is saved."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QTableView, QWidget

from ui.desk import Desk
from ui.lot import LotRow
from ui.models.lot_table import LotTable
from ui.work import Task

PAUSE_MS = 60
"""How long scrolling must rest before the reasons of what is seen are asked for."""


class LotReasons(QObject):
    """A reason costs a judgement, so the clerk is asked for those that somebody looks at."""

    why = Signal(str)
    """The chosen offer's name and reason."""

    def __init__(
        self, desk: Desk, model: LotTable, table: QTableView, is_free: Callable[[], bool], parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._desk, self._model, self._table, self._is_free = desk, model, table, is_free
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self._look)
        table.verticalScrollBar().valueChanged.connect(self.soon)
        table.verticalScrollBar().rangeChanged.connect(self.soon)
        model.modelReset.connect(self.soon)
        model.modelReset.connect(self.explain)
        model.dataChanged.connect(self.explain)
        table.selectionModel().currentChanged.connect(self.explain)

    def soon(self) -> None:
        """Ask for the reasons of what is seen, once the eye rests."""
        self._pause.start()

    def _seen(self) -> list[LotRow]:
        top, last = self._table.rowAt(0), self._table.rowAt(self._table.viewport().height() - 1)
        rows = self._model.rows
        return rows[max(top, 0) : (last if last >= 0 else len(rows) - 1) + 1]

    def _look(self) -> None:
        missing = self._model.without_reason(self._seen()) if self._table.isVisible() else []
        if missing and self._is_free():
            self._ask(missing)

    def _ask(self, places: list[int]) -> Task:
        task = self._desk.work.run_ticking(self._desk.clerk.reasons, places)
        asked = self._model.ranking
        task.done.connect(lambda found: self._model.learn(found) if self._model.ranking is asked else None)
        return task

    def explain(self) -> None:
        """Say why the chosen offer is judged so; what isn't known yet is asked for."""
        at = self._table.currentIndex().row()
        shown = self._model.shown_rows(at, at) if at >= 0 else []
        self.why.emit(f"{shown[0].name}: {shown[0].reason}" if shown and shown[0].reason else "")
        if shown and self._model.without_reason(shown):
            self.soon()

    def fill(
        self, start: Callable[[Task, object], None], rows: list[LotRow], then: Callable[[], None]
    ) -> None:
        """Fetch what rows still lack, then go on; `start` runs it with a bar and a Stop."""
        missing = self._model.without_reason(rows)
        if missing:
            start(self._ask(missing), lambda _found: then())
        else:
            then()
