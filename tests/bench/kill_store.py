"""Kill a writing process again and again, and see whether everything it had acknowledged is there.

    python tests/bench/kill_store.py [--kills 300] [--seed 1]

Each round a child process opens the store and works (edits of jobs, new listings, stock, backups); it
writes one line to a pipe after every call that has returned. At a random moment it gets SIGKILL. The
parent opens the store as a window would, and checks that nothing was set aside, that SQLite's
integrity check and the full-text indexes are clean, that no job is half there, and that each job
and shelf is at least as far as the last acknowledged call. Exit code 1 at the first fault.
"""

import argparse
import contextlib
import os
import random
import select
import signal
import sqlite3
import sys
import tempfile
import time
from pathlib import Path

from matcher.job import Job, Listing, Reading
from matcher.motor import Offer
from matcher.record import Record
from matcher.store import Store

IDS = [f"{n:032x}" for n in range(3)]


def state_of(job_id: str, n: int) -> Job:
    """Return the one and only content that a job has after `n` saves."""
    listings = tuple(
        Listing(id=f"{k:032x}", title=f"{k}", text=f"text {k} " * 40, reading=Reading(), decision=f"{n}")
        for k in range(n % 7)
    )
    job = Job(
        id=job_id, name=f"{n}", note=f"note {n} " * 50, listings=listings, proof={"n": n, "deep": {"n": n}}
    )
    return job.with_given("part_number", f"KN-{n}").with_site("altitude_ft", float(n % 1000))


def _record(n: int) -> Record:
    return Record(
        f"{n}", Offer(part_number=f"KN-{n}", price=float(n)), title=f"offer {n}", text="words " * 30
    )


def write(path: Path, shelf: str, seed: int, say: int) -> None:
    """Work until killed."""
    dice = random.Random(seed)
    with Store.open(path) as store:
        os.write(say, b"open 0 0\n")
        while True:
            what = dice.random()
            if what < 0.8:
                which = dice.randrange(len(IDS))
                there = [line for line in store.jobs() if line.id == IDS[which]]
                n = int(there[0].name) + 1 if there else 1
                store.save(state_of(IDS[which], n), there[0].version if there else 0)
                os.write(say, f"job {which} {n}\n".encode())
            elif what < 0.95:
                store.add_offers(shelf, [_record(n) for n in range(10)])
                os.write(say, b"stock 0 10\n")
            else:
                store.back_up()
                os.write(say, b"backup 0 1\n")


def _lines(pipe: int, until: float) -> bytes:
    """Return what the child says until the moment comes."""
    heard = b""
    while (left := until - time.monotonic()) > 0:
        if select.select([pipe], [], [], left)[0]:
            heard += os.read(pipe, 65536)
    return heard


def kill_once(path: Path, shelf: str, seed: int, after_s: float) -> list[tuple[str, int, int]]:
    """Let a child work for some time, kill it, and return the calls that it had acknowledged."""
    pipe, say = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(pipe)
        try:
            write(path, shelf, seed, say)
        except BaseException as error:  # noqa: BLE001 the parent stops at whatever it is
            print(f"writer: {type(error).__name__}: {error}", file=sys.stderr, flush=True)
        os._exit(3)
    os.close(say)
    heard = _lines(pipe, time.monotonic() + after_s)
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    while more := os.read(pipe, 65536):
        heard += more
    os.close(pipe)
    if not os.WIFSIGNALED(status):
        raise SystemExit(f"seed {seed}: the writer ended by itself")
    calls = (line.split() for line in heard.decode().splitlines())
    return [(what, int(which), int(n)) for what, which, n in calls]


def fault(path: Path, shelf: str, jobs: dict[int, int], offers: int) -> str:
    """Return what is wrong with the store, nothing if all is well; `jobs`, `offers`: acknowledged."""
    with Store.open(path) as store:
        if store.notices:
            return store.notices[0]
        for which, n in jobs.items():
            job = store.load(IDS[which]).job
            if int(job.name) < n:
                return f"job {which}: save {n} was acknowledged, {job.name} is there"
            whole = state_of(job.id, int(job.name))
            same = {name: getattr(whole, name) for name in ("created", "changed")}
            if not _equal(job.edited(**same), whole):
                return f"job {which}: half of save {job.name}"
        there = sum(line.offers for line in store.shelves() if line.id == shelf)
        if there < offers or there % 10:
            return f"stock: {offers} offers were acknowledged, {there} are there"
        for kept in store.backups():
            with Store.open(kept.path) as backup:
                backup.check()
    return _checked_by_sqlite(path)


def _equal(one: Job, other: Job) -> bool:
    def plain(job: Job) -> object:
        document = job.model_dump(mode="json")
        for given in (*document["given"].values(), *document["site"].values()):
            given["when"] = ""
        return document

    return plain(one) == plain(other)


def _checked_by_sqlite(path: Path) -> str:
    with contextlib.closing(sqlite3.connect(path)) as db:
        (answer,) = db.execute("PRAGMA integrity_check").fetchone()
        if answer != "ok" or db.execute("PRAGMA foreign_key_check").fetchall():
            return f"integrity: {answer}"
        for search in ("job_search", "listing_search", "offer_search"):
            db.execute(f"INSERT INTO {search} ({search}) VALUES ('integrity-check')")  # noqa: S608 ours
    return ""


def survive(folder: Path, kills: int, seed: int) -> tuple[int, int, str]:
    """Return the kills survived, the calls acknowledged, and the first fault."""
    path, dice = folder / "samespin.db", random.Random(seed)
    with Store.open(path) as store:
        shelf = store.add_shelf("Back room")
    jobs: dict[int, int] = {}
    offers = calls = 0
    for survived in range(kills):
        # Some kills hit the opening, most the work after it.
        for what, which, n in kill_once(path, shelf, dice.randrange(10**9), dice.uniform(0.002, 0.12)):
            calls += 1
            if what == "job":
                jobs[which] = max(n, jobs.get(which, 0))
            offers += n if what == "stock" else 0
        wrong = fault(path, shelf, jobs, offers)
        if wrong:
            return survived, calls, wrong
        with Store.open(path) as store:
            # What was saved but not acknowledged any more is there now, and must stay.
            offers = sum(line.offers for line in store.shelves())
    return kills, calls, ""


def main() -> int:
    """Print the count survived."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--kills", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        survived, calls, wrong = survive(Path(folder), asked.kills, asked.seed)
    print(f"{survived} of {asked.kills} kills survived, {calls} acknowledged calls all there")
    if wrong:
        print(wrong, file=sys.stderr)
    return bool(wrong)


if __name__ == "__main__":
    sys.exit(main())
