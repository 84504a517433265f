"""Stock and lots: the shop's saved offers, or opened tables, ranked against the old motor."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtGui import QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QProgressBar,
    QPushButton,
    QWidget,
)

from ui.answers import Answers
from ui.desk import Desk, Page
from ui.filter_edit import FilterEdit
from ui.line import Heading, Line, Soft, Trouble
from ui.lot import LotRow
from ui.lot_choice import LotChoice
from ui.lot_exits import LotExits
from ui.lot_reasons import LotReasons
from ui.lot_sort import LotSort
from ui.lot_view import LotView
from ui.models.lot_table import LotTable
from ui.stock_bar import ALL, StockBar
from ui.theme import GRID
from ui.words import counted, first_of
from ui.work import Task


class StockPage(Page):
    """Many offers at once."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.model = LotTable()
        self.table = LotView(self.model)
        self._loaded_once = False
        self.seek, self.progress = FilterEdit(self.tr("Filter the offers"), 28), QProgressBar()
        self.stop = QPushButton(self.tr("S&top"))
        self.add, self.save = QPushButton(self.tr("&Add to this job")), QPushButton(self.tr("&Save as CSV…"))
        self.again = QPushButton(self.tr("&Rank"))
        self.line, self.reason, self.trouble = Soft(), Line(), Trouble()
        self.done = Soft()
        """What was done last."""
        self._problems = ""
        """What could not be read of the lot that is shown."""
        self._task: Task | None = None
        self._ranked_for: object = None
        """What the verdicts answer (`_question`); `None` while there are none."""
        self.sort = LotSort(desk, self.model, self)
        self.reasons = LotReasons(desk, self.model, self.table, lambda: self._task is None, self)
        fill = partial(self.reasons.fill, self._start)
        self.exits = LotExits(desk.work, self.model, self.table, fill, self)
        self.choice = LotChoice(desk, self.model, self.table, self)
        self.bar = StockBar(desk, self.model, self.table, self)
        self._lay_out()
        self._connect()
        self.starts_at(self.table)

    def _lay_out(self) -> None:
        down = self.column()
        head = QHBoxLayout()
        head.addWidget(Heading(self.tr("Stock and lots"), wrap=False), 1)
        head.addWidget(self.seek)
        opens = QPushButton(self.tr("&Open a table…"))
        opens.clicked.connect(self.choose_files)
        for button in (opens, self.save, self.add):
            head.addWidget(button)
        down.addLayout(head)
        down.addLayout(self._progress_row())
        down.addWidget(self.trouble)
        down.addWidget(self.table, 1)
        down.addWidget(self.reason)
        down.addWidget(self.done)

    def _progress_row(self) -> QHBoxLayout:
        across = QHBoxLayout()
        self.progress.setFixedWidth(28 * GRID)
        self.progress.setRange(0, 1000)
        self.progress.setAccessibleName(self.tr("Progress"))
        across.addWidget(self.bar)
        across.addWidget(self.line, 1)
        across.addWidget(self.again)
        across.addWidget(self.progress)
        across.addWidget(self.stop)
        self._busy(None)
        return across

    def _connect(self) -> None:
        self.seek.textChanged.connect(self._filter)
        self.table.horizontalHeader().sectionClicked.connect(self.sort_by)
        self.stop.clicked.connect(self.cancel)
        self.add.clicked.connect(self.choice.add_to_job)
        self.save.clicked.connect(self.exits.choose_csv)
        self.reasons.why.connect(self.reason.setText)
        self.bar.chosen.connect(self.show_stock)
        self.bar.reopened.connect(self.open_files)
        for helper in (self.exits, self.choice, self.bar):
            helper.said.connect(self._say)
            helper.trouble.connect(self._tell)
        self.again.clicked.connect(self.rank)
        self.table.activated.connect(lambda _index: self.choice.add_to_job())
        self.desk.session.answered.connect(self._rank_if_shown)
        QShortcut(QKeySequence.StandardKey.Find, self, self.seek.setFocus)
        QShortcut(QKeySequence.StandardKey.Copy, self.table, self.exits.copy)

    def _say(self, words: str) -> None:
        self.done.setText(words)
        self._count()

    def _tell(self, words: str) -> None:
        """Say what went wrong with what was asked for; what the lot itself lacks stays told."""
        self.trouble.tell(words or self._problems)
        self.done.setText("")

    # --- what comes in

    def showEvent(self, event: QShowEvent) -> None:
        """Load the saved stock on the first visit, and rank what is there against the job as it is."""
        super().showEvent(event)
        if not self._loaded_once:
            self._loaded_once = True
            self.show_stock()
        else:
            self.rank()

    def show_stock(self, shelf: str = ALL) -> None:
        """Load the kept stock, or one shelf of it."""
        self._tell("")
        task = self.desk.work.run_ticking(self.desk.clerk.stock, shelf)
        task.failed.connect(lambda _fault: self._not_loaded())
        task.done.connect(lambda _lot: self.bar.show_shelf(shelf))
        self._start(task, self._take_lot)

    def _not_loaded(self) -> None:
        """Try again on the next visit; what is in the stock isn't known."""
        self._loaded_once = False
        self.line.setText("")
        self.state.emit("")

    def choose_files(self) -> None:
        """Let the user choose tables."""
        paths, _kind = QFileDialog.getOpenFileNames(self, self.tr("Open a table of offers"))
        if paths:
            self.open_files([Path(path) for path in paths])

    def open_files(self, paths: Sequence[Path]) -> None:
        """Read files on a worker; the rows show before they are ranked."""
        self._tell("")
        task = self.desk.work.run_ticking(self.desk.clerk.open, list(paths))
        self._start(task, lambda lot: self._opened(paths, lot))

    def _start(self, task: Task, then: object) -> None:
        self.cancel()
        self._task = task
        self._busy(task)
        task.progress.connect(self._show_share)
        task.done.connect(then)
        task.failed.connect(lambda fault: self._tell(str(fault)))
        task.ended.connect(lambda: self._ended(task))

    def _show_share(self, share: float) -> None:
        """Show how much is done; a bar that only moves while that can't be told."""
        self.progress.setRange(0, 1000 if share else 0)
        self.progress.setValue(round(share * 1000))

    def _ended(self, task: Task) -> None:
        if self._task is task:
            self._task = None
            self._busy(None)
            self.reasons.soon()

    def _busy(self, task: Task | None) -> None:
        self.progress.setVisible(task is not None)
        self._show_share(0.0)
        self.stop.setVisible(task is not None)
        self.again.setVisible(task is None and self._is_stale() and self._has_plate())

    def cancel(self) -> None:
        """Stop reading or ranking; the rows stay, their verdicts go if they answered something else."""
        if self._task is not None:
            self._task.cancel()
            self._task = None
            self._busy(None)
            self._count()

    def _opened(self, paths: Sequence[Path], lot: tuple[list[LotRow], list[str]]) -> None:
        """Show what was opened; where that holds no offer, the lot before stays."""
        rows, problems = lot
        if rows:
            self._take_lot(lot)
            self.bar.show_files(paths)
        else:
            self._task = None
            self._busy(None)
            self.rank()
            self.trouble.tell(first_of(problems))

    def _take_lot(self, lot: tuple[list[LotRow], list[str]]) -> None:
        rows, problems = lot
        self._ranked_for = None
        self._problems = first_of(problems)
        self.trouble.tell(self._problems)
        self.model.call_stale(True)
        self.sort.as_read()
        self.model.show_rows(rows)
        self._task = None
        self._count()
        self.rank()

    # --- ranking

    def _rank_if_shown(self, _answers: Answers) -> None:
        if self.isVisible():
            self.rank()

    def _question(self) -> object:
        """Return what a ranking depends on: the old motor, its place, and the figures."""
        answers = self.desk.session.answers
        return (answers.wanted, answers.job.settings_changes) if answers else None

    def _is_stale(self) -> bool:
        return bool(self.model.total) and self._ranked_for != self._question()

    def _has_plate(self) -> bool:
        answers = self.desk.session.answers
        return answers is not None and answers.has_plate

    def rank(self) -> None:
        """Rank the lot against the open job's old motor, if that isn't done yet."""
        answers, asked = self.desk.session.answers, self._question()
        self.model.call_stale(self._is_stale())
        if answers is None or not self._is_stale() or not self._has_plate():
            self._busy(self._task)
            self._count()
            return
        changes = dict(answers.job.settings_changes)
        task = self.desk.work.run_ticking(self.desk.clerk.rank, answers.wanted, changes)
        self._start(task, lambda rows: self._take_ranked(asked, rows))

    def _take_ranked(self, asked: object, rows: list[LotRow]) -> None:
        self._ranked_for = asked
        self.model.call_stale(self._is_stale())
        self.sort.as_ranked()
        self.model.show_ranked(rows)
        self._stand_first()

    def _take_sorted(self, rows: list[LotRow]) -> None:
        self.model.show_rows(rows)
        self._stand_first()

    def _stand_first(self) -> None:
        self._count()
        if self.model.rows:
            self.table.selectRow(0)

    def _filter(self, text: str) -> None:
        self.model.filter(text)
        self._count()

    def _count(self) -> None:
        shown, every = len(self.model.rows), self.model.total
        empty = self.tr("No stock yet: open a table of offers, rank it against any plate, and keep it here.")
        words = (
            counted(every, "offer")
            if shown == every
            else self.tr("{} of {}").format(f"{shown:,}", counted(every, "offer"))
        )
        state = words
        if every and self._is_stale():
            state += ", " + (self.tr("being ranked") if self._task else self.tr("not ranked"))
            words = state if self._task else words + self._why_unranked()
        self.line.setText(words if every else empty)
        for button in (self.save, self.add):
            button.setEnabled(bool(every))
        self.bar.enable()
        self.state.emit(state if every else self.tr("no stock yet"))

    def _why_unranked(self) -> str:
        if self._has_plate():
            return self.tr(", not ranked against this job's motor")
        return self.tr(", not ranked: type the plate under Old motor first")

    def sort_by(self, column: int) -> None:
        """Sort all rows by a column; a second time the other way round."""
        self._start(self.sort.by(column), self._take_sorted)
