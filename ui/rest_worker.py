"""Works out the rest of the open job (arrival, sheet, proof, reckoning) on a worker, after each change."""

from collections.abc import Callable
from datetime import date

from PySide6.QtCore import QObject, QTimer, Signal

from matcher.rest import Rest, rest_of
from matcher.today import today
from ui.answers import Answers
from ui.session import Session
from ui.work import Task

LOOK_AT_CLOCK_MS = 10 * 60 * 1000
"""How often the calendar is looked at: days left must be right in a window left open overnight."""


class RestWorker(QObject):
    """One for each session; pages ask for it with `of` and listen to `ready`."""

    ready = Signal(object)
    """The rest of the job as it stands (`Rest`)."""

    def __init__(self, session: Session, clock: Callable[[], date] = today) -> None:
        super().__init__(session)
        self.rest: Rest | None = None
        self.clock = clock
        self._session = session
        self._task: Task | None = None
        self._day = clock()
        session.opened.connect(self._clear)
        session.answered.connect(self._work_out)
        timer = QTimer(self)
        timer.setInterval(LOOK_AT_CLOCK_MS)
        timer.timeout.connect(self.look_at_clock)
        timer.start()

    @classmethod
    def of(cls, session: Session) -> "RestWorker":
        """Return the session's own worker, made when it is first asked for."""
        found = session.findChild(cls)
        return found if found is not None else cls(session)

    def day(self) -> date:
        """Return today as the worker counts it."""
        return self.clock()

    def look_at_clock(self) -> None:
        """Count the days anew once the calendar has turned."""
        if self.clock() != self._day and self._session.answers is not None:
            self._work_out(self._session.answers)

    def _work_out(self, answers: Answers) -> None:
        if self._task is not None:
            self._task.cancel()
        self._day = self.clock()
        task = self._task = self._session.work.run(rest_of, answers.job, self._day, answers.settings)
        task.done.connect(self._take)
        task.failed.connect(lambda fault: self._session.trouble.emit(str(fault)))
        task.ended.connect(lambda: self._forget(task))

    def _clear(self) -> None:
        """Forget the job before: nothing of it may be shown as the new one's."""
        self.rest = None

    def _forget(self, task: Task) -> None:
        if self._task is task:
            self._task = None

    def _take(self, rest: Rest) -> None:
        self.rest = rest
        self.ready.emit(rest)
