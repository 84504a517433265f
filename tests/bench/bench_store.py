"""How much the store costs over bare SQLite, measured against it in the same run.

    python tests/bench/bench_store.py [--offers 100000]

1. Saving 10,000 offers, against `sqlite3.executemany` of the very same rows: into the same tables with
   their search index, and into the bare table alone.
2. Opening a store of 100,000 offers up to a page of 200 that a window can show, against the bare query in
   an open connection; search as you type; all records for ranking.

Every figure is the best of several turns, taken in turn with its yardstick.
"""

import argparse
import contextlib
import sqlite3
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from matcher.motor import Offer
from matcher.record import Mark, Origin, Record
from matcher.store import Store
from matcher.store.shelves import INSERT, row_of

WORDS = (
    "pulled from a working unit, tested, runs quiet, shaft has one flat, belly band included, as pictured, "
)


def records(count: int) -> Iterator[Record]:
    """Yield offers of an ordinary size: 17 facts, 450 characters of text."""
    for n in range(count):
        text = f"Blower motor 1/2 HP 1075 RPM 208-230V 60 Hz number QV-{n:06d} " + WORDS * 4
        facts = Offer(
            brand="Orsholm",
            part_number=f"QV-{n:06d}",
            power_hp=0.5,
            volts="208-230",
            phase=1,
            hertz="60",
            amps=(2.8,),
            rpm=(1075,),
            speeds=3,
            turn="ccw",
            seen_from="lead_end",
            shaft_diameter_in=0.5,
            shaft_flats=1,
            body_diameter_in=5.6,
            price=40.0 + n % 90,
            currency="USD",
            condition="used",
        )
        where = {
            name: Mark(Origin.READ, "text", (k, k + 8), text[k : k + 8])
            for k, name in enumerate(facts.said())
        }
        yield Record(f"lot.csv#{n}", facts, where, (), text[:60], text)


def _timed(work: Callable[[], object]) -> float:
    started = time.perf_counter()
    work()
    return time.perf_counter() - started


def _bare(path: Path) -> sqlite3.Connection:
    db = sqlite3.connect(path, isolation_level=None)
    db.execute("PRAGMA synchronous = FULL")
    db.execute("PRAGMA foreign_keys = ON")
    return db


def _raw(db: sqlite3.Connection, rows: list[tuple[object, ...]], *, index: bool) -> None:
    first = db.execute("SELECT coalesce(max(n), 0) FROM offer").fetchone()[0]
    db.execute("BEGIN IMMEDIATE")
    db.executemany(INSERT, rows)
    if index:
        words = db.execute("SELECT n, title, text, numbers FROM offer WHERE n > ?", (first,)).fetchall()
        db.executemany("INSERT INTO offer_search (rowid, title, text, numbers) VALUES (?, ?, ?, ?)", words)
    db.execute("COMMIT")


def saving(folder: Path, turns: int = 4) -> None:
    """Print the times of saving 10,000 offers and their ratios."""
    offers = list(records(10_000))
    rows = [row_of(1, record) for record in offers]
    best: dict[str, float] = {}
    for turn in range(turns):
        for what in ("store", "raw with index", "raw bare table"):
            took = _saved(folder / f"{what.replace(' ', '-')}-{turn}.db", what, offers, rows)
            best[what] = min(took, best.get(what, took))
    for what, took in best.items():
        print(f"save 10,000 offers, {what:15} {took:7.3f} s   {best['store'] / took:5.2f} x")


def _saved(path: Path, what: str, offers: list[Record], rows: list[tuple[object, ...]]) -> float:
    with Store.open(path) as store:
        shelf = store.add_shelf("Lot")
        store._wrote = False
        if what == "store":
            took = _timed(lambda: store.add_offers(shelf, offers))
            store._wrote = False
            return took
    with contextlib.closing(_bare(path)) as db:
        return _timed(lambda: _raw(db, rows, index=what == "raw with index"))


def opening(folder: Path, count: int, turns: int = 4) -> None:
    """Print what it takes to open a large store, to search it and to read all of it."""
    path = folder / "samespin.db"
    with Store.open(path) as store:
        shelf = store.add_shelf("Lot")
        print(f"save {count:,} offers: {_timed(lambda: store.add_offers(shelf, records(count))):.1f} s")
        store._wrote = False
    print(f"file: {path.stat().st_size / 2**20:.0f} MB")

    def usable() -> None:
        with Store.open(path) as store:
            assert store.shelves()[0].offers == count
            assert len(store.offers(shelf, limit=200)) == 200

    with contextlib.closing(_bare(path)) as db:
        query = "SELECT * FROM offer WHERE shelf = 1 AND n > 0 ORDER BY n LIMIT 200"
        bare = min(_timed(lambda: db.execute(query).fetchall()) for _ in range(turns))
    opened = min(_timed(usable) for _ in range(turns))
    print(f"open to a first page: {opened:.3f} s; bare query {bare:.4f} s; {opened - bare:.3f} s more")
    with Store.open(path) as store:
        for query in ("q", "qv", "QV-0123", "qv012345", "tested quiet", "QV-0l2345", "zzz"):
            took = min(_timed(lambda query=query: store.offers(shelf, query)) for _ in range(turns))
            print(f"search {query!r:15} {took * 1000:6.1f} ms")
        print(
            f"all records, no words: {_timed(lambda: sum(1 for _ in store.records(shelf, words=False))):.2f} s"
        )
        print(f"all records:           {_timed(lambda: sum(1 for _ in store.records(shelf))):.2f} s")
        print(f"check of the whole file: {_timed(store.check):.2f} s")
        print(f"backup: {_timed(store.back_up):.2f} s")
        store._wrote = False


def main() -> None:
    """Measure in a folder that is thrown away."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--offers", type=int, default=100_000)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        saving(Path(folder))
        opening(Path(folder), asked.offers)


if __name__ == "__main__":
    main()
