"""The saved jobs, reached on the store's own thread; no SQL here.

The store is opened on first use, so that the window stands before the database is loaded.
"""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from matcher.job import Attachment, Job
from ui.work import Task, Work

if TYPE_CHECKING:
    from matcher.store import Saved, Store


class Shelf:
    """Saves, finds and opens jobs; methods that return a task return at once."""

    def __init__(self, work: Work, path: Path | None) -> None:
        self._work, self._path = work, path
        self._store: Store | None = None
        self._versions: dict[str, int] = {}

    def opened(self) -> "Store":
        """Return the store; to be called on the store's thread alone."""
        if self._store is None:
            from matcher.store import Store  # late: the database is needed after the first paint

            self._store = Store.open(self._path)
        return self._store

    def save(self, job: Job) -> "Saved":
        """Save a job; to be called on the store's thread."""
        saved = self.opened().save(job, self._versions.get(job.id, 0))
        self._versions[job.id] = saved.version
        return saved

    def search(self, words: str, limit: int = 40) -> Task:
        """Find saved jobs by number, place or note; the last changed ones for no words."""
        return self._work.store(lambda: self.opened().jobs(words, limit=limit))

    def load(self, job_id: str) -> Task:
        """Load one saved job; the task's answer is the `Job`."""
        return self._work.store(self._loaded, job_id)

    def _loaded(self, job_id: str) -> Job:
        held = self.opened().load(job_id)
        self._versions[job_id] = held.version
        return held.job

    def attach(self, paths: Sequence[Path]) -> Task:
        """Keep pictures; the task's answer is a tuple of `Attachment`."""
        return self._work.store(self._attached, tuple(paths))

    def _attached(self, paths: tuple[Path, ...]) -> tuple[Attachment, ...]:
        store = self.opened()
        return tuple(Attachment(name=path.name, digest=store.attach(path.read_bytes())) for path in paths)

    def picture(self, digest: str) -> Task:
        """Return the bytes of a kept picture."""
        return self._work.store(lambda: self.opened().attachment(digest))

    def close(self) -> None:
        """Close the store on its thread."""
        self._work.store(self._shut)

    def _shut(self) -> None:
        if self._store is not None:
            self._store.close()
            self._store = None
