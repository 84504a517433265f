"""The store: one file that keeps all jobs and the saved stock."""

from collections.abc import Iterable
from pathlib import Path
from typing import Self

import platformdirs

from matcher.errors import StoreUnavailable
from matcher.files import sync_folder
from matcher.job import Job
from matcher.job.listing import new_id
from matcher.store import attachments, backups, health, job_file
from matcher.store import jobs as job_rows
from matcher.store.backups import Generation
from matcher.store.connection import connect, number
from matcher.store.faults import AlreadyThere, told
from matcher.store.jobs import Change, Held, Saved
from matcher.store.migrations import migrate
from matcher.store.opening import Opened, open_file
from matcher.store.search import JobLine, job_lines
from matcher.store.stock import Stock


def default_path() -> Path:
    """Return the place of the store in the user's data folder."""
    return Path(platformdirs.user_data_dir("samespin", appauthor=False)) / "samespin.db"


class Store(Stock):
    """All jobs and all stock of one file.

    Threads: any thread may call any method, one at a time; a lock holds the others back. Calls read
    and write the disk and may wait for another window (up to `wait_s`), so a window makes them on
    its one worker thread and never on the thread that paints.

    Every method may raise a `StoreUnavailable` (see `matcher.store.faults`): one line that says what
    happened and what to do. What wasn't saved is unchanged in the caller's hands: call again to
    retry, or `save_elsewhere`.
    """

    @classmethod
    def open(cls, path: Path | str | None = None, *, wait_s: float = 5.0) -> Self:
        """Open the store at `path`, or the user's own; it is made where there is none.

        A damaged store is set aside and what can be saved of it opened; `notices` says so. Raises
        `StoreUnavailable`.
        """
        at = Path(path) if path is not None else default_path()
        with told(at):
            if path is None:
                at.parent.mkdir(parents=True, exist_ok=True)
            opened = open_file(at, wait_s)
        return cls(opened, at, wait_s)

    @classmethod
    def in_memory(cls) -> Self:
        """Return a store that lives as long as the program: where no file can be opened."""
        db = connect(None)
        migrate(db)
        return cls(Opened(db), None)

    def jobs(self, query: str = "", *, removed: bool = False, limit: int = 500) -> tuple[JobLine, ...]:
        """Return jobs, last changed first: all, or those whose words or part numbers match `query`.

        Words may be unfinished, numbers nearly right. `removed` lists the removed ones instead.
        """
        with self._use() as db:
            return job_lines(db, query, removed=removed, limit=limit)

    def load(self, job_id: str) -> Held:
        """Return a job and its version. Raises `NotInStore`."""
        with self._use() as db:
            return job_rows.load(db, job_id)

    def save(self, job: Job, base: int = 0) -> Saved:
        """Save what changed in `job` since version `base` (0 for a new job); durable on return.

        What another window changed meanwhile is merged in; what both changed differently stays as the
        other left it and is returned as a `Clash`. Keep the returned version for the next save.
        """
        with self._write() as db:
            return job_rows.save(db, job, base, self._writer)

    def delete(self, job_id: str) -> None:
        """Take a job out of the list; `restore_job` brings it back. Raises `NotInStore`."""
        with self._write() as db:
            job_rows.mark_removed(db, job_id, removed=True, writer=self._writer)

    def restore_job(self, job_id: str) -> None:
        """Bring a deleted job back into the list. Raises `NotInStore`."""
        with self._write() as db:
            job_rows.mark_removed(db, job_id, removed=False, writer=self._writer)

    def log(self, job_id: str, limit: int = 1000) -> tuple[Change, ...]:
        """Return what changed in a job, newest first. Raises `NotInStore`."""
        with self._use() as db:
            return job_rows.log(db, job_id, limit)

    def latest(self) -> int:
        """Return the number of the newest entry in the store's log: where `changes_since` starts."""
        with self._use() as db:
            return job_rows.latest(db)

    def touched(self) -> bool:
        """Whether another window wrote since the last call; cheap enough to ask every second."""
        with self._use() as db:
            now, before = number(db, "PRAGMA data_version"), self._seen_data
            self._seen_data = now
            return before not in (0, now)

    def changes_since(self, n: int) -> tuple[Change, ...]:
        """Return what other windows changed after entry `n` of the log, oldest first."""
        with self._use() as db:
            return job_rows.changes_since(db, n, self._writer)

    def attach(self, content: bytes) -> str:
        """Keep a picture or original file; return the digest under which a job names it."""
        with self._write() as db:
            return attachments.add(db, content)

    def attachment(self, digest: str) -> bytes:
        """Return the bytes of a picture or original file. Raises `NotInStore` where they aren't here."""
        with self._use() as db:
            return attachments.get(db, digest)

    def check(self) -> None:
        """Check the whole file; seconds for a large one. Raises `StoreDamaged`."""
        with self._use() as db:
            health.check(db, self.path, whole=True)

    def backups(self) -> tuple[Generation, ...]:
        """Return the backups, oldest first."""
        with told(self.path):
            return backups.generations(self.path) if self.path else ()

    def back_up(self, *, only_if_due: bool = False) -> Generation | None:
        """Make a backup now, or only if the newest is a day old; seconds for a large store."""
        with self._use() as db:
            if self.path is None or (only_if_due and not backups.is_due(self.path)):
                return None
            return self._backed_up(db, self.path)

    def restore(self, generation: Generation) -> Generation | None:
        """Put a backup in the place of everything; the state before is backed up first and returned.

        Load open jobs anew afterwards: their versions may be older.
        """
        with self._write() as db:
            return backups.restore(db, self.path, generation) if self.path else None

    def save_elsewhere(self, path: Path | str, jobs: Iterable[Job] = ()) -> Self:
        """Copy the whole store, as far as it can be read, to a new file, with `jobs` as they are now.

        Returns the new store, open. Raises `AlreadyThere` where `path` exists: nothing is overwritten.
        """
        at = Path(path)
        if at.exists():
            raise AlreadyThere(f"{at}: there is such a file already. Choose another name.")
        draft = at.with_name(f"{at.name}.unfinished")
        with told(at):
            try:
                with self._use() as db:
                    backups.copy_to(db, draft, self.path or at)
                draft.replace(at)
                sync_folder(at.parent)
            except StoreUnavailable as fault:
                left_out: tuple[str, ...] = (f"Only the open jobs could be copied: {fault}",)
            else:
                left_out = ()
        store = type(self).open(at)
        store.notices += left_out
        try:
            for job in jobs:
                store.overwrite(job)
        except BaseException:
            store.close()
            raise
        return store

    def export_job(self, job: Job, path: Path | str) -> None:
        """Write a job as it is now, with its pictures, to one file (see `matcher.store.job_file`)."""
        files = {one.digest: self.attachment(one.digest) for one in job_file.attachments(job)}
        with told(Path(path)):
            job_file.write_job(Path(path), job, files)

    def import_job(self, path: Path | str) -> Held:
        """Take a job's file into the store; a job that is here already becomes a second one.

        Raises `UnreadableInput`, one line, for a file that is no job.
        """
        job, files = job_file.read_job(Path(path))
        with self._write() as db:
            for content in files.values():
                attachments.add(db, content)
            if job_rows.exists(db, job.id):
                job = job.edited(id=new_id(), name=f"{job.name} (imported)"[:2000])
            saved = job_rows.save(db, job, 0, self._writer)
        return Held(saved.job, saved.version)

    def overwrite(self, job: Job) -> Saved:
        """Save a job as it is, whatever the store holds of it."""
        with self._write() as db:
            return job_rows.overwrite(db, job, self._writer)
