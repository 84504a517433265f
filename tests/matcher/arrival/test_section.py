"""What a job keeps of an arrival: as typed, by the listing that was bought."""

from matcher.arrival.section import (
    Entries,
    bought,
    decided,
    entries_in,
    with_bought,
    with_entry,
    with_named,
    with_photos,
)
from matcher.job import Job, Listing

ONE, TWO = Listing(title="one"), Listing(title="two", decision="asked the seller")
JOB = Job(listings=(ONE, TWO))


def test_the_bought_one_is_marked_and_another_choice_takes_the_mark_along() -> None:
    first = with_bought(JOB, ONE.id)
    assert bought(first) == first.listing(ONE.id)
    assert first.listing(ONE.id).decision == "bought"
    second = with_bought(with_named(first, "measured", "rpm", "1075"), TWO.id)
    assert second.listing(ONE.id).decision == ""
    assert second.listing(TWO.id).decision == "asked the seller"  # a person's own words stay
    assert entries_in(second.arrival).measured == {}


def test_what_goes_back_still_does_when_another_is_bought() -> None:
    assert decided(with_bought(JOB, ONE.id)) == {}
    first = with_entry(with_bought(JOB, ONE.id), "decision", "send_back")
    second = with_entry(with_bought(first, TWO.id), "decision", "keep")
    assert decided(second) == {ONE.id: "send_back", TWO.id: "keep"}
    assert decided(with_bought(second, ONE.id)) == {ONE.id: "send_back"}
    assert decided(first.without_listing(ONE.id)) == {}


def test_what_was_entered_for_a_part_comes_back_with_it() -> None:
    first = with_entry(
        with_named(with_bought(JOB, ONE.id), "measured", "rpm", "1075"), "bought", "2030-04-01"
    )
    first = with_entry(with_photos(first, ["crack.jpg"]), "delivered", "2030-04-08")
    second = with_entry(with_bought(first, TWO.id), "delivered", "2030-05-02")
    assert entries_in(second.arrival) == Entries(listing=TWO.id, bought="2030-04-01", delivered="2030-05-02")
    again = with_bought(with_bought(second, ""), ONE.id)
    assert entries_in(again.arrival) == entries_in(first.arrival)
    assert entries_in(with_bought(again, TWO.id).arrival).delivered == "2030-05-02"


def test_what_is_put_aside_is_never_taken_for_an_entry() -> None:
    job = JOB.edited(arrival={"listing": ONE.id, "put_aside": ["x"], "delivered": "2030-04-08"})
    assert entries_in(with_bought(job, TWO.id).arrival).delivered == ""
    assert entries_in(with_bought(with_bought(job, TWO.id), ONE.id).arrival).delivered == "2030-04-08"


def test_entries_are_kept_as_typed_and_taken_out_when_emptied() -> None:
    job = with_entry(with_named(JOB, "looks", "spins", "bad"), "delivered", "no date at all")
    assert entries_in(job.arrival).delivered == "no date at all"
    assert entries_in(with_entry(job, "delivered", "").arrival).delivered == ""
    assert entries_in(with_named(job, "looks", "spins", "").arrival).looks == {}


def test_a_removed_listing_is_no_longer_bought() -> None:
    assert bought(with_bought(JOB, ONE.id).without_listing(ONE.id)) is None
    assert bought(JOB) is None


def test_strange_sections_are_passed_over() -> None:
    entries = entries_in({"listing": 3, "measured": ["x"], "photos": "a", "counted": 1, "decision": "burn"})
    assert entries == entries_in({})
