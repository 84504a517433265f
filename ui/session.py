"""The open job and what follows from it, with a signal for each change; no rule lives here.

A change goes through `edit`: it becomes an undo step, is saved a moment later, and the answers are
worked out anew on a worker. Answers to a question that has changed meanwhile are dropped.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from matcher.job import Job
from ui.answers import Answers, answer
from ui.history import History
from ui.work import Task, Work

if TYPE_CHECKING:
    from matcher.store import Saved

PAUSE_MS = 120
"""How long typing must rest before the engine is asked."""
SAVE_MS = 600
"""How long changes must rest before the job is saved."""


class Session(QObject):
    """Holds the open job; pages listen to it and edit through it."""

    changed = Signal(object)
    """The job changed (`Job`); its answers will follow."""
    answered = Signal(object)
    """What follows from the job is known (`Answers`)."""
    opened = Signal(object)
    """Another job was opened (`Job`)."""
    saved = Signal(object)
    trouble = Signal(str)
    """One line that the user must see."""

    def __init__(
        self, work: Work, save: Callable[[Job], object] | None, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.work = work
        self.job = Job()
        self.answers: Answers | None = None
        self.history = History(self._put, self)
        self._save = save
        self._task: Task | None = None
        self._ask_later = self._timer(PAUSE_MS, self._ask)
        self._save_later = self._timer(SAVE_MS, self.save_now)

    def _timer(self, pause: int, then: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(pause)
        timer.timeout.connect(then)
        return timer

    def open(self, job: Job) -> None:
        """Make another job the open one, saving the one before."""
        self.flush()
        self.history.clear()
        self.job, self.answers = job, None
        self.opened.emit(job)
        self.changed.emit(job)
        self._ask()

    def edit(self, words: str, job: Job, merge: str = "") -> None:
        """Change the job; `words` name the step for undo ("Undo typing volts")."""
        self.history.step(words, self.job, job, merge)

    def try_edit(self, words: str, change: Callable[[Job], Job], merge: str = "") -> str:
        """Change the job by a function and return the line that says why it can't be, else nothing."""
        try:
            self.edit(words, change(self.job), merge)
        except ValueError as fault:
            return str(fault).splitlines()[0]
        return ""

    def ask_now(self) -> None:
        """Ask the engine without waiting for the typing to rest."""
        self._ask_later.stop()
        self._ask()

    @property
    def is_settled(self) -> bool:
        """Whether the answers belong to the job as it stands."""
        return self.answers is not None and self.answers.job is self.job

    def save_now(self) -> None:
        """Save the job on the store's thread."""
        self._save_later.stop()
        if self._save is None:
            return
        sent = self.job
        task = self.work.store(self._save, sent)
        task.done.connect(lambda saved: self._saved(sent, saved))
        task.failed.connect(lambda fault: self.trouble.emit(f"not saved: {fault}"))

    def flush(self) -> None:
        """Save what is not saved yet."""
        if self._save_later.isActive():
            self.save_now()

    def finish(self) -> None:
        """Save what isn't saved yet; called when the window closes."""
        self._ask_later.stop()
        if self._task is not None:
            self._task.cancel()
        self.flush()

    def _saved(self, sent: Job, saved: "Saved") -> None:
        """Take over what another window changed meanwhile, if nothing was changed here since."""
        self.saved.emit(saved)
        for clash in saved.clashes:
            words = self.tr("Another window changed {} too; its value stands.")
            self.trouble.emit(words.format(" ".join(str(part) for part in clash.path)))
        merged = saved.job.model_copy(update={"changed": sent.changed})
        if self.job is sent and merged != sent:
            self.job = merged
            self.changed.emit(merged)
            self._ask_later.start()

    def _put(self, job: Job) -> None:
        self.job = job
        self.changed.emit(job)
        self._ask_later.start()
        self._save_later.start()

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
