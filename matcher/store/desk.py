"""What all of a store's methods share: the open file, the lock, and what is checked around a write."""

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from types import TracebackType
from typing import Self
from uuid import uuid4

from sqlite_utils import Database

from matcher.errors import StoreUnavailable
from matcher.store import backups
from matcher.store.backups import Generation
from matcher.store.faults import gone, told
from matcher.store.jobs import trim_log
from matcher.store.opening import Opened, open_file


def _identity(path: Path | None) -> tuple[int, int] | None:
    """Return what tells a file from another one of the same name."""
    if path is None:
        return None
    try:
        state = path.stat()
    except OSError:
        return None
    return state.st_dev, state.st_ino


class Desk:
    """One open store file and the lock around it."""

    def __init__(self, opened: Opened, path: Path | None, wait_s: float = 5.0) -> None:
        self.path = path
        """The file; `None` for a store in memory."""
        self.notices = opened.notices
        """What a person should be told after opening: one line each, mostly none."""
        self.read_only = opened.read_only
        """Whether the file may only be read; saving raises `StoreReadOnly`."""
        self._db = opened.db
        self._wait_s = wait_s
        self._lock = threading.RLock()
        self._writer = uuid4().hex
        self._seen_data = 0
        self._file = _identity(path)
        self._wrote = False

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Make a backup where one is due, then close the file; a second call does nothing.

        A backup that fails is no reason not to close: the next one will tell.
        """
        with self._lock, closing(self._db.conn), suppress(StoreUnavailable):
            if self._wrote and self.path is not None:
                self._wrote = False
                with self._use() as db:
                    if backups.is_due(self.path):
                        self._backed_up(db, self.path)

    def _backed_up(self, db: Database, path: Path) -> Generation:
        """Make a backup, and drop from the log what is old: the backup still holds it."""
        made = backups.make(db, path)
        if not self.read_only:
            # A log that can't be trimmed now is trimmed the next time.
            with suppress(sqlite3.Error):
                trim_log(db)
        return made

    @contextmanager
    def _use(self) -> Iterator[Database]:
        with self._lock, told(self.path):
            yield self._db

    @contextmanager
    def _write(self) -> Iterator[Database]:
        """Run the block and make sure that what it wrote lies under the store's name.

        A file that was deleted or moved away can still be written to, and all of it would be lost.
        """
        with self._lock:
            self._find_again()
            with self._use() as db:
                yield db
            self._wrote = True
            if self.path is not None and _identity(self.path) != self._file:
                raise gone(self.path)

    def _find_again(self) -> None:
        """Open the file anew if another one lies under the store's name, as after a rescue."""
        if self.path is None or _identity(self.path) == self._file:
            return
        if _identity(self.path) is None:
            raise gone(self.path)
        with told(self.path):
            opened = open_file(self.path, self._wait_s)
            self._db.conn.close()
            self._db, self._file = opened.db, _identity(self.path)
            self.notices, self.read_only = opened.notices, opened.read_only
