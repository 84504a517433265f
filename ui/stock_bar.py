"""Above a lot: which of the stock is shown, and the ways into the stock and out of it."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QPushButton, QTableView, QWidget

from ui.desk import Desk
from ui.models.lot_table import LotTable
from ui.still_box import StillBox
from ui.theme import GRID
from ui.words import counted
from ui.work import Task

ALL = ""
"""The id that stands for all shelves together."""


class StockBar(QWidget):
    """Chooses between the kept stock, its shelves, and the files opened last."""

    chosen = Signal(str)
    """Show a shelf by its id, or all of the stock (`ALL`)."""
    reopened = Signal(object)
    """Show the files opened last again (paths)."""
    said = Signal(str)
    trouble = Signal(str)
    changed = Signal()
    """The stock has changed under the lot that is shown."""

    def __init__(self, desk: Desk, model: LotTable, table: QTableView, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._model, self._table = desk, model, table
        self.which = StillBox()
        self.keep, self.take_out = QPushButton(self.tr("&Keep as stock")), QPushButton(self.tr("Take &out"))
        self.put_back = QPushButton(self.tr("Put &back"))
        self.shown: str | None = ALL
        """The shelf that is shown; `None` for opened files."""
        self._paths: list[Path] = []
        self._shelves: list[tuple[str, str, int]] = []
        self._is_kept = False
        self._taken: dict[str, list[int]] = {}
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        self.which.setAccessibleName(self.tr("Which offers are shown"))
        self.which.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.which.setMinimumContentsLength(24)
        self.take_out.setToolTip(
            self.tr("Take the selected offers out of the stock, as when they are sold (Delete)")
        )
        for widget in (self.which, self.keep, self.take_out, self.put_back):
            across.addWidget(widget)
        across.setSpacing(GRID)
        self.put_back.hide()

    def _connect(self) -> None:
        self.which.activated.connect(self._choose)
        self.keep.clicked.connect(self.keep_all)
        self.take_out.clicked.connect(self.take_selected_out)
        self.put_back.clicked.connect(self.put_them_back)
        delete = QShortcut(QKeySequence.StandardKey.Delete, self._table, self.take_selected_out)
        delete.setContext(Qt.ShortcutContext.WidgetShortcut)

    # --- which of it is shown

    def show_shelf(self, shelf: str) -> None:
        """Take note that a shelf, or all of the stock, is shown."""
        self.shown = shelf
        self.refresh()

    def show_files(self, paths: Sequence[Path]) -> None:
        """Take note that opened files are shown."""
        self.shown, self._paths, self._is_kept = None, list(paths), False
        self._fill()

    def refresh(self) -> None:
        """Ask what shelves there are."""
        self._run(self._desk.work.run_ticking(self._desk.clerk.shelves), self._take_shelves)

    def _run(self, task: Task, then: object) -> None:
        task.done.connect(then)
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))

    def _take_shelves(self, shelves: list[tuple[str, str, int]]) -> None:
        self._shelves = shelves
        self._fill()

    def _fill(self) -> None:
        every = sum(offers for _id, _name, offers in self._shelves)
        lines: list[tuple[str | None, str]] = [(ALL, self.tr("all kept stock, {}").format(f"{every:,}"))]
        lines += [(one, f"{name}, {offers:,}") for one, name, offers in self._shelves]
        if self._paths:
            lines.append((None, self.tr("opened: {}").format(self.lot_name())))
        self.which.clear()
        for _one, words in lines:
            self.which.addItem(words)
        self._lines = [one for one, _words in lines]
        self.which.setCurrentIndex(self._lines.index(self.shown) if self.shown in self._lines else 0)
        self.enable()

    def _choose(self, place: int) -> None:
        one = self._lines[place]
        if one is None:
            self.reopened.emit(list(self._paths))
        else:
            self.chosen.emit(one)

    def lot_name(self) -> str:
        """Return what the opened files are called together."""
        if len(self._paths) < 2:
            return self._paths[0].name if self._paths else self.tr("stock")
        return self.tr("{} and {} more").format(self._paths[0].name, len(self._paths) - 1)

    def enable(self) -> None:
        """Offer what can be done with the lot that is shown."""
        some = bool(self._model.total)
        self.keep.setEnabled(some and self.shown is None and not self._is_kept)
        self.take_out.setEnabled(some and self.shown is not None)

    # --- into the stock and out of it

    def keep_all(self) -> None:
        """Save the lot as stock, but for what is there already."""
        self.trouble.emit("")
        self._run(self._desk.work.run_ticking(self._desk.clerk.keep, self.lot_name()), self._kept)

    def _kept(self, numbers: tuple[int, int]) -> None:
        kept, held = numbers
        if not held:
            words = self.tr("{} kept as stock").format(counted(kept, "offer"))
        elif kept:
            words = self.tr("{} kept as stock; {} were there already").format(
                counted(kept, "offer"), f"{held:,}"
            )
        else:
            words = self.tr("All {} are in the stock already; none was added").format(counted(held, "offer"))
        self._is_kept = True
        self.said.emit(words)
        self.refresh()

    def take_selected_out(self) -> None:
        """Take the selected offers out of the stock; they can be put back."""
        rows = self._model.marked(self._table)
        if self.shown is None:
            self.trouble.emit(
                self.tr("These are a file's rows: choose the kept stock above the table first.")
            )
            return
        if not rows:
            self.trouble.emit(self.tr("Choose the offers to take out first."))
            return
        self.trouble.emit("")
        task = self._desk.work.run_ticking(self._desk.clerk.take_out, [(row.at, row.id) for row in rows])
        self._run(task, lambda numbers: self._went(numbers, {row.at for row in rows}))

    def _went(self, numbers: dict[str, list[int]], places: set[int]) -> None:
        self._taken = numbers
        self._model.drop(places)
        self.put_back.show()
        self.said.emit(self.tr("{} taken out of the stock").format(counted(len(places), "offer")))
        self.refresh()

    def put_them_back(self) -> None:
        """Put back what was taken out last."""
        self.trouble.emit("")
        task = self._desk.work.run_ticking(self._desk.clerk.put_back, self._taken)
        self._run(task, lambda _nothing: self._came_back())

    def _came_back(self) -> None:
        self._taken = {}
        self.put_back.hide()
        if self.shown is None:
            self.refresh()
        else:
            self.chosen.emit(self.shown)
