"""Jobs are saved and found again as they were, with a log of what changed."""

from collections.abc import Callable

import pytest

from matcher.job import Job
from matcher.store import NotInStore, Store


def test_a_saved_job_comes_back_as_it_was(store: Store, job: Job) -> None:
    saved = store.save(job)
    assert saved.version == 1
    assert store.load(job.id).job == saved.job
    assert saved.job.edited(changed=job.changed) == job


def test_saving_the_same_again_changes_nothing(store: Store, job: Job) -> None:
    store.save(job)
    before = store.latest()
    assert store.save(job, 1).version == 1
    assert store.latest() == before


def test_order_of_listings_is_kept(store: Store, job: Job) -> None:
    store.save(job)
    turned = job.edited(listings=job.listings[::-1])
    assert store.save(turned, 1).job.listings == turned.listings
    without = turned.without_listing(turned.listings[1].id)
    saved = store.save(without, 2)
    assert store.save(turned, saved.version).job.listings == turned.listings


def test_undo_to_an_older_value_is_saved(store: Store, job: Job) -> None:
    store.save(job)
    edited = job.edited(name="New name", arrival={}).without_given("amps")
    version = store.save(edited, 1).version
    assert store.save(job, version).job.edited(changed=job.changed) == job


def test_json_kinds_are_not_mixed_up(store: Store) -> None:
    job = Job(proof={"a": 1, "b": True, "c": None, "d": {}, "e": []})
    version = store.save(job).version
    job = job.edited(proof={"a": True, "b": 1, "c": {}, "d": None, "e": {"f": 1.0}})
    proof = store.save(job, version).job.proof
    assert repr(proof) == repr(store.load(job.id).job.proof)
    assert [type(proof[key]) for key in "abcde"] == [bool, int, dict, type(None), dict]


def test_jobs_are_listed_last_changed_first(store: Store, new_job: Callable[..., Job]) -> None:
    for name in ("one", "two", "three"):
        store.save(new_job(name))
    assert [line.name for line in store.jobs()] == ["three", "two", "one"]
    assert store.jobs()[0].listings == 3
    assert store.jobs()[0].plate == "TRK-88120 1/2 HP 208-230V"


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("dry", True),
        ("hill st", True),
        ("trk88120", True),
        ("TRK-88120", True),
        ("trk-88121", True),
        ("QV-00001", True),
        ("qv00001", True),
        ("working uni", True),
        ("washing", False),
        ("ZZZ-10000", False),
        ('" OR 1=1 --', False),
        ("NEAR(", False),
        ("*", False),
        ("\ud800", False),
        ("", True),
    ],
)
def test_jobs_are_found_by_words_and_by_nearly_right_numbers(
    store: Store, job: Job, query: str, found: bool
) -> None:
    store.save(job)
    assert bool(store.jobs(query)) is found


def test_search_follows_changes(store: Store, job: Job) -> None:
    store.save(job)
    first = job.listings[0]
    store.save(
        job.edited(name="Attic fan")
        .with_listing(first.edited(title="Quiet wheel"))
        .without_listing(job.listings[1].id),
        1,
    )
    assert store.jobs("attic")
    assert store.jobs("quiet")
    assert not store.jobs("drying")


def test_a_deleted_job_can_be_brought_back(store: Store, job: Job) -> None:
    store.save(job)
    store.delete(job.id)
    assert store.jobs() == store.jobs("drying") == ()
    assert [line.id for line in store.jobs(removed=True)] == [job.id]
    store.restore_job(job.id)
    assert [line.id for line in store.jobs()] == [job.id]


def test_what_is_not_there_is_said(store: Store) -> None:
    for ask in (store.load, store.delete, store.restore_job, store.log):
        with pytest.raises(NotInStore, match="not in this store"):
            ask("0" * 32)


def test_the_log_tells_what_changed(store: Store, job: Job) -> None:
    store.save(job)
    store.save(job.edited(name="Other").with_given("power_hp", 0.5), 1)
    newest = {entry.path: (entry.old, entry.new) for entry in store.log(job.id)}
    assert newest[("name",)] == ("Drying cabinet", "Other")
    old, new = newest[("given", "power_hp")]
    assert old is None
    assert isinstance(new, dict)
    assert new["value"] == 0.5
    assert () in newest


def test_pictures_lie_under_their_digest(store: Store) -> None:
    digest = store.attach(b"\x89PNG")
    assert store.attach(b"\x89PNG") == digest
    assert store.attachment(digest) == b"\x89PNG"
    with pytest.raises(NotInStore):
        store.attachment("0" * 64)


def test_a_store_in_memory_can_be_saved_elsewhere(job: Job, store: Store) -> None:
    assert store.path
    with Store.in_memory() as memory:
        memory.save(job)
        with memory.save_elsewhere(store.path.with_name("other.db")) as other:
            assert other.load(job.id).job.name == job.name


def test_a_line_tells_whether_something_was_delivered(store: Store) -> None:
    job = Job(arrival={"listing": "a", "put_aside": {"b": {"delivered": "1 Apr 2030"}}})
    store.save(job, 0)
    assert [line.delivered for line in store.jobs()] == [False]
    store.overwrite(job.edited(arrival={"listing": "a", "delivered": "8 Apr 2030"}))
    assert [line.delivered for line in store.jobs()] == [True]
