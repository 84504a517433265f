"""The open job and what follows from it, with a signal for each change; no rule lives here.

A change goes through `edit`: it becomes an undo step, is saved a moment later, and the answers are
worked out anew on a worker. Answers to a question that has changed meanwhile are dropped.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from matcher.job import Job
from matcher.refusal import told
from matcher.store.rebase import rebase
from ui.answers import Answers, answer
from ui.history import History
from ui.saving import Saving
from ui.work import Task, Work

if TYPE_CHECKING:
    from matcher.store import Clash
    from ui.shelf import Shelf

PAUSE_MS = 120
"""How long typing must rest before the engine is asked."""


class Session(QObject):
    """Holds the open job; pages listen to it and edit through it."""

    changed = Signal(object)
    """The job changed (`Job`); its answers will follow."""
    answered = Signal(object)
    """What follows from the job is known (`Answers`)."""
    leaving = Signal()
    """Another job is about to be opened: what is being typed must count for this one now."""
    opened = Signal(object)
    """Another job was opened (`Job`)."""
    saved = Signal(object)
    clashed = Signal(object, object)
    """Another window changed the same: the clashes, and the job as it was here."""
    trouble = Signal(str)
    """One line that the user must see."""

    def __init__(self, work: Work, shelf: "Shelf | None", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.work = work
        self.job = Job()
        self.answers: Answers | None = None
        self.history = History(self._put, self)
        self.saving = Saving(work, shelf, lambda: self.job, self)
        self.saving.opened(self.job, 0)
        self.saving.saved.connect(self.saved)
        self.saving.came.connect(self._take_in)
        self._task: Task | None = None
        self._ask_later = self._timer(PAUSE_MS, self._ask)

    def _timer(self, pause: int, then: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(pause)
        timer.timeout.connect(then)
        return timer

    def open(self, job: Job, version: int = 0) -> None:
        """Make another job the open one, in the store's version (0: not in it); save the one before."""
        self.leaving.emit()
        self.flush()
        self.history.forget()
        self.job, self.answers = job, None
        self.saving.opened(job, version)
        self.opened.emit(job)
        self.changed.emit(job)
        self._ask()

    def moved(self, job: Job, version: int) -> None:
        """Go on with the open job in another store, which holds `job` in that version."""
        if job.id == self.job.id:
            same = job.model_copy(update={"changed": self.job.changed, "created": self.job.created})
            self.saving.opened(self.job if same == self.job else same, version)
            self.saving.retry()

    def edit(self, words: str, job: Job, merge: str = "") -> None:
        """Change the job; `words` name the step for undo ("Undo typing volts")."""
        self.history.step(words, self.job, job, merge)

    def try_edit(self, words: str, change: Callable[[Job], Job], merge: str = "") -> str:
        """Change the job by a function and return the line that says why it can't be, else nothing."""
        try:
            self.edit(words, change(self.job), merge)
        except ValueError as fault:
            return told(fault)
        return ""

    def ask_now(self) -> None:
        """Ask the engine without waiting for the typing to rest."""
        self._ask_later.stop()
        self._ask()

    @property
    def is_settled(self) -> bool:
        """Whether the answers belong to the job as it stands."""
        return self.answers is not None and self.answers.job is self.job

    @property
    def is_blank(self) -> bool:
        """Whether nothing was entered since the job was begun."""
        return not self.saving.version and self.saving.is_saved

    def save_now(self) -> None:
        """Save the job on the store's thread."""
        self.saving.now()

    def flush(self) -> None:
        """Save what is not saved yet."""
        self.saving.retry()

    def finish(self) -> None:
        """Save what isn't saved yet; called when the window closes."""
        self._ask_later.stop()
        if self._task is not None:
            self._task.cancel()
        self.saving.stop()

    def _take_in(self, base: Job, theirs: Job, clashes: "tuple[Clash, ...]") -> None:
        """Lay what was changed here since `base` over what another window made of it."""
        mine = self.job
        self.job, more = rebase(base, theirs, mine)
        self.history.other_changed(base, theirs)
        self.changed.emit(self.job)
        self._ask_later.start()
        if self.job is not theirs:
            self.saving.soon()
        if clashes:
            self.clashed.emit(clashes, base)
        if more:
            self.clashed.emit(more, mine)

    def _put(self, job: Job) -> None:
        self.job = job
        self.changed.emit(job)
        self._ask_later.start()
        self.saving.soon()

    def _ask(self) -> None:
        if self._task is not None:
            self._task.cancel()
        task = self._task = self.work.run_ticking(answer, self.job, self.answers)
        task.done.connect(self._take)
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))
        task.ended.connect(lambda: self._forget(task))

    def _forget(self, task: Task) -> None:
        if self._task is task:
            self._task = None

    def _take(self, answers: Answers) -> None:
        self.answers = answers
        self.answered.emit(answers)
