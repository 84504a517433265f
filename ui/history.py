"""Undo and redo: every change of the job is a step from one frozen job to the next.

Steps with the same merge key in a row (typing in one field) become one step.
"""

from collections.abc import Callable

from PySide6.QtCore import QObject
from PySide6.QtGui import QUndoCommand, QUndoStack

from matcher.job import Job

Put = Callable[[Job], None]


class Step(QUndoCommand):
    """One change: the job before and after it."""

    def __init__(self, words: str, before: Job, after: Job, put: Put, merge: int) -> None:
        super().__init__(words)
        self.before, self.after = before, after
        self._put, self._merge = put, merge

    def id(self) -> int:
        """Return the merge key; -1 never merges."""
        return self._merge

    def mergeWith(self, other: QUndoCommand) -> bool:
        """Take over a later step with the same key."""
        if not isinstance(other, Step):
            return False
        self.after = other.after
        return True

    def redo(self) -> None:
        """Put the job after the change."""
        self._put(self.after)

    def undo(self) -> None:
        """Put the job before the change."""
        self._put(self.before)


class History(QUndoStack):
    """The steps of one open job."""

    def __init__(self, put: Put, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._put = put
        self._keys: dict[str, int] = {}

    def step(self, words: str, before: Job, after: Job, merge: str = "") -> None:
        """Make a change that can be undone; steps with the same `merge` in a row become one."""
        if after == before:
            return
        key = self._keys.setdefault(merge, len(self._keys) + 1) if merge else -1
        self.push(Step(words, before, after, self._put, key))
