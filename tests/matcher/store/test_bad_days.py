"""Full disks, locks, lost folders and damaged files: one clear line each, and nothing lost.

The conditions are real ones: SQLite's page limit, the system's file size limit, another connection's
lock, another user's rights, bytes overwritten on the disk.
"""

import os
import resource
import shutil
import signal
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from matcher.errors import StoreUnavailable
from matcher.job import Job
from matcher.record import Record
from matcher.store import (
    NotAStore,
    Store,
    StoreDamaged,
    StoreFailing,
    StoreFull,
    StoreGone,
    StoreLocked,
    StoreReadOnly,
    StoreTooNew,
)

MakeRecord = Callable[..., Record]


def one_line(error: pytest.ExceptionInfo[StoreUnavailable]) -> str:
    line = str(error.value)
    assert "\n" not in line
    return line


def in_a_child(work: Callable[[], str]) -> str:
    """Run `work` in a process of its own, since limits and rights can't be taken back."""
    out, into = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            answer = work()
        except BaseException as error:  # noqa: BLE001 whatever it is, the parent must hear of it
            answer = f"{type(error).__name__}: {error}"
        os.write(into, answer.encode()[:4000])
        os._exit(0)
    os.close(into)
    with os.fdopen(out, "rb") as pipe:
        answer = pipe.read().decode()
    os.waitpid(child, 0)
    return answer


def test_a_full_disk_loses_nothing(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    pages = store._db.execute("PRAGMA page_count").fetchone()[0]
    store._db.execute(f"PRAGMA max_page_count = {pages}")
    big = job.edited(note="x" * 200_000)
    with pytest.raises(StoreFull) as error:
        store.save(big, 1)
    assert "free some room and try again, or save elsewhere" in one_line(error)
    assert store.load(job.id).job.note == ""
    with store.save_elsewhere(path.with_name("stick.db"), [big]) as other:
        assert other.load(job.id).job.note == big.note
    store._db.execute("PRAGMA max_page_count = 1000000")
    assert store.save(big, 1).job.note == big.note
    store.check()


def test_the_systems_own_limit_is_told_too(path: Path, job: Job) -> None:
    with Store.open(path) as store:
        store.save(job)

    def work() -> str:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        with Store.open(path) as store:
            resource.setrlimit(resource.RLIMIT_FSIZE, (path.stat().st_size + 50_000,) * 2)
            try:
                store.save(job.edited(note="x" * 400_000), 1)
            except (StoreFull, StoreFailing) as error:
                assert store.load(job.id).job == job.edited(changed=store.load(job.id).job.changed)
                return str(error)
        return "saved"

    assert "save elsewhere" in in_a_child(work)
    with Store.open(path) as store:
        assert store.notices == ()
        assert store.load(job.id).job.note == ""
        store.check()


def test_another_programs_lock_is_told_and_waited_for(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(StoreLocked) as error:
        store.save(job.edited(name="A"), 1)
    assert "another program is using the file" in one_line(error)
    assert store.load(job.id).job.name == job.name
    other.execute("ROLLBACK")
    other.close()
    assert store.save(job.edited(name="A"), 1).job.name == "A"


def test_opening_while_another_window_saves(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    store._db.execute("BEGIN IMMEDIATE")
    with Store.open(path, wait_s=0.1) as other:
        assert not other.read_only
        assert other.load(job.id).job.name == job.name
    store._db.execute("ROLLBACK")


def test_a_lost_folder_is_told_and_can_come_back(tmp_path: Path, job: Job) -> None:
    stick, away = tmp_path / "stick", tmp_path / "away"
    stick.mkdir()
    with Store.open(stick / "samespin.db") as store:
        store.save(job)
        stick.rename(away)
        with pytest.raises(StoreGone) as error:
            store.save(job.edited(name="A"), 1)
        assert "bring it back and try again" in one_line(error)
        with store.save_elsewhere(tmp_path / "other.db", [job.edited(name="A")]) as other:
            assert other.load(job.id).job.name == "A"
        away.rename(stick)
        assert store.save(job.edited(name="A"), 1).job.name == "A"


def test_a_deleted_file_is_never_written_to_unseen(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    path.unlink()
    with pytest.raises(StoreGone):
        store.save(job.edited(name="A"), 1)


def test_a_file_put_in_its_place_is_opened_anew(store: Store, job: Job, path: Path) -> None:
    store.save(job)
    with store.save_elsewhere(path.with_name("other.db")) as other:
        other.save(job.edited(place="there"), 1)
    for side in ("-wal", "-shm"):
        path.with_name(path.name + side).unlink(missing_ok=True)
    path.with_name("other.db").replace(path)
    saved = store.save(job.edited(name="A"), 1)
    assert (saved.job.name, saved.job.place) == ("A", "there")


@pytest.fixture
def common() -> Iterator[Path]:
    """A folder that other users may look into."""
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o755)
    yield folder
    shutil.rmtree(folder)


@pytest.mark.skipif(not hasattr(os, "getuid") or os.getuid() != 0, reason="needs to become another user")
@pytest.mark.parametrize("open_folder", [True, False], ids=["file", "file and folder"])
def test_a_read_only_store_can_be_looked_at(common: Path, job: Job, open_folder: bool) -> None:
    path = common / "samespin.db"
    with Store.open(path) as store:
        store.save(job)
    path.chmod(0o444)
    common.chmod(0o777 if open_folder else 0o755)

    def work() -> str:
        os.setuid(65534)
        with Store.open(path) as store:
            assert store.read_only
            assert "may not be written" in store.notices[0]
            assert store.jobs("drying")
            name = store.load(job.id).job.name
            try:
                store.save(job.edited(name="A"), 1)
            except StoreReadOnly as error:
                with store.save_elsewhere(Path(tempfile.gettempdir()) / f"{job.id}.db", [job]) as other:
                    other.load(job.id)
                return f"{name}: {error}"
        return "saved"

    try:
        answer = in_a_child(work)
    finally:
        for left in Path(tempfile.gettempdir()).glob(f"{job.id}.*"):
            shutil.rmtree(left) if left.is_dir() else left.unlink()
    assert answer.startswith(job.name)
    assert "allow writing and try again, or save elsewhere" in answer


@pytest.mark.skipif(not hasattr(os, "getuid") or os.getuid() != 0, reason="needs to become another user")
def test_a_folder_that_may_not_be_written_is_told(common: Path) -> None:
    def work() -> str:
        os.setuid(65534)
        try:
            Store.open(common / "samespin.db")
        except StoreReadOnly as error:
            return str(error)
        return "opened"

    assert "this folder may not be written. Choose another place" in in_a_child(work)


@pytest.mark.parametrize(
    ("make", "kind", "words"),
    [
        (lambda at: at.mkdir(), NotAStore, "this is a folder"),
        (lambda at: at.write_text("my notes"), NotAStore, "no store of Samespin; it is left as it is"),
        (
            lambda at: sqlite3.connect(at).execute("CREATE TABLE mine (a)").connection.close(),
            NotAStore,
            "another program",
        ),
    ],
    ids=["folder", "text", "another program's database"],
)
def test_other_peoples_files_are_left_alone(
    tmp_path: Path, make: Callable[[Path], None], kind: type[StoreUnavailable], words: str
) -> None:
    at = tmp_path / "notes.db"
    make(at)
    before = at.read_bytes() if at.is_file() else b""
    with pytest.raises(kind) as error:
        Store.open(at)
    assert words in one_line(error)
    assert (at.read_bytes() if at.is_file() else b"") == before
    assert [file.name for file in tmp_path.iterdir()] == ["notes.db"]


def test_a_missing_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(StoreGone) as error:
        Store.open(tmp_path / "nowhere" / "samespin.db")
    assert "can't be reached" in one_line(error)


def test_a_newer_store_is_left_alone(path: Path) -> None:
    with Store.open(path) as store:
        store._db.execute("INSERT INTO migration (name, taken) VALUES ('9.9.9 flying', 'later')")
    before = path.read_bytes()
    with pytest.raises(StoreTooNew) as error:
        Store.open(path)
    assert "a newer Samespin has written this store" in one_line(error)
    assert path.read_bytes() == before


def _overwritten(path: Path, start: int, length: int, fill: bytes = b"\xaa") -> bytes:
    content = bytearray(path.read_bytes())
    content[start : start + length] = fill * length
    path.write_bytes(content)
    return bytes(content)


def _filled(path: Path, new_job: Callable[..., Job], new_record: MakeRecord, *, backup: bool) -> list[str]:
    with Store.open(path) as store:
        ids = [store.save(new_job(f"Job {n}")).job.id for n in range(12)]
        shelf = store.add_shelf("Back room")
        store.add_offers(shelf, (new_record(n, "word " * 60) for n in range(300)))
        if backup:
            store.back_up()
    if not backup:
        shutil.rmtree(path.with_name("samespin.backups"))
    return ids


@pytest.mark.parametrize("backup", [True, False], ids=["with a backup", "with none"])
@pytest.mark.parametrize("page", range(2, 40, 3))
def test_a_damaged_store_is_set_aside_and_saved_from(
    path: Path, new_job: Callable[..., Job], new_record: MakeRecord, page: int, backup: bool
) -> None:
    ids = _filled(path, new_job, new_record, backup=backup)
    damaged = _overwritten(path, (page - 1) * 4096, 3000)
    with Store.open(path) as store:
        store.check()
        lines = store.jobs()
        for line in lines:
            if backup:
                store.load(line.id)
        if store.notices:
            (kept,) = path.parent.glob("*.damaged-*.db")
            assert kept.read_bytes() == damaged
            assert kept.name in store.notices[0]
        found = {line.id for line in lines}
        assert found >= set(ids) if backup else len(lines) >= 1
        if backup:
            assert sum(shelf.offers for shelf in store.shelves()) == 300


@pytest.mark.parametrize(
    "harm",
    [
        lambda path: path.write_bytes(b""),
        lambda path: path.write_bytes(path.read_bytes()[: path.stat().st_size // 2]),
        lambda path: _overwritten(path, 0, 4096),
        lambda path: _overwritten(path, 0, 100, b"\0"),
        lambda path: path.write_bytes(b"\0" * path.stat().st_size),
    ],
    ids=["emptied", "cut in half", "first page lost", "head lost", "all zeros"],
)
def test_a_ruined_store_comes_back_from_its_backup(
    path: Path, new_job: Callable[..., Job], new_record: MakeRecord, harm: Callable[[Path], object]
) -> None:
    ids = _filled(path, new_job, new_record, backup=True)
    harm(path)
    with Store.open(path) as store:
        assert {line.id for line in store.jobs()} == set(ids)
        assert sum(shelf.offers for shelf in store.shelves()) == 300
        assert "kept as samespin.damaged-" in store.notices[0]
        store.check()
    with Store.open(path) as store:
        assert store.notices == ()


def test_one_broken_job_costs_no_other(store: Store, new_job: Callable[..., Job]) -> None:
    good, bad = store.save(new_job("good")).job, store.save(new_job("bad")).job
    store._db.execute("UPDATE given SET value = '{' WHERE job = (SELECT n FROM job WHERE id = ?)", (bad.id,))
    with pytest.raises(StoreDamaged) as error:
        store.load(bad.id)
    assert bad.id in one_line(error)
    assert store.load(good.id).job == good
    assert len(store.jobs()) == 2


def test_a_large_store_has_its_jobs_checked_on_opening(
    path: Path, new_job: Callable[..., Job], new_record: MakeRecord, monkeypatch: pytest.MonkeyPatch
) -> None:
    ids = _filled(path, new_job, new_record, backup=True)
    monkeypatch.setattr("matcher.store.opening.CHECKED_WHOLE", 0)
    with Store.open(path) as store:
        assert store.notices == ()
        root = store._db.execute("SELECT rootpage FROM sqlite_master WHERE name = 'job'").fetchone()[0]
    _overwritten(path, (root - 1) * 4096, 3000)
    with Store.open(path) as store:
        assert "was damaged" in store.notices[0]
        assert {line.id for line in store.jobs()} == set(ids)


def test_a_rescue_without_room_leaves_the_damaged_file_alone(
    path: Path, new_job: Callable[..., Job], new_record: MakeRecord, monkeypatch: pytest.MonkeyPatch
) -> None:
    ids = _filled(path, new_job, new_record, backup=True)
    damaged = _overwritten(path, 4096, 3000)

    def work() -> str:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (100_000,) * 2)
        try:
            Store.open(path).close()
        except StoreUnavailable as error:
            return str(error)
        return "opened"

    assert "save elsewhere" in in_a_child(work)
    assert path.read_bytes() == damaged
    assert not list(path.parent.glob("*.damaged-*"))
    with Store.open(path) as store:
        assert {line.id for line in store.jobs()} == set(ids)


def test_a_power_cut_in_the_middle_of_a_rescue(
    path: Path, new_job: Callable[..., Job], new_record: MakeRecord
) -> None:
    ids = _filled(path, new_job, new_record, backup=True)
    path.rename(path.with_name("samespin.db.rebuilding"))
    with Store.open(path) as store:
        assert {line.id for line in store.jobs()} == set(ids)


def test_closing_with_no_room_for_a_backup_is_quiet(path: Path, job: Job) -> None:
    def work() -> str:
        store = Store.open(path)
        store.save(job.edited(note="x" * 300_000))
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (100_000,) * 2)
        store.close()
        return "closed"

    assert in_a_child(work) == "closed"
    with Store.open(path) as store:
        assert store.load(job.id).version == 1


def test_a_store_locked_for_one_program_alone_is_told(path: Path, job: Job) -> None:
    with Store.open(path) as store:
        store.save(job)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("PRAGMA locking_mode = EXCLUSIVE")
    other.execute("BEGIN EXCLUSIVE")
    with pytest.raises(StoreLocked) as error:
        Store.open(path, wait_s=0.1)
    assert "close the other one" in one_line(error)
    other.close()
    with Store.open(path) as store:
        assert store.notices == ()
