"""The clerk's own process: keeps a lot, answers requests through a pipe. No Qt here.

Reading and ranking 50,000 offers is seconds of pure Python; in a thread it would fight the window for
the interpreter at every painted cell, so it gets an interpreter of its own.
"""

import os
import time
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, NamedTuple

from matcher.errors import SamespinError
from matcher.job import Listing
from matcher.motor import Wanted
from matcher.settings import Settings
from ui.lot import Lot, LotRow
from ui.pauses import without_pauses

TAKEN_OUT = "taken out"
"""The removed shelf on which offers stand that were taken out of the stock."""
CHUNK = 200
"""Rows sent at once; taking them in must not stop the window noticeably."""
PAUSE_S = 0.1
"""Time between two reports of progress."""


class Reply(NamedTuple):
    """One message from the clerk: `progress`, `rows`, `done` or `failed`, with what belongs to it."""

    kind: str
    what: Any


class _Stopped(Exception):
    """The window does not want the answer any more."""


class ClerkRoom:
    """Works on one request after another."""

    def __init__(self, pipe: Connection) -> None:
        self._pipe = pipe
        self._lot = Lot()
        self._told = 0.0

    def work(self) -> None:
        """Answer until the window goes away."""
        while True:
            try:
                name, arguments = self._pipe.recv()
                if name != "stop":
                    self._answer(name, arguments)
            except (EOFError, BrokenPipeError, ConnectionError):
                return

    def _answer(self, name: str, arguments: tuple[Any, ...]) -> None:
        try:
            self._send("done", getattr(self, f"do_{name}")(*arguments))
        except _Stopped:
            self._send("failed", "")
        except ConnectionError:
            raise
        except (SamespinError, OSError) as fault:
            self._send("failed", str(fault) or type(fault).__name__)
        except Exception as fault:  # noqa: BLE001 - the window must hear of it in one line
            self._send("failed", f"the program itself failed ({type(fault).__name__}: {fault})"[:300])

    def _send(self, kind: str, what: object) -> None:
        self._pipe.send(Reply(kind, what))

    def _tick(self, share: float) -> None:
        """Report progress now and then, and stop if any message waits."""
        if self._pipe.poll():
            raise _Stopped
        now = time.monotonic()
        if now - self._told > PAUSE_S:
            self._told = now
            self._send("progress", share)

    def _send_rows(self, rows: list[LotRow]) -> None:
        for start in range(0, len(rows), CHUNK):
            self._send("rows", rows[start : start + CHUNK])

    def do_open(self, paths: list[str]) -> list[str]:
        """Read files into a new lot, send its rows, and return the lines about what went wrong.

        Files without a single offer make no lot: the one before stays.
        """
        lot = Lot()
        with without_pauses():
            lot.read(self._tick, [Path(path) for path in paths])
        return self._take(lot) if lot.records else lot.problems

    def do_stock(self, store: str | None, shelf: str) -> list[str]:
        """Take the saved stock, or one shelf of it, as the lot."""
        from matcher.store import Store

        lot = Lot()
        with Store.open(store) as opened, without_pauses():
            for one in opened.shelves():
                if shelf in ("", one.id):
                    names = opened.source_names(one.id)
                    lot.gather(self._tick, opened.records(one.id), one.id, names)
        return self._take(lot)

    def do_shelves(self, store: str | None) -> list[tuple[str, str, int]]:
        """Return id, name and number of offers of each shelf that holds any, last changed first."""
        from matcher.store import Store

        with Store.open(store) as opened:
            return [(one.id, one.name, one.offers) for one in opened.shelves() if one.offers]

    def _take(self, lot: Lot) -> list[str]:
        self._lot = lot
        self._send_rows(lot.rows)
        return lot.problems

    def do_rank(self, wanted: Wanted, changes: dict[str, Any]) -> None:
        """Rank the lot and send its rows, best first."""
        self._tick(0.0)
        rows = self._lot.rank(wanted, Settings.shipped().with_changes(changes))
        self._tick(0.9)
        self._send_rows(rows)

    def do_reasons(self, places: list[int]) -> dict[int, str]:
        """Return, by place, the one sentence that matters most about each of these offers."""
        return self._lot.reasons(self._tick, places)

    def do_listings(self, rows: list[tuple[int, str]]) -> list[Listing]:
        """Return offers as candidates."""
        return [self._lot.listing(row) for row in rows]

    def do_keep(self, store: str | None, name: str) -> tuple[int, int]:
        """Save what the stock lacks as a shelf; return how many were kept, and how many it held."""
        from matcher.store import Store

        with Store.open(store) as opened:
            fresh = opened.not_kept(self._lot.records)
            if fresh:
                opened.add_offers(opened.add_shelf(name), fresh)
            return len(fresh), len(self._lot.records) - len(fresh)

    def do_take_out(self, store: str | None, rows: list[tuple[int, str]]) -> dict[str, list[int]]:
        """Put offers out of the way; return their numbers by the shelf that they stood on."""
        from matcher.store import Store

        numbers = self._lot.take_out(rows)
        with Store.open(store) as opened:
            out = next((one.id for one in opened.shelves(removed=True) if one.name == TAKEN_OUT), "")
            if not out:
                out = opened.add_shelf(TAKEN_OUT)
                opened.edit_shelf(out, name=TAKEN_OUT, removed=True)
            for of_shelf in numbers.values():
                opened.move_offers(of_shelf, out)
        return numbers

    def do_put_back(self, store: str | None, numbers: dict[str, list[int]]) -> None:
        """Put offers that were taken out on their shelves again."""
        from matcher.store import Store

        with Store.open(store) as opened:
            for shelf, of_shelf in numbers.items():
                opened.move_offers(of_shelf, shelf)


def run(pipe: Connection) -> None:
    """Run the clerk; the entry of its process."""
    if hasattr(os, "nice"):
        os.nice(3)  # the window goes first
    ClerkRoom(pipe).work()
