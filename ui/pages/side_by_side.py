"""Side by side: the old motor fixed at the left, candidates as columns, best first, and why."""

from collections.abc import Callable

from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QHBoxLayout,
    QMenu,
    QPushButton,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from matcher.finding import Outcome, Verdict
from matcher.judging.presume import prepare
from matcher.money.weigh import Weighed
from matcher.verdict import FITTING
from ui.answers import Answers
from ui.called import name_of
from ui.copy_button import CopyButton
from ui.desk import Desk, Page
from ui.drawing import Drawing, Scene
from ui.empty import Empty
from ui.export import copy_lines, save_csv, save_page, save_pdf
from ui.filter_edit import FilterEdit
from ui.line import Heading, Line, Soft, Trouble
from ui.models.side import OLD, Side, check_word
from ui.save_as import ask_where
from ui.side_table import SideTable
from ui.spans import shown
from ui.still_box import StillBox
from ui.theme import GRID
from ui.tick_box import TickBox
from ui.words import outcome_word, verdict_word

WRONG = frozenset({Outcome.FAIL, Outcome.LOSS})
Order = Callable[[Weighed], tuple[object, ...]]


class SideBySidePage(Page):
    """The comparison."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.side = Side()
        self.table = SideTable(self.side)
        self.seek = FilterEdit(self.tr("Filter the candidates"), 25)
        self.order, self.differences = StillBox(), TickBox()
        self.trouble = Trouble()
        self.empty = Empty("")
        self.why, self.source, self.notes = Line(), Soft(), Line()
        self.drawing = Drawing(desk.units.of)
        self._lay_out()
        self._connect()
        self.starts_at(self.table)

    def _lay_out(self) -> None:
        down = self.column()
        head = QHBoxLayout()
        head.addWidget(Heading(self.tr("Side by side"), wrap=False), 1)
        self._fill_tools(head)
        down.addLayout(head)
        down.addWidget(self.trouble)
        down.addWidget(self.empty)
        self.empty.example.connect(self.example)
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(self.table)
        split.addWidget(self._below())
        split.setStretchFactor(0, 1)
        split.setSizes([56 * GRID, 26 * GRID])
        split.setChildrenCollapsible(False)
        down.addWidget(split, 1)

    def _fill_tools(self, head: QHBoxLayout) -> None:
        self.order.setAccessibleName(self.tr("Order of the candidates"))
        for words in (self.tr("best first"), self.tr("cheapest first"), self.tr("likeliest first")):
            self.order.addItem(words)
        self.differences.setText(self.tr("only &differences"))
        save = QPushButton(self.tr("&Save as"))
        menu = QMenu(save)
        for words, act in (
            (self.tr("Page…"), lambda: self._save("html", save_page)),
            (self.tr("PDF…"), lambda: self._save("pdf", save_pdf)),
            (self.tr("CSV…"), lambda: self._save("csv", save_csv)),
        ):
            menu.addAction(words, act)
        save.setMenu(menu)
        self.copied = CopyButton(self.tr("&Copy"))
        self.copied.setToolTip(self.tr("Copy the table for a spreadsheet (Ctrl+C)"))
        self.copied.clicked.connect(self.copy)
        for widget in (self.seek, self.order, self.differences, self.copied, save):
            head.addWidget(widget)

    def _below(self) -> QWidget:
        below = QWidget()
        across = QHBoxLayout(below)
        across.setContentsMargins(0, GRID, 0, 0)
        words = QVBoxLayout()
        words.addWidget(self.why)
        words.addWidget(self.source)
        words.addWidget(self.notes)
        words.addStretch(1)
        across.addLayout(words, 2)
        across.addWidget(self.drawing, 5)
        return below

    def _connect(self) -> None:
        self.desk.session.answered.connect(self._show)
        self.table.chosen.connect(self._explain)
        self.seek.textChanged.connect(self._again)
        self.order.currentIndexChanged.connect(self._again)
        self.differences.toggled.connect(self._again)
        self.desk.units.changed.connect(self.drawing.update)
        QShortcut(QKeySequence.StandardKey.Copy, self.table, self.copy)

    def _again(self) -> None:
        if self.desk.session.answers is not None:
            self._show(self.desk.session.answers)

    def _show(self, answers: Answers) -> None:
        kept = self._chosen_id()
        self.side.only_differences = self.differences.isChecked()
        self.side.show_answers(answers, self._wanted(answers))
        self.empty.setVisible(not answers.weighed)
        self.empty.line.setText(self._what_lacks(answers))
        self.table.setVisible(bool(answers.weighed))
        self._choose(kept)
        promising = sum(one.judgement.verdict in FITTING for one in answers.to_try)
        asking = sum(one.judgement.verdict == Verdict.ASK for one in answers.to_try)
        words = [self.tr("{} worth trying").format(promising)] if promising else []
        words += [self.tr("{} to ask about").format(asking)] if asking else []
        decided = list(answers.decided.values())
        words += [self.tr("{} going back").format(decided.count("send_back"))] * ("send_back" in decided)
        words += [self.tr("one is kept")] * ("keep" in decided)
        self.state.emit(", ".join(words) or self._nothing(answers))

    def _nothing(self, answers: Answers) -> str:
        if answers.weighed:
            return self.tr("none fits yet")
        return self.tr("type the plate first") if answers.job.listings else self.tr("nothing to compare yet")

    def _what_lacks(self, answers: Answers) -> str:
        if answers.job.listings and not answers.has_plate:
            return self.tr("Nothing is judged yet: type the plate of the old motor under Old motor first.")
        return self.tr("Nothing to compare yet: type the plate of the old motor, then paste listings.")

    def _wanted(self, answers: Answers) -> list[Weighed]:
        words = self.seek.text().casefold().split()
        names = {listing.id: name_of(listing).casefold() for listing in answers.job.listings}
        kept = [
            one
            for one in answers.best_first
            if all(w in f"{names[one.id]} {verdict_word(one.judgement.verdict).casefold()}" for w in words)
        ]
        key = _ORDERS[self.order.currentIndex()]
        return sorted(kept, key=key) if key else kept

    def _chosen_id(self) -> str:
        column = self.table.current().column()
        return self.side.candidates[column - 1].id if 0 < column <= len(self.side.candidates) else ""

    def _choose(self, listing_id: str) -> None:
        ids = [one.id for one in self.side.candidates]
        self.drawing.setVisible(bool(ids))
        if not ids:
            self.why.setText(self.tr("No candidate matches the filter.") if self.seek.text() else "")
            self.source.setText("")
            self.notes.setText("")
            return
        column = 1 + (ids.index(listing_id) if listing_id in ids else 0)
        self.table.choose(self._deciding_row(column), column)

    def _deciding_row(self, column: int) -> int:
        deciding = self.side.candidates[column - 1].judgement.deciding
        keys = [row.key for row in self.side.rows]
        return keys.index(deciding.check) if deciding and deciding.check in keys else 1

    def _explain(self, index: QModelIndex) -> None:
        answers = self.desk.session.answers
        if answers is None or not index.isValid() or index.column() == OLD:
            return
        found = self.side.finding(index)
        if found is not None:
            self.why.setText(f"{check_word(found.check)}, {outcome_word(found)}: {found.why}")
            self.source.setText(self.tr("Rule: {}").format(found.source))
        one = self.side.candidates[index.column() - 1]
        self.notes.setText("\n".join(shown(note) for note in one.judgement.notes))
        clashes = {f.check: f.why for f in one.judgement.findings if f.outcome in WRONG and f.check in DRAWN}
        drawn = prepare(answers.wanted, answers.records[one.id]).new
        self.drawing.show_scene(Scene(drawn, answers.wanted.motor, clashes))

    def copy(self) -> None:
        """Put the table on the clipboard as a spreadsheet takes it."""
        copy_lines(self.side.plain())
        self.copied.say_copied()

    def _save(self, ending: str, write: Callable[..., None]) -> None:
        path = ask_where(self, self.desk.session.job.name or "side by side", ending)
        if path is None:
            return
        try:
            write(path, self.tr("Side by side"), self.side.plain())
        except OSError as fault:
            self.trouble.tell(self.tr("not saved: {}").format(fault.strerror))
            return
        self.trouble.tell("")


DRAWN = frozenset({"shaft", "length", "mounting", "rotation"})
_ORDERS: tuple[Order | None, ...] = (
    None,
    lambda one: (one.landed_cost is None, one.landed_cost or 0.0),
    lambda one: (-one.fit_chance, one.landed_cost or 0.0),
)
