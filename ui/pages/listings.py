"""Listings: the pile, the words as found, and the facts that were read in them."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QItemSelectionModel, QModelIndex, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QHBoxLayout,
    QListView,
    QPushButton,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from matcher.job import Job, Listing
from matcher.record import Origin
from ui.answers import Answers
from ui.conflicts import Conflicts
from ui.desk import Desk, Page
from ui.empty import Empty
from ui.facts_view import FactsView
from ui.given_bar import GivenBar
from ui.halves import Halves
from ui.intake import Intake
from ui.large_picture import LargePicture
from ui.line import Heading, Soft, Trouble
from ui.listing_edits import ListingEdits
from ui.listing_intake import ListingIntake
from ui.models.facts import VALUE, Facts
from ui.models.pile import Pile, pile_state
from ui.pictures import Pictures, decoded
from ui.pile_delegate import PileDelegate
from ui.theme import GRID
from ui.underline import Legend
from ui.words import first_of
from ui.words_view import WordsView


class ListingsPage(Page):
    """What people offer, as found."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.pile, self.facts = Pile(), Facts(desk.units)
        self.list, self.table = QListView(), FactsView(self.facts)
        self.words, self.conflicts, self.given = WordsView(), Conflicts(desk.units), GivenBar()
        self.note = Soft()
        self.intake, self.edits = ListingIntake(desk, self), ListingEdits(desk, self)
        self.pictures, self.large, self.views = Pictures(desk), LargePicture(), QStackedWidget()
        self.trouble = Trouble()
        self.empty = Empty(
            self.tr(
                "Copy a listing's text anywhere and press Paste here, or drop saved pages and tables. "
                "Pictures go to the chosen listing."
            )
        )
        self.setAcceptDrops(True)
        self._lay_out()
        self._connect()
        self.starts_at(self.list)

    def _lay_out(self) -> None:
        down = self.column()
        head = QHBoxLayout()
        head.addWidget(Heading(self.tr("Listings"), wrap=False), 1)
        for words, keys, act in (
            (self.tr("&Paste"), ("Ctrl+V", "Ctrl+Shift+V"), self.paste),
            (self.tr("&Open files…"), ("Ctrl+O",), self.choose_files),
            (self.tr("&Remove"), (), self.remove),
        ):
            button = QPushButton(words)
            button.clicked.connect(act)
            button.setToolTip("".join(keys[:1]))
            for key in keys:
                QShortcut(QKeySequence(key), self, act)
            head.addWidget(button)
        down.addLayout(head)
        for widget in (self.trouble, self.intake.bar, self.empty):
            down.addWidget(widget)
        self.empty.example.connect(self.example)
        down.addWidget(self._panes(), 1)

    def _panes(self) -> QSplitter:
        split = QSplitter(Qt.Orientation.Horizontal)
        self.list.setModel(self.pile)
        self.list.setItemDelegate(PileDelegate(self.list))
        delete = QShortcut(QKeySequence.StandardKey.Delete, self.list, self.remove)
        delete.setContext(Qt.ShortcutContext.WidgetShortcut)
        self.list.setAccessibleName(self.tr("Pile of listings"))
        self.list.setUniformItemSizes(True)
        split.addWidget(self.list)
        right = self._right()
        right.setMinimumWidth(36 * GRID)
        inner = Halves(self._middle(), right)
        inner.setSizes([58 * GRID, 52 * GRID])
        split.addWidget(inner)
        self.list.setMinimumWidth(28 * GRID)
        split.setSizes([32 * GRID, 110 * GRID])
        split.setStretchFactor(1, 1)
        split.setChildrenCollapsible(False)
        return split

    def _middle(self) -> QWidget:
        middle = QWidget()
        down = QVBoxLayout(middle)
        down.setContentsMargins(GRID, 0, GRID, 0)
        self.views.addWidget(self.words)
        self.views.addWidget(self.large)
        down.addWidget(self.views, 1)
        down.addWidget(self.note)
        down.addWidget(self.pictures)
        across = QHBoxLayout()
        for words, act in (
            (self.tr("Split here"), self.split_here),
            (self.tr("Join with next"), self.join_next),
        ):
            button = QPushButton(words)
            button.clicked.connect(act)
            across.addWidget(button)
        across.addStretch(1)
        down.addLayout(across)
        down.addWidget(self.given)
        return middle

    def _right(self) -> QWidget:
        right = QWidget()
        down = QVBoxLayout(right)
        down.setContentsMargins(GRID, 0, 0, 0)
        down.addWidget(self.conflicts)
        down.addWidget(self.table, 1)
        down.addWidget(Legend())
        return right

    def _connect(self) -> None:
        session = self.desk.session
        session.changed.connect(self._show_job)
        session.answered.connect(self._show)
        self.list.selectionModel().currentChanged.connect(lambda *_: self._show_current())
        self.table.selectionModel().currentChanged.connect(self._fact_chosen)
        self.intake.came.connect(self._add)
        self.intake.kept.connect(self.edits.add_pictures)
        self.intake.job_file.connect(self.job_file)
        self.intake.trouble.connect(self.trouble.tell)
        self.pictures.chosen.connect(self._show_large)
        self.large.put_away.connect(lambda: self.views.setCurrentWidget(self.words))
        self.words.pointed.connect(self.point_at)
        self.conflicts.pointed.connect(self.words.light)
        self.conflicts.settled.connect(self._settle)
        self.facts.entered.connect(lambda field, text: self._correct(field, text, Origin.TYPED))
        self.given.given.connect(self._correct)
        self.given.words_are.connect(self.words_are)

    def paste(self) -> None:
        """Take the clipboard's text as one listing or several."""
        self.intake.paste()

    def choose_files(self) -> None:
        """Let the user choose files."""
        self.intake.choose_files(self._current_id())

    def take_files(self, paths: Sequence[Path]) -> None:
        """Read files and add what they hold; pictures go to the chosen listing."""
        self.intake.take_files(paths, self._current_id())

    def _current_id(self) -> str:
        listing = self.current()
        return listing.id if listing else ""

    def _add(self, intake: Intake) -> None:
        held = self.edits.add(intake.listings)
        here = {one.id for one in self.pile.listings}
        if fresh := [one.id for one in intake.listings if one.id in here]:
            self.choose(fresh[0])
        self.trouble.tell("  ".join(filter(None, (held, first_of(intake.problems)))))

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files and text."""
        if event.mimeData().hasUrls() or event.mimeData().hasText():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take what was dropped."""
        self.intake.take_mime(event.mimeData(), self._current_id())
        event.acceptProposedAction()

    def _show_large(self, digest: str) -> None:
        task = self.desk.shelf.picture(digest)
        task.done.connect(self._decode_large)
        task.failed.connect(lambda fault: self.trouble.tell(str(fault)))

    def _decode_large(self, content: bytes) -> None:
        room = self.views.size() * self.devicePixelRatioF() * 2
        task = self.desk.work.run(decoded, content, room)
        task.done.connect(self.large.show_image)
        self.views.setCurrentWidget(self.large)
        self.large.setFocus()

    def current(self) -> Listing | None:
        """Return the chosen listing."""
        row = self.list.currentIndex().row()
        return self.pile.listings[row] if 0 <= row < len(self.pile.listings) else None

    def choose(self, listing_id: str) -> None:
        """Choose a listing."""
        ids = [one.id for one in self.pile.listings]
        row = ids.index(listing_id) if listing_id in ids else 0
        flag = QItemSelectionModel.SelectionFlag.ClearAndSelect
        self.list.selectionModel().setCurrentIndex(self.pile.index(row), flag)

    def _show_job(self, job: Job) -> None:
        before = getattr(self.current(), "id", "")
        self.pile.show_job(job)
        self.state.emit(pile_state(job, self.desk.session.answers))
        self.empty.setVisible(not job.listings)
        if job.listings:
            self.choose(before)
        self._show_current()

    def _show(self, answers: Answers) -> None:
        self.pile.show_answers(answers)
        self._show_current()
        self.state.emit(pile_state(answers.job, answers))

    def _show_current(self) -> None:
        answers, listing = self.desk.session.answers, self.current()
        record = answers.records.get(listing.id) if answers and listing else None
        if record is None:
            from matcher.record import Record

            text, title = (listing.text, listing.title) if listing else ("", "")
            record = Record("", title=title, text=text)
        self.words.show_record(record)
        self.note.setText(self.words.note)
        self.note.setVisible(bool(self.words.note))
        self.pictures.show_pictures(listing.pictures if listing else ())
        self.conflicts.show_record(record)
        self.facts.show_record(record)

    def _fact_chosen(self, index: QModelIndex, _before: QModelIndex) -> None:
        if index.isValid():
            field = self.facts.rows[index.row()]
            self.words.light(field)
            self.given.choose(field)

    def point_at(self, field: str) -> None:
        """Choose a field's row, as when its words were clicked."""
        row = self.facts.row_of(field)
        if row >= 0:
            self.table.setCurrentIndex(self.facts.index(row, VALUE))

    def _correct(self, field: str, text: str, origin: Origin) -> None:
        listing = self.current()
        if listing is not None:
            self.given.tell(self.edits.correct(listing, field, text, origin))

    def _settle(self, field: str, value: object, said: str) -> None:
        listing = self.current()
        if listing is not None:
            self.edits.settle(listing, field, value, said)

    def words_are(self, field: str) -> None:
        """Take the selected words as the value of a field."""
        words, listing = self.words.chosen_words(), self.current()
        if not words.strip() or listing is None:
            self.given.tell(self.tr("Select the words in the text first."))
            return
        self.given.tell(self.edits.words_are(listing, field, words))

    def split_here(self) -> None:
        """Cut the listing in two where the cursor stands."""
        listing, at = self.current(), self.words.place_in_text()
        if listing is None or not 0 < at < len(listing.text):
            self.trouble.tell(self.tr("Put the cursor where the next listing starts, then split."))
            return
        self.trouble.tell("")
        self.choose(self.edits.split(listing, at))

    def join_next(self) -> None:
        """Take the listing below as the rest of this one."""
        listing, row = self.current(), self.list.currentIndex().row()
        if listing is None or row + 1 >= len(self.pile.listings):
            self.trouble.tell(self.tr("There is no listing below to join with."))
            return
        self.trouble.tell("")
        self.edits.join(listing, self.pile.listings[row + 1])

    def remove(self) -> None:
        """Take the listing out of the job; undo brings it back."""
        listing = self.current()
        if listing is not None:
            self.edits.remove(listing)
