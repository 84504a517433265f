"""Puts the desk together: worker, session, saved jobs, and the pages of the window.

Loaded after the window's frame is on the screen, since the engine comes with it.
"""

from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtGui import QKeySequence, QShortcut

from matcher.job import Job
from matcher.tables import data_folder
from ui.clashes import Clashes
from ui.clerk import Clerk
from ui.desk import Desk, Page
from ui.job_head import JobHead
from ui.keeping import Keeping
from ui.notices import Notices
from ui.pages.arrival import ArrivalPage
from ui.pages.listings import ListingsPage
from ui.pages.money import MoneyPage
from ui.pages.old_motor import OldMotorPage
from ui.pages.side_by_side import SideBySidePage
from ui.pages.stock import StockPage
from ui.pages.swap_proof import SwapProofPage
from ui.plate_box import PlateBox
from ui.session import Session
from ui.shelf import Shelf
from ui.units import Units
from ui.usual import Usual
from ui.window import Window
from ui.work import Work

OLD_MOTOR, LISTINGS, SIDE_BY_SIDE, MONEY, ARRIVAL, SWAP_PROOF, STOCK = range(7)


class Bench(QObject):
    """Everything behind one window."""

    def __init__(self, window: Window, store: Path | None) -> None:
        super().__init__(window)
        self.window = window
        self.work = Work(self)
        self.shelf, self.clerk = Shelf(self.work, store), Clerk(store)
        self.session = Session(self.work, self.shelf, self)
        self.usual = Usual(self.work, self.shelf, self)
        self.desk = Desk(self.work, self.session, Units(self), self.shelf, self.clerk, self.usual)
        self.old_motor = OldMotorPage(self.desk)
        self.pages = self._pages()
        self.head = JobHead(self.desk, window.top)
        self.notices = Notices()
        self.keeping = Keeping(self.desk, self.notices, self.head.file)
        self.clashes = Clashes(self.session, self.notices, self)
        self._may_leave = False
        self._put_in()
        self._connect()
        self._first = Job()
        self.session.open(self._first)
        self.usual.load()
        self.head.offer_saved()

    def _pages(self) -> list[Page]:
        desk = self.desk
        return [
            self.old_motor,
            ListingsPage(desk),
            SideBySidePage(desk),
            MoneyPage(desk),
            ArrivalPage(desk),
            SwapProofPage(desk),
            StockPage(desk),
        ]

    def _put_in(self) -> None:
        room = self.window.top.layout()
        if room is not None:
            room.addWidget(self.head)
        foot = self.window.foot.layout()
        if foot is not None:
            foot.addWidget(self.notices)
        for place, page in enumerate(self.pages):
            self.window.pages.addWidget(page)
            page.state.connect(lambda words, at=place: self.window.rail.show_state(at, words))
            page.go.connect(self.window.go_to)
            page.example.connect(self.open_example)
            page.job_file.connect(self.keeping.take_in)

    def _connect(self) -> None:
        self.head.new_job.connect(self.new_job)
        self.head.went_on.connect(lambda: self.window.go_to(self.window.rail.currentRow()))
        self.window.closing.connect(self.close)
        self.session.leaving.connect(self._stop_typing)
        self.session.trouble.connect(self.window.tell)
        self.keeping.told.connect(self.window.tell)
        self.session.saved.connect(self._stay_careful)
        history = self.session.history
        history.undoTextChanged.connect(self._tell_undo)
        keys = QKeySequence.StandardKey
        QShortcut(QKeySequence(keys.Undo), self.window, history.undo)
        for place in range(self.window.rail.count()):
            QShortcut(QKeySequence(f"Ctrl+{place + 1}"), self.window, lambda at=place: self.window.go_to(at))
        for redo in ("Ctrl+Shift+Z", "Ctrl+Y"):
            QShortcut(QKeySequence(redo), self.window, history.redo)
        self.plate.entered.connect(self.show_stock)
        self.usual.came.connect(self._take_usual)
        self.usual.trouble.connect(self.window.tell)

    @property
    def plate(self) -> PlateBox:
        """The box of the plate."""
        return self.old_motor.plate

    def _tell_undo(self, words: str) -> None:
        self.window.tell(self.tr("Ctrl+Z takes back: {}").format(words) if words else "")

    def _stop_typing(self) -> None:
        """Let a field that is being typed in take its text, before another job stands behind it."""
        at_work = self.window.focusWidget()
        if at_work is not None and at_work.hasFocus():
            at_work.clearFocus()

    def new_job(self) -> None:
        """Start an empty job with the keyboard in the plate's box."""
        self.session.open(self.usual.new_job())
        self.window.go_to(OLD_MOTOR)

    def _take_usual(self) -> None:
        """Let the job that the window began with count with the usual figures, as long as it is empty."""
        if self.session.job is self._first and self.usual.changes:
            self.session.open(self.usual.new_job())

    def show_stock(self) -> None:
        """Rank the saved stock against the plate just typed."""
        self.window.go_to(STOCK)

    def open_demo(self, folder: Path) -> None:
        """Open the example job, read on a worker."""
        from ui.example import example_job

        task = self.work.run(example_job, folder)
        task.done.connect(self.session.open)
        task.failed.connect(lambda fault: self.window.tell(str(fault)))

    def open_example(self) -> None:
        """Open the example that is shipped with the program."""
        self.open_demo(data_folder() / "demo")

    def _stay_careful(self) -> None:
        self._may_leave = False

    def may_close(self) -> bool:
        """Save what isn't saved yet; return `False` the first time when that fails, and say so."""
        if self._may_leave or self.session.saving.is_saved:
            return True
        self.session.flush()
        self.work.wait_for_store()
        if not self.shelf.fault:
            return True
        self._may_leave = True
        self.window.tell(self.tr("The last changes are not saved. Close once more to leave without them."))
        return False

    def close(self) -> None:
        """Save what is open and end every thread."""
        self.session.finish()
        self.shelf.close()
        self.clerk.close()
        self.work.close()
