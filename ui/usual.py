"""The usual figures that every new job starts with; read and written off the window's thread."""

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QObject, Signal

from matcher.job import Job
from ui.shelf import Shelf
from ui.work import Work


class Usual(QObject):
    """Knows the figures kept beside the saved jobs."""

    came = Signal()
    """They were read or kept."""
    trouble = Signal(str)

    def __init__(self, work: Work, shelf: Shelf, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._work, self._shelf = work, shelf
        self.changes: dict[str, Any] = {}
        """What differs from the shipped figures, by group and name."""

    def load(self) -> None:
        """Read them; a file that can't be is told and leaves the shipped ones."""
        from matcher.usual import load_usual

        task = self._work.run(load_usual, self._shelf.usual_path)
        task.done.connect(self._take)
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))

    def keep(self, changes: Mapping[str, Any]) -> None:
        """Keep a job's figures for every new job."""
        from matcher.usual import keep_usual

        kept = {group: figures for group, figures in changes.items() if figures}
        task = self._work.run(keep_usual, self._shelf.usual_path, kept)
        task.done.connect(lambda _none: self._take(kept))
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))

    def _take(self, changes: Mapping[str, Any]) -> None:
        self.changes = dict(changes)
        self.came.emit()

    def new_job(self) -> Job:
        """Return an empty job that counts with these figures."""
        return Job(settings_changes=self.changes)
