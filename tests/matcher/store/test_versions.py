"""A store file of every released version opens in this one, with all that was in it."""

import json
import shutil
import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from matcher import __version__
from matcher.job import Job
from matcher.store import Store, migrations
from matcher.store.connection import connect
from matcher.store.migrations import STEPS, migrate, taken

KEPT = Path(__file__).parents[2] / "store_versions"
VERSIONS = sorted(file.stem for file in KEPT.glob("*.db"))


def test_this_version_is_kept() -> None:
    assert __version__ in VERSIONS


@pytest.mark.parametrize("version", VERSIONS)
def test_an_old_store_opens_with_all_that_was_in_it(version: str, path: Path) -> None:
    shutil.copy(KEPT / f"{version}.db", path)
    expected = json.loads((KEPT / f"{version}.json").read_text(encoding="utf-8"))
    with Store.open(path) as store:
        assert store.notices == ()
        for document in expected["jobs"]:
            assert store.load(document["id"]).job == Job.model_validate(document)
        assert [line.id for line in store.jobs(removed=True)] == expected["removed"]
        assert len(store.jobs()) == len(expected["jobs"]) - len(expected["removed"])
        (shelf,) = store.shelves()
        assert [record.facts.said() for record in store.records(shelf.id)] == expected["offers"]
        assert (
            store.attachment(store.load(expected["jobs"][0]["id"]).job.pictures[0].digest)
            == b"\x89PNG picture"
        )
        assert store.jobs("drying")
        assert store.offers(shelf.id, "QV00003")[0].facts.part_number == "QV-00003"
        job = store.load(expected["jobs"][0]["id"])
        assert store.save(job.job.edited(name="Saved anew"), job.version).clashes == ()
        store.check()


def test_steps_are_taken_in_order_and_once(path: Path) -> None:
    db = connect(path)
    assert migrate(db, path) == tuple(name for name, _ in STEPS)
    assert migrate(db, path) == ()
    assert taken(db) == tuple(name for name, _ in STEPS)
    db.conn.close()


def test_a_step_that_fails_leaves_the_old_shape_and_a_backup(
    path: Path, job: Job, monkeypatch: pytest.MonkeyPatch, new_job: Callable[..., Job]
) -> None:
    with Store.open(path) as store:
        store.save(job)
    before = _shape(path)

    def broken(db: object) -> None:
        connect_db = db
        connect_db.execute("CREATE TABLE halfway (a)")  # type: ignore[attr-defined]
        raise sqlite3.OperationalError("no")

    monkeypatch.setattr(migrations, "STEPS", (*STEPS, ("0.2.0 broken", broken)))
    with pytest.raises(Exception, match="no"):
        Store.open(path)
    monkeypatch.undo()
    assert _shape(path) == before
    with Store.open(path) as store:
        assert store.load(job.id).job.name == job.name
        assert store.backups()


def _shape(path: Path) -> list[tuple[str]]:
    db = sqlite3.connect(path)
    shape = db.execute("SELECT sql FROM sqlite_master ORDER BY name").fetchall()
    db.close()
    return shape
