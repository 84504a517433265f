"""Undo and redo: every change of the job is a step from one frozen job to the next.

Steps with the same merge key in a row (typing in one field) become one step. A step taken back after
another window changed the job takes back only itself: what the other did is laid over it.
"""

from collections.abc import Callable
from typing import NamedTuple

from PySide6.QtCore import QObject
from PySide6.QtGui import QUndoCommand, QUndoStack

from matcher.job import Job
from matcher.store.rebase import rebase


class State(NamedTuple):
    """A job, and how many changes of other windows it already holds."""

    job: Job
    era: int


Put = Callable[[State], None]


class Step(QUndoCommand):
    """One change: the job before and after it."""

    def __init__(self, words: str, before: State, after: State, put: Put, merge: int) -> None:
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

    def __init__(self, put: Callable[[Job], None], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._put = put
        self._keys: dict[str, int] = {}
        self._others: list[tuple[Job, Job]] = []

    def step(self, words: str, before: Job, after: Job, merge: str = "") -> None:
        """Make a change that can be undone; steps with the same `merge` in a row become one."""
        if after == before:
            return
        key = self._keys.setdefault(merge, len(self._keys) + 1) if merge else -1
        era = len(self._others)
        self.push(Step(words, State(before, era), State(after, era), self._put_state, key))

    def other_changed(self, base: Job, theirs: Job) -> None:
        """Remember that another window made `theirs` of the state `base`."""
        self._others.append((base, theirs))

    def forget(self) -> None:
        """Drop all steps: another job is open."""
        self.clear()
        self._others.clear()

    def _put_state(self, state: State) -> None:
        job = state.job
        for base, theirs in self._others[state.era :]:
            job, _clashes = rebase(base, theirs, job)
        self._put(job)
