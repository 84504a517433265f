"""Saves the open job a moment after each change, tries again where that failed, takes in other windows' work.

Nothing typed is given up: a save that fails is tried again by itself until it succeeds, and typing without a
pause is saved while it goes on.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from matcher.job import Job
from matcher.store.rebase import says_the_same
from ui.work import Task, Work

if TYPE_CHECKING:
    from matcher.store import Held, Saved
    from ui.shelf import Shelf

SAVE_MS = 600
"""How long after a change the job is saved."""
RETRY_MS = 4000
"""How long after a save that failed it is tried again."""
LOOK_MS = 1000
"""How often the store is asked whether another window saved."""


class Saving(QObject):
    """Knows what the store holds of the open job."""

    saved = Signal(object)
    """The store took the job (`Saved`)."""
    came = Signal(object, object, object)
    """Another window saved: the state this window knew, the one in the store, what clashed."""
    trouble = Signal(str)

    def __init__(
        self, work: Work, shelf: "Shelf | None", job: Callable[[], Job], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._work, self._shelf, self._job = work, shelf, job
        self._known: Job | None = None
        self.version = 0
        """The store's version that the open job is built on; 0 while it was never saved."""
        self.is_failing = False
        """Whether the last try to save failed."""
        self._under_way = 0
        self._later = self._timer(SAVE_MS, self.now)
        self._again = self._timer(RETRY_MS, self.retry)
        self._look = self._timer(LOOK_MS, self._ask, single=False)
        if shelf is not None:
            self._look.start()

    def _timer(self, pause: int, then: Callable[[], None], *, single: bool = True) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(single)
        timer.setInterval(pause)
        timer.timeout.connect(then)
        return timer

    @property
    def is_saved(self) -> bool:
        """Whether the store holds the job as it stands here."""
        return self._shelf is None or self._job() is self._known

    def opened(self, job: Job, version: int) -> None:
        """Take a job just opened as what the store holds in that version; 0 for a new one."""
        self._later.stop()
        self._again.stop()
        self._known, self.version = job, version

    def soon(self) -> None:
        """Save a moment later; further changes don't put it off."""
        if not self._later.isActive():
            self._later.start()

    def now(self) -> None:
        """Save on the store's thread."""
        self._later.stop()
        self._again.stop()
        if self._shelf is None:
            return
        sent = self._job()
        self._under_way += 1
        task = self._work.store(self._shelf.save, sent, self.version)
        task.done.connect(lambda saved: self._done(sent, saved))
        task.failed.connect(lambda fault: self._failed(sent, fault))
        task.ended.connect(self._ended)

    def retry(self) -> None:
        """Save what is not saved yet, at once."""
        if not self.is_saved:
            self.now()

    def stop(self) -> None:
        """Save what isn't saved yet, and ask no more; called when the window closes."""
        self.retry()
        self._again.stop()
        self._look.stop()

    def _ended(self) -> None:
        self._under_way -= 1

    def _done(self, sent: Job, saved: "Saved") -> None:
        self.is_failing = False
        self.saved.emit(saved)
        if sent.id == self._job().id:
            self._take(sent, saved.job, saved.version, saved.clashes)

    def _failed(self, sent: Job, fault: Exception) -> None:
        self.is_failing = True
        self.trouble.emit(self.tr("not saved: {}").format(fault))
        if sent.id == self._job().id:
            self._again.start()

    def _ask(self) -> None:
        """Look whether another window saved this job; a save under way brings that back itself."""
        if self._shelf is None or self._under_way or not self.version or self.is_failing:
            return
        known, version = self._known, self.version
        task: Task = self._work.store(self._shelf.look, self._job().id, version)
        task.done.connect(lambda held: self._looked(known, held))

    def _looked(self, known: Job | None, held: "Held | None") -> None:
        if held is not None and known is not None and known is self._known and held.version > self.version:
            self._take(known, held.job, held.version, ())

    def _take(self, base: Job, theirs: Job, version: int, clashes: object) -> None:
        theirs = theirs.model_copy(update={"changed": base.changed, "created": base.created})
        self.version = version
        self._known = base if says_the_same(base, theirs) else theirs
        if self._known is not base or clashes:
            self.came.emit(base, self._known, clashes)
