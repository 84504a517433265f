"""Arrival: the day it must go back in large, the check list, and the verdict that moves as one types."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QPlainTextEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from matcher.arrival.section import decided, with_bought, with_day, with_entry, with_named, with_photos
from matcher.job import Job
from matcher.judging.saying import DECISIONS, fact
from matcher.rest import Rest
from ui.check_list import CheckList
from ui.choice_row import ChoiceRow
from ui.copy_button import CopyButton
from ui.dates_bar import DatesBar
from ui.desk import Desk, Page
from ui.halves import Halves
from ui.line import Heading, Line, Soft, Strong
from ui.look_list import LookList
from ui.rest_worker import RestWorker
from ui.theme import GRID
from ui.verdict_change import VerdictChange
from ui.words import verdict_word

DAYS = ("bought", "delivered")


class ArrivalPage(Page):
    """From the day of delivery to "keep" or "send back"."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.day, self.says = Heading(), Soft()
        self.dates, self.list, self.looks = DatesBar(), CheckList(desk.units), LookList()
        self.verdict, self.note, self.photos = VerdictChange(), QPlainTextEdit(), Line()
        self.decision = ChoiceRow(
            self.tr("Decision:"), {"keep": self.tr("Keep it"), "send_back": self.tr("Send it back")}
        )
        self.copy, self.attach = CopyButton(self.tr("&Copy the note")), QPushButton(self.tr("&Pictures…"))
        self.empty = Line(self.tr("Nothing has been bought yet: say above which of the listings it was."))
        self.below = QWidget()
        self._worker = RestWorker.of(desk.session)
        self._lay_out()
        self._connect()
        self.starts_at(self.dates.listing)

    def _lay_out(self) -> None:
        down = self.column()
        for widget in (self.day, self.says, self.dates, self.empty):
            down.addWidget(widget)
        across = QHBoxLayout(self.below)
        across.setContentsMargins(0, GRID, 0, 0)
        halves = Halves(self.list, self._right())
        halves.setSizes([84 * GRID, 56 * GRID])
        across.addWidget(halves)
        down.addWidget(self.below, 1)
        down.addStretch(0)

    def _right(self) -> QScrollArea:
        body = QWidget()
        down = QVBoxLayout(body)
        down.setContentsMargins(GRID, 0, GRID, GRID)
        down.setSpacing(GRID)
        down.addWidget(self.verdict)
        down.addWidget(self.decision)
        down.addWidget(self.looks)
        down.addWidget(Strong(self.tr("Note to the seller")))
        self.note.setReadOnly(True)
        self.note.setPlaceholderText(self.tr("It is written once something speaks for sending it back."))
        self.note.setAccessibleName(self.tr("Note to the seller"))
        self.note.setMinimumHeight(20 * GRID)
        down.addWidget(self.note, 1)
        across = QHBoxLayout()
        across.addWidget(self.copy)
        across.addWidget(self.attach)
        across.addStretch(1)
        down.addLayout(across)
        down.addWidget(self.photos)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(body)
        area.setMinimumWidth(40 * GRID)
        return area

    def _connect(self) -> None:
        self._worker.ready.connect(self._show)
        self.desk.units.changed.connect(self._show_again)
        self.dates.bought.connect(
            lambda one: self._edit(self.tr("choosing what was bought"), lambda job: with_bought(job, one))
        )
        self.dates.entered.connect(partial(self._enter, None))
        self.list.measured.connect(partial(self._enter, "measured"))
        self.looks.looked.connect(partial(self._enter, "looks"))
        self.decision.chosen.connect(partial(self._enter, None, "decision"))
        self.copy.clicked.connect(lambda: self.copy.copy(self.note.toPlainText()))
        self.attach.clicked.connect(self._choose_photos)

    def _edit(self, words: str, change: Callable[[Job], Job], merge: str = "") -> None:
        line = self.desk.session.try_edit(words, change, merge)
        if line:
            self.desk.session.trouble.emit(line)

    def _enter(self, group: str | None, name: str, text: str) -> None:
        def change(job: Job) -> Job:
            if name in DAYS:
                return with_day(job, name, text, self._worker.day())
            return with_named(job, group, name, text) if group else with_entry(job, name, text)

        if group == "measured":
            words = self.tr("measuring {}").format(fact(name))
        else:
            words = self.tr("looking at it") if group else self._called(name)
        self._edit(words, change, merge=f"arrival {group} {name}")

    def _called(self, name: str) -> str:
        return {
            "bought": self.tr("the day of purchase"),
            "delivered": self.tr("the day of delivery"),
            "transit_days": self.tr("the days on the way back"),
            "counted": self.tr("what must be in time"),
            "decision": self.tr("the decision"),
        }.get(name, name.replace("_", " "))

    def _choose_photos(self) -> None:
        paths, _kind = QFileDialog.getOpenFileNames(self, self.tr("Pictures of what arrived"))
        if paths:
            self.add_photos([Path(path).name for path in paths])

    def add_photos(self, names: list[str]) -> None:
        """Note down pictures by their names; the files stay where they are."""
        self._edit(self.tr("noting pictures"), lambda job: with_photos(job, names))

    def _show_again(self) -> None:
        if self._worker.rest is not None:
            self._show(self._worker.rest)

    def _verdicts(self, job: Job) -> dict[str, str]:
        answers = self.desk.session.answers
        if answers is None:
            return {}
        bought = decided(job)  # the answers of an older state may still be shown
        return {
            key: verdict_word(one.judgement.verdict, one.judgement.minds, bought.get(key, ""))
            for key, one in answers.weighed.items()
        }

    def _show(self, rest: Rest) -> None:
        standing = rest.standing
        self.dates.show_rest(rest, self._verdicts(rest.job))
        self.empty.setVisible(standing is None)
        self.empty.setText(
            self.tr("Nothing has been bought yet: say above which of the listings it was.")
            if rest.job.listings
            else self.tr("Nothing can have been bought yet: paste what is for sale under Listings first.")
        )
        self.below.setVisible(standing is not None)
        self.list.show_rest(rest)
        if standing is None:
            self.day.setText(self.tr("Arrival"))
            self.says.setText("")
            self.state.emit(self.tr("nothing bought yet"))
            return
        self.day.setText(standing.window_says)
        self.says.setText(self._counted(rest))
        self.verdict.show_standing(standing)
        self.looks.show_looks(standing.looks)
        self.decision.show_choice(rest.entries.decision)
        self.copy.setEnabled(bool(standing.note))
        if self.note.toPlainText() != standing.note.rstrip():
            self.note.setPlainText(standing.note.rstrip())
        self.photos.setText(", ".join(rest.entries.photos))
        self.state.emit(self._decided(rest) or standing.window_short)

    def _counted(self, rest: Rest) -> str:
        window = rest.standing.window if rest.standing else None
        if window is None:
            return ""
        end = window.window_ends
        words = self.tr("The return days end on {}; counted back for the parcel's way and to a working day.")
        return words.format(f"{end:%a} {end.day} {end:%b %Y}")

    def _decided(self, rest: Rest) -> str:
        said = self.tr(DECISIONS.get(rest.entries.decision, ""))
        window = rest.standing.window if rest.standing else None
        goes_back = rest.entries.decision == "send_back"
        return f"{said}, {window.short}" if goes_back and window else said
