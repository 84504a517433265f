"""The one place that runs work off the window's own thread, and brings the answer back to it.

One worker owns the store, so that writes happen in order; a small pool does the rest. An answer
that nobody waits for any more (cancelled, or the window closed) is dropped.
"""

import sys
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any

from PySide6.QtCore import QCoreApplication, QObject, Qt, Signal, Slot

from matcher.errors import SamespinError

Tick = Callable[[float], None]
"""Call with the share done, 0 .. 1; raises `Cancelled` once the user has had enough."""


class Cancelled(SamespinError):
    """The user stopped this work."""


class Task(QObject):
    """One piece of work under way; lives on the window's thread, its signals arrive there."""

    done = Signal(object)
    failed = Signal(object)
    progress = Signal(float)
    ended = Signal()

    def __init__(self, post: "Post", parent: QObject | None = None, *, writes: bool = False) -> None:
        super().__init__(parent)
        self.writes = writes
        """Whether it works on the store, and so must not be left half done when the window closes."""
        self._post = post
        self._stop = threading.Event()

    def cancel(self) -> None:
        """Ask the work to stop; neither `done` nor `failed` will follow."""
        self._stop.set()

    def tick(self, share: float) -> None:
        """Report progress from the worker's thread.

        :raises Cancelled: when the user stopped the work.
        """
        if self._stop.is_set():
            raise Cancelled("stopped")
        self._post(self._progressed, share)

    def run(self, work: Callable[[], object]) -> None:
        """Do the work on the calling (worker's) thread and send back what came of it."""
        answer, error = None, None
        if not self._stop.is_set():
            try:
                answer = work()
            except Exception as caught:  # noqa: BLE001 - whatever it was must reach the window as a line
                error = caught
        self._post(self._arrived, answer, error)

    def _progressed(self, share: float) -> None:
        if not self._stop.is_set():
            self.progress.emit(share)

    def _arrived(self, answer: object, error: BaseException | None) -> None:
        if not self._stop.is_set():
            if error is None:
                self.done.emit(answer)
            else:
                self.failed.emit(error)
        self.ended.emit()


Post = Callable[..., None]
"""Calls a function with its arguments on the window's thread, a moment later."""


class Work(QObject):
    """Runs functions on worker threads; every method must be called on the window's thread."""

    _posted = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = ThreadPoolExecutor(1, "store")
        self._pool = ThreadPoolExecutor(2, "work")
        self._tasks: set[Task] = set()
        self._before = sys.getswitchinterval()
        self._posted.connect(self._call, Qt.ConnectionType.QueuedConnection)
        # The window must get the interpreter back quickly while the engine computes.
        sys.setswitchinterval(0.001)

    def store(self, work: Callable[..., object], *args: Any) -> Task:
        """Run `work(*args)` on the one thread that owns the store."""
        return self._start(self._store, work, args)

    def run(self, work: Callable[..., object], *args: Any) -> Task:
        """Run `work(*args)` on the pool."""
        return self._start(self._pool, work, args)

    def run_ticking(self, work: Callable[..., object], *args: Any) -> Task:
        """Run `work(tick, *args)` on the pool; the work calls `tick(share)` now and then."""
        return self._start(self._pool, work, args, ticking=True)

    def wait_for_store(self) -> None:
        """Wait until the store's thread has done all that it was given; a locked file makes that seconds."""
        self._store.submit(lambda: None).result()

    @property
    def is_busy(self) -> bool:
        """Whether any work is under way."""
        return bool(self._tasks)

    def close(self) -> None:
        """Cancel the pool's work, finish the store's, end every thread."""
        for task in self._tasks:
            task.blockSignals(True)
            if not task.writes:
                task.cancel()
        self._pool.shutdown(wait=True, cancel_futures=True)
        self._store.shutdown(wait=True)
        # What the workers sent last is taken in while everything it is for still lives.
        QCoreApplication.sendPostedEvents(self)
        self._tasks.clear()
        sys.setswitchinterval(self._before)

    def _post(self, call: Callable[..., None], *args: object) -> None:
        """Call a function on the window's thread; may itself be called on any thread."""
        self._posted.emit((call, args))

    @Slot(object)
    def _call(self, posted: tuple[Callable[..., None], tuple[object, ...]]) -> None:
        call, args = posted
        call(*args)

    def _start(
        self,
        pool: ThreadPoolExecutor,
        work: Callable[..., object],
        args: tuple[Any, ...],
        *,
        ticking: bool = False,
    ) -> Task:
        task = Task(self._post, self, writes=pool is self._store)
        self._tasks.add(task)
        task.ended.connect(lambda: self._ended(task))
        given = (task.tick, *args) if ticking else args
        pool.submit(task.run, lambda: work(*given))
        return task

    def _ended(self, task: Task) -> None:
        self._tasks.discard(task)
        task.deleteLater()
