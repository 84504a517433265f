"""Backups: whole, checked, few, and good to go back to."""

import os
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from matcher.errors import StoreUnavailable
from matcher.job import Job
from matcher.store import Generation, Store, backups, jobs
from matcher.store.connection import connect


def test_closing_makes_the_first_backup(path: Path, job: Job) -> None:
    with Store.open(path) as store:
        store.save(job)
    with Store.open(path) as store:
        (made,) = store.backups()
        assert not backups.is_due(path)
        assert store.back_up(only_if_due=True) is None
    with Store.open(made.path) as copy:
        assert copy.load(job.id).job.name == job.name


def test_a_backup_trims_the_log_of_what_is_old(
    store: Store, path: Path, job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(jobs, "LEAST_LOGGED", 2)
    for number in range(5):
        store.save(job.edited(note=f"note {number}"), number)
    db = connect(path)
    with closing(db.conn):
        db.execute("UPDATE change SET changed_at = '2020-01-01T00:00:00Z' WHERE version < 5")
    made = store.back_up()
    assert [entry.version for entry in store.log(job.id)] == [5, 4]
    merged = store.save(job.edited(note="note 3", place="elsewhere"), 4)
    assert (merged.job.note, merged.job.place, merged.clashes) == ("note 4", "elsewhere", ())
    assert made
    with Store.open(made.path) as copy:
        assert [entry.version for entry in copy.log(job.id)] == [5, 4, 3, 2, 1]


def test_going_back_keeps_the_state_before(store: Store, job: Job) -> None:
    store.save(job)
    first = store.back_up()
    assert first
    store.save(job.edited(name="After"), 1)
    before = store.restore(first)
    assert store.load(job.id).job.name == job.name
    assert before
    assert before in store.backups()
    store.restore(before)
    assert store.load(job.id).job.name == "After"
    store.check()


def test_other_windows_see_a_restored_backup(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    made = store.back_up()
    assert made
    store.save(job.edited(name="After"), 1)
    with Store.open(path) as other:
        other.touched()
        store.restore(made)
        assert other.touched()
        assert other.load(job.id).job.name == job.name


def test_a_broken_backup_is_refused(store: Store, job: Job) -> None:
    store.save(job)
    made = store.back_up()
    assert made
    content = bytearray(made.path.read_bytes())
    content[4096 * 2 : 4096 * 4] = b"\xaa" * 8192
    made.path.write_bytes(content)
    with pytest.raises(StoreUnavailable):
        store.restore(made)
    assert store.load(job.id).job.name == job.name


def test_a_draft_left_by_a_power_cut_is_no_backup(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    backups.folder(path).mkdir()
    draft = backups.folder(path) / "unfinished-1.tmp"
    draft.write_bytes(b"half a backup")
    assert store.backups() == ()
    os.utime(draft, (0, 0))
    store.back_up()
    assert not draft.exists()
    assert len(store.backups()) == 1


def test_the_newest_of_one_second_stays(store: Store, job: Job) -> None:
    store.save(job)
    made = [store.back_up() for _ in range(6)]
    assert made[-1] in store.backups()
    assert len(store.backups()) <= backups.MOST


def test_a_failed_backup_leaves_the_old_ones(
    store: Store, job: Job, path: Path, new_job: Callable[..., Job]
) -> None:
    store.save(job)
    made = store.back_up()
    assert made
    before = made.path.read_bytes()
    for n in range(10):
        store.save(new_job(f"{n}"))
    root = store._db.execute("SELECT rootpage FROM sqlite_master WHERE name = 'listing'").fetchone()[0]
    store._db.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    with path.open("r+b") as file:
        file.seek((root - 1) * 4096)
        file.write(b"\xaa" * 2000)
    store._db.conn.close()
    store._db = connect(path)
    with pytest.raises(StoreUnavailable):
        store.back_up()
    assert made.path.read_bytes() == before
    assert store.backups() == (made,)


def test_a_year_of_backups_stays_few() -> None:
    start = datetime(2030, 1, 1, tzinfo=UTC)
    there: list[Generation] = []
    for hour in range(0, 365 * 24, 7):
        there.append(Generation(Path(str(hour)), start + timedelta(hours=hour), 1))
        there = sorted(backups.kept(there), key=lambda one: one.made)
        assert len(there) <= backups.MOST
    ages = sorted((start + timedelta(days=365) - one.made).days for one in there)
    assert ages[-1] >= 21
    assert sum(age <= 7 for age in ages) >= 7
