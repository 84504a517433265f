"""A bar that tells how far some work is, with a Stop; it stays away from what is done in a moment."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QWidget

from ui.line import Soft
from ui.theme import GRID
from ui.work import Task

PATIENCE_MS = 300
"""Work that is done by then shows no bar."""


class BusyBar(QWidget):
    """Shows one task; another one takes its place."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words, self.progress, self.stop = Soft(), QProgressBar(), QPushButton(self.tr("S&top"))
        self.progress.setFixedWidth(28 * GRID)
        self.progress.setAccessibleName(self.tr("Progress"))
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.addWidget(self.words, 1)
        across.addWidget(self.progress)
        across.addWidget(self.stop)
        self._task: Task | None = None
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(PATIENCE_MS)
        self._patience.timeout.connect(self.show)
        self.stop.clicked.connect(self._cancel)
        self.hide()

    def watch(self, task: Task, words: str) -> None:
        """Show a task until it ends."""
        self._task = task
        self.words.setText(words)
        self._show_share(0.0)
        self._patience.start()
        task.progress.connect(lambda share: self._show_share(share) if self._task is task else None)
        task.ended.connect(lambda: self._ended(task))

    def _show_share(self, share: float) -> None:
        """Show how much is done; a bar that only moves while that can't be told."""
        self.progress.setRange(0, 1000 if share else 0)
        self.progress.setValue(round(share * 1000))

    def _cancel(self) -> None:
        if self._task is not None:
            self._task.cancel()
            self._ended(self._task)

    def _ended(self, task: Task) -> None:
        if self._task is task:
            self._task = None
            self._patience.stop()
            self.hide()
