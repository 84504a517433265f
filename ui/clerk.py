"""Asks the clerk's process; every method but `close` blocks, so it runs on a worker thread."""

import multiprocessing
import threading
import time
from collections.abc import Callable
from multiprocessing.connection import Connection
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ui.pauses import without_pauses
from ui.work import Cancelled

if TYPE_CHECKING:
    from multiprocessing.context import SpawnProcess

    from matcher.job import Listing
    from matcher.motor import Wanted
    from ui.lot import LotRow

Tick = Callable[[float], None]
Row = tuple[int, str]
"""Place and id of one offer in its lot."""
WAIT_S = 0.05
BREATH_S = 0.003
"""Time between two batches of rows in which the window has the interpreter to itself."""


class ClerkFault(Exception):
    """What the clerk could not do, in one line."""


class Clerk:
    """The window's side of the pipe; the process starts with the first request."""

    def __init__(self, store: Path | None) -> None:
        self._store = str(store) if store else None
        self._lock = threading.Lock()
        self._process: SpawnProcess | None = None
        self._pipe: Connection | None = None
        self._closed = False
        self._lot: tuple[str, tuple[object, ...]] | None = None
        """The request that brought the lot; asked again of a process that had to be started anew."""

    def open(self, tick: Tick, paths: list[Path]) -> "tuple[list[LotRow], list[str]]":
        """Read files as a new lot; return its rows and the lines about what could not be read."""
        rows, problems = self._ask(tick, "open", [str(path) for path in paths])
        return rows, problems

    def stock(self, tick: Tick, shelf: str = "") -> "tuple[list[LotRow], list[str]]":
        """Take the saved stock, or one shelf of it, as the lot."""
        rows, problems = self._ask(tick, "stock", self._store, shelf)
        return rows, problems

    def shelves(self, tick: Tick) -> list[tuple[str, str, int]]:
        """Return id, name and number of offers of each shelf that holds any."""
        found: list[tuple[str, str, int]] = self._ask(tick, "shelves", self._store)[1]
        return found

    def rank(self, tick: Tick, wanted: "Wanted", changes: dict[str, Any]) -> "list[LotRow]":
        """Return the lot's rows ranked against an old motor, best first."""
        return self._ask(tick, "rank", wanted, changes)[0]

    def listings(self, tick: Tick, rows: list[Row]) -> "list[Listing]":
        """Return offers of the lot as candidates for a job."""
        found: list[Listing] = self._ask(tick, "listings", rows)[1]
        return found

    def reasons(self, tick: Tick, places: list[int]) -> dict[int, str]:
        """Return, by place, the one sentence that matters most about each of these offers."""
        found: dict[int, str] = self._ask(tick, "reasons", places)[1]
        return found

    def keep(self, tick: Tick, name: str) -> tuple[int, int]:
        """Save the lot as a shelf of stock; return how many were kept, and how many it held."""
        kept, held = self._ask(tick, "keep", self._store, name)[1]
        return kept, held

    def take_out(self, tick: Tick, rows: list[Row]) -> dict[str, list[int]]:
        """Take offers out of the stock; return what `put_back` needs to undo it."""
        numbers: dict[str, list[int]] = self._ask(tick, "take_out", self._store, rows)[1]
        return numbers

    def put_back(self, tick: Tick, numbers: dict[str, list[int]]) -> None:
        """Put offers that were taken out on their shelves again; the lot is to be loaded anew."""
        self._ask(tick, "put_back", self._store, numbers)

    def move(self, store: Path) -> None:
        """Take the stock from another store from now on."""
        self._store = str(store)

    def close(self) -> None:
        """End the process; a request under way raises `Cancelled`."""
        self._closed = True
        process, pipe = self._process, self._pipe
        if process is not None:
            process.terminate()
            process.join()
            process.close()
            self._process = None
        if pipe is not None:
            pipe.close()

    def _started(self) -> Connection:
        if self._closed:
            raise Cancelled("closed")
        if self._pipe is None:
            from ui.clerk_room import run

            context = multiprocessing.get_context("spawn")
            self._pipe, theirs = context.Pipe()
            self._process = context.Process(target=run, args=(theirs,), daemon=True, name="clerk")
            self._process.start()
            theirs.close()
        return self._pipe

    def _ask(self, tick: Tick, name: str, *arguments: object) -> "tuple[list[LotRow], Any]":
        with self._lock:
            try:
                is_new = self._pipe is None
                pipe = self._started()
                with without_pauses():
                    if is_new and self._lot is not None:
                        pipe.send(self._lot)
                        self._gather(tick, pipe)
                    pipe.send((name, arguments))
                    answer = self._gather(tick, pipe)
                if name == "stock" or (name == "open" and answer[0]):
                    self._lot = (name, arguments)
                return answer
            except (EOFError, OSError) as fault:
                if self._closed:
                    raise Cancelled("closed") from fault
                self._pipe = self._process = None
                raise ClerkFault("The helper that reads lots ended; try again.") from fault

    def _gather(self, tick: Tick, pipe: Connection) -> "tuple[list[LotRow], Any]":
        rows: list[LotRow] = []
        share = 0.0
        while True:
            try:
                while not pipe.poll(WAIT_S):
                    tick(share)
                reply = pipe.recv()
            except Cancelled:
                self._stop(pipe)
                raise
            if reply.kind == "done":
                return rows, reply.what
            if reply.kind == "failed":
                raise ClerkFault(reply.what)
            if reply.kind == "rows":
                rows += reply.what
                time.sleep(BREATH_S)
            else:
                share = reply.what
                tick(share)

    def _stop(self, pipe: Connection) -> None:
        """Tell the clerk to stop and read away what it still says about this request."""
        if self._closed:
            return
        pipe.send(("stop", ()))
        while pipe.recv().kind not in {"done", "failed"}:
            pass
