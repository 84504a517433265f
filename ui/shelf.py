"""The saved jobs, reached on the store's own thread; no SQL here.

The store is opened on first use, so that the window stands before the database is loaded.
"""

from collections import deque
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from matcher.errors import SamespinError
from matcher.job import Attachment, Job
from ui.work import Task, Work

if TYPE_CHECKING:
    from matcher.store import Clash, Generation, Held, Saved, Store


class Shelf:
    """Saves, finds and opens jobs; methods that return a task return at once."""

    def __init__(self, work: Work, path: Path | None) -> None:
        self._work, self._path = work, path
        self._store: Store | None = None
        self._last: dict[str, tuple[Job, Saved]] = {}
        self._usual_path: Path | None = None
        self.fault = ""
        """Why the last save failed, in one line; empty after one that didn't."""
        self.notices: deque[str] = deque()
        """What a person should be told of the store, oldest first; whoever tells it takes it out."""

    def opened(self) -> "Store":
        """Return the store; to be called on the store's thread alone."""
        if self._store is None:
            from matcher.store import Store  # late: the database is needed after the first paint

            self._store = Store.open(self._path)
            self.notices.extend(self._store.notices)
            self._store.touched()  # from here on it tells what others wrote
        return self._store

    @property
    def usual_path(self) -> Path:
        """Where the usual figures for new jobs lie: beside the jobs that the window began with."""
        if self._usual_path is None:
            from matcher.store import default_path
            from matcher.usual import usual_path

            self._usual_path = usual_path(self._path or default_path())
        return self._usual_path

    def start(self) -> Task:
        """Open the store, so that what is to be told of it is known at once."""
        return self._work.store(self.opened)

    def save(self, job: Job, version: int) -> "Saved":
        """Save a job that is built on a version; to be called on the store's thread.

        Where the window has not yet taken in what the last save merged, this is done here, so that the
        newer job takes nothing back that another window changed.
        """
        try:
            return self._saved(job, version)
        except Exception as fault:
            from matcher.store import StoreDamaged

            self.fault = str(fault)
            if isinstance(fault, StoreDamaged):
                self._shut()  # opened again, what can be saved of it goes into a new one
            raise

    def _saved(self, job: Job, version: int) -> "Saved":
        from matcher.store.rebase import rebase

        sent = job
        more: tuple[Clash, ...] = ()
        last = self._last.get(job.id)
        if last is not None and last[1].version > version:
            job, more = rebase(last[0], last[1].job, job)
            version = last[1].version
        saved = self.opened().save(job, version)
        saved = replace(saved, clashes=(*more, *saved.clashes))
        self._last[job.id] = (sent, saved)
        self.fault = ""
        return saved

    def look(self, job_id: str, version: int) -> "Held | None":
        """Return the job if another window saved a newer version; to be called on the store's thread."""
        if self._store is None or not self._store.touched():
            return None
        held = self._store.load(job_id)
        return held if held.version > version else None

    def search(self, words: str, limit: int = 40) -> Task:
        """Find saved jobs by number, place or note; the last changed ones for no words."""
        return self._work.store(lambda: self.opened().jobs(words, limit=limit))

    def dues(self, ids: Sequence[str], day: date) -> Task:
        """Tell which jobs have a return window that runs; the answer is its words by the job's id."""
        return self._work.store(self._dues, tuple(ids), day)

    def _dues(self, ids: tuple[str, ...], day: date) -> dict[str, str]:
        from matcher.arrival import due  # late: brings the rules

        found = {}
        for job_id in ids:
            with suppress(SamespinError):  # a job that can't be read is told where it is opened
                found[job_id] = due(self.opened().load(job_id).job, day)
        return {job_id: words for job_id, words in found.items() if words}

    def load(self, job_id: str) -> Task:
        """Load one saved job; the task's answer is a `Held`: the job and its version."""
        return self._work.store(lambda: self.opened().load(job_id))

    def backups(self) -> Task:
        """List the backups; the task's answer is a tuple of `Generation`, oldest first."""
        return self._work.store(lambda: self.opened().backups())

    def back_up(self) -> Task:
        """Make a backup now; the task's answer is the `Generation`."""
        return self._work.store(lambda: self.opened().back_up())

    def restore(self, generation: "Generation") -> Task:
        """Put a backup in the place of everything; the answer is the backup of what was there before."""
        return self._work.store(self._restored, generation)

    def _restored(self, generation: "Generation") -> "Generation | None":
        before = self.opened().restore(generation)
        self._last.clear()
        return before

    def export(self, job: Job, path: Path) -> Task:
        """Write a job with its pictures to one file."""
        return self._work.store(lambda: self.opened().export_job(job, path))

    def take_in(self, path: Path) -> Task:
        """Take a job's file into the store; the task's answer is a `Held`."""
        return self._work.store(lambda: self.opened().import_job(path))

    def save_elsewhere(self, path: Path, jobs: Sequence[Job]) -> Task:
        """Go on in a copy of the store at another place, with `jobs` as they are now.

        The task's answer is a tuple of `Held`, one for each of the jobs.
        """
        return self._work.store(self._moved, path, tuple(jobs))

    def _moved(self, path: Path, jobs: tuple[Job, ...]) -> "tuple[Held, ...]":
        from matcher.store import AlreadyThere, Store

        if self._store is not None:
            store = self._store.save_elsewhere(path, jobs)
            self._shut()
        elif path.exists():
            raise AlreadyThere(f"{path}: there is such a file already. Choose another name.")
        else:
            store = Store.open(path)
            for job in jobs:
                store.overwrite(job)
        store.touched()
        self._store, self._path, self.fault = store, path, ""
        self._last.clear()
        self.notices.extend(store.notices)
        return tuple(store.load(job.id) for job in jobs)

    def attach(self, paths: Sequence[Path]) -> Task:
        """Keep pictures; the task's answer is a tuple of `Attachment`."""
        return self._work.store(self._attached, tuple(paths))

    def _attached(self, paths: tuple[Path, ...]) -> tuple[Attachment, ...]:
        from matcher.files import read_limited
        from matcher.store.attachments import LARGEST

        store = self.opened()
        contents = [(path.name, read_limited(path, LARGEST)) for path in paths]
        return tuple(Attachment(name=name, digest=store.attach(content)) for name, content in contents)

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
