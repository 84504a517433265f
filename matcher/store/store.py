"""The store: one file that keeps all jobs and the saved stock."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from types import TracebackType
from typing import Self
from uuid import uuid4

import platformdirs
from sqlite_utils import Database

from matcher.job import Job
from matcher.store import jobs as job_rows
from matcher.store.connection import connect, number, sync_folder, write_ahead
from matcher.store.faults import gone, told
from matcher.store.jobs import Change, Held, Saved
from matcher.store.migrations import migrate
from matcher.store.search import JobLine, job_lines


def default_path() -> Path:
    """Return the place of the store in the user's data folder."""
    return Path(platformdirs.user_data_dir("samespin", appauthor=False)) / "samespin.db"


class Store:
    """All jobs of one file.

    Threads: any thread may call any method, one at a time; a lock holds the others back. Calls read
    and write the disk and may wait for another window (up to `wait_s`), so a window makes them on
    its one worker thread and never on the thread that paints.

    Every method may raise a `StoreUnavailable` (see `matcher.store.faults`): one line that says what
    happened and what to do. What wasn't saved is unchanged in the caller's hands.
    """

    def __init__(self, db: Database, path: Path | None, notices: tuple[str, ...] = ()) -> None:
        self.path = path
        """The file; `None` for a store in memory."""
        self.notices = notices
        """What a person should be told after opening: one line each, mostly none."""
        self._db = db
        self._lock = threading.RLock()
        self._writer = uuid4().hex
        self._seen_data = 0
        self._file = _identity(path)

    @classmethod
    def open(cls, path: Path | str | None = None, *, wait_s: float = 5.0) -> Self:
        """Open the store at `path`, or the user's own; it is made where there is none.

        Raises `StoreUnavailable`.
        """
        at = Path(path) if path is not None else default_path()
        with told(at):
            if path is None:
                at.parent.mkdir(parents=True, exist_ok=True)
            db = connect(at, wait_s=wait_s)
            write_ahead(db)
            migrate(db, at)
            sync_folder(at.parent)
        return cls(db, at)

    @classmethod
    def in_memory(cls) -> Self:
        """Return a store that lives as long as the program: where no file can be opened."""
        db = connect(None)
        migrate(db)
        return cls(db, None)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Close the file; a second call does nothing."""
        with self._lock:
            self._db.conn.close()

    @contextmanager
    def _use(self) -> Iterator[Database]:
        with self._lock, told(self.path):
            yield self._db

    @contextmanager
    def _write(self) -> Iterator[Database]:
        """Run the block and make sure that what it wrote lies under the store's name."""
        with self._use() as db:
            yield db
            if self.path is not None and _identity(self.path) != self._file:
                raise gone(self.path)

    def jobs(self, query: str = "", *, removed: bool = False, limit: int = 500) -> tuple[JobLine, ...]:
        """Return jobs, last changed first: all, or those whose words or part numbers match `query`.

        Words may be unfinished, numbers nearly right. `removed` lists the removed ones instead.
        """
        with self._use() as db:
            return job_lines(db, query, removed=removed, limit=limit)

    def load(self, job_id: str) -> Held:
        """Return a job and its version. Raises `NoSuchJob`."""
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
        """Take a job out of the list; `restore_job` brings it back. Raises `NoSuchJob`."""
        with self._write() as db:
            job_rows.mark_removed(db, job_id, removed=True, writer=self._writer)

    def restore_job(self, job_id: str) -> None:
        """Bring a deleted job back into the list. Raises `NoSuchJob`."""
        with self._write() as db:
            job_rows.mark_removed(db, job_id, removed=False, writer=self._writer)

    def log(self, job_id: str, limit: int = 1000) -> tuple[Change, ...]:
        """Return what changed in a job, newest first. Raises `NoSuchJob`."""
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
            return now != before

    def changes_since(self, n: int) -> tuple[Change, ...]:
        """Return what other windows changed after entry `n` of the log, oldest first."""
        with self._use() as db:
            return job_rows.changes_since(db, n, self._writer)


def _identity(path: Path | None) -> tuple[int, int] | None:
    """Return what tells a file from another one of the same name."""
    if path is None:
        return None
    try:
        state = path.stat()
    except OSError:
        return None
    return state.st_dev, state.st_ino
