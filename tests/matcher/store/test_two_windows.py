"""Two windows on one store: each sees the other's changes, nothing is overwritten unseen."""

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from matcher.job import Job, Listing
from matcher.store import Store


@pytest.fixture
def other(store: Store, path: Path) -> Iterator[Store]:
    with Store.open(path, wait_s=0.2) as opened:
        yield opened


def test_different_fields_are_merged(store: Store, other: Store, job: Job) -> None:
    store.save(job)
    store.save(job.edited(name="A").with_given("power_hp", 0.5), 1)
    saved = other.save(job.edited(place="B").with_given("volts", "115"), 1)
    assert saved.clashes == ()
    assert (saved.job.name, saved.job.place) == ("A", "B")
    assert {"power_hp", "volts"} <= saved.job.given.keys()
    assert store.load(job.id).job == saved.job


def test_the_same_field_is_shown_and_not_overwritten(store: Store, other: Store, job: Job) -> None:
    store.save(job)
    store.save(job.with_given("volts", "230"), 1)
    saved = other.save(job.with_given("volts", "115").edited(note="mine"), 1)
    (clash,) = saved.clashes
    assert (clash.field, clash.listing) == ("volts", "")
    assert isinstance(clash.mine, dict)
    assert isinstance(clash.theirs, dict)
    assert (clash.mine["value"], clash.theirs["value"]) == ("115", "230")
    assert saved.job.given["volts"].value == "230"
    assert saved.job.note == "mine"


def test_a_clash_is_settled_by_saving_again(store: Store, other: Store, job: Job) -> None:
    store.save(job)
    store.save(job.edited(name="A"), 1)
    saved = other.save(job.edited(name="B"), 1)
    assert other.save(saved.job.edited(name="B"), saved.version).clashes == ()
    assert store.load(job.id).job.name == "B"


def test_the_same_value_in_both_is_no_clash(store: Store, other: Store, job: Job) -> None:
    store.save(job)
    store.save(job.edited(name="A"), 1)
    assert other.save(job.edited(name="A"), 1).clashes == ()


def test_both_add_a_listing(store: Store, other: Store, new_job: type[Job]) -> None:
    job, extra = new_job(listings=1), new_job(listings=2)
    store.save(job)
    store.save(job.with_listing(extra.listings[0]), 1)
    saved = other.save(job.with_listing(extra.listings[1]), 1)
    assert saved.clashes == ()
    assert {one.id for one in saved.job.listings} == {one.id for one in (*job.listings, *extra.listings)}


@pytest.mark.parametrize("first_removes", [True, False], ids=["they removed it", "I removed it"])
def test_removing_what_the_other_edits_is_shown(
    store: Store, other: Store, job: Job, first_removes: bool
) -> None:
    store.save(job)
    target = job.listings[1]
    removed = job.without_listing(target.id)
    edited = job.with_listing(target.corrected("volts", "115"))
    one, two = (removed, edited) if first_removes else (edited, removed)
    store.save(one, 1)
    saved = other.save(two, 1)
    assert [(clash.listing, clash.field) for clash in saved.clashes] == [(target.id, "")]
    assert (target.id in {listing.id for listing in saved.job.listings}) is not first_removes


def test_a_changed_text_keeps_its_own_reading(store: Store, other: Store, job: Job) -> None:
    store.save(job)
    target = job.listings[0]
    store.save(job.with_listing(target.edited(text="115V").read_again()), 1)
    saved = other.save(job.with_listing(target.read_again().edited(decision="buy")), 1)
    assert saved.clashes == ()
    listing = saved.job.listings[0]
    assert (listing.text, listing.decision) == ("115V", "buy")
    assert listing.reading == target.edited(text="115V").read_again().reading


@pytest.mark.parametrize("joins", [False, True], ids=["split", "joined"])
def test_a_listing_that_was_split_or_joined_never_keeps_the_facts_of_the_text_before(
    store: Store, job: Job, joins: bool
) -> None:
    first = Listing(text="1/2 HP 115V $40").read_again()
    both = Listing(text="1/2 HP 115V $40, also one CCWLE, belly band $60").read_again()
    before, after = (first, both) if joins else (both, first)
    store.save(job.with_listing(before))
    edited = before.edited(text=after.text)
    saved = store.save(job.with_listing(edited), 1)
    for listing in (saved.job.listing(before.id), store.load(job.id).job.listing(before.id)):
        assert listing.record().facts == after.record().facts


def test_a_reading_of_another_text_in_an_older_store_does_not_count(store: Store, job: Job) -> None:
    both = Listing(text="1/2 HP 115V $40, also one CCWLE, belly band $60").read_again()
    store.save(job.with_listing(both.edited(text="1/2 HP 115V $40", reading=both.reading)))
    facts = store.load(job.id).job.listing(both.id).record().facts
    assert (facts.power_hp, facts.turn, facts.mounting) == (0.5, None, None)


def test_an_entry_against_a_group_of_entries_is_a_clash(store: Store, other: Store, job: Job) -> None:
    store.save(job)
    store.save(job.edited(arrival={"measured": 5}), 1)
    saved = other.save(job.edited(arrival={**job.arrival, "measured": {"volts": 1}}), 1)
    assert {clash.field for clash in saved.clashes} == {"arrival.measured.volts"}
    assert saved.job.arrival == {"measured": 5}


def test_one_window_sees_what_the_other_changed(store: Store, other: Store, job: Job) -> None:
    other.touched()
    start = other.latest()
    assert not other.touched()
    store.save(job)
    version = store.save(job.edited(name="A"), 1).version
    assert other.touched()
    assert not other.touched()
    changes = other.changes_since(start)
    assert [(change.job, change.path) for change in changes] == [(job.id, ()), (job.id, ("name",))]
    assert store.changes_since(start) == ()
    assert version == changes[-1].version


def test_threads_take_turns(store: Store, job: Job) -> None:
    store.save(job)

    def work(n: int) -> None:
        for round_ in range(5):
            held = store.load(job.id)
            store.save(held.job.with_given("speeds", n + 1).edited(worth={f"{n}": round_}), held.version)

    threads = [threading.Thread(target=work, args=(n,)) for n in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert store.load(job.id).version > 4
    store.check()
