"""A listing that a job holds already is no second chance."""

from matcher.job import Job, Listing
from matcher.job.listing import Reading
from matcher.job.repeats import not_held
from matcher.motor import Offer

ONE = Listing(title="Fan motor", text="1/2 HP 115V $20")
OTHER = Listing(text="1/3 HP 115V $30")


def again(listing: Listing, **changes: object) -> Listing:
    return Listing(title=listing.title, text=listing.text).edited(**changes)


def test_the_same_words_are_held_whatever_was_corrected_and_new_ones_are_not() -> None:
    job = Job(listings=(ONE.corrected("volts", "230"),))
    assert not_held(job, [again(ONE), OTHER]) == (OTHER,)
    assert not_held(job, [again(ONE, text="1/2 HP  115V $20\n")]) == ()


def test_another_title_or_price_is_another_listing() -> None:
    others = (again(ONE, title="Blower motor"), again(ONE, text="1/2 HP 115V $25"))
    assert not_held(Job(listings=(ONE,)), others) == others


def test_one_paste_adds_each_once() -> None:
    assert not_held(Job(), [ONE, OTHER, again(ONE)]) == (ONE, OTHER)


def test_rows_without_words_are_told_apart_by_their_facts() -> None:
    rows = tuple(Listing(reading=Reading(facts=Offer(power_hp=hp))) for hp in (0.5, 0.25))
    assert not_held(Job(), rows) == rows
    assert not_held(Job(listings=rows[:1]), rows) == rows[1:]
