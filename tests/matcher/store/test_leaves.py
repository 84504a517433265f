"""Every part of a job has its place in the store: a new one that has none is found here."""

from matcher.job import Job, Listing
from matcher.store.leaves import GIVEN, LISTING_PLAIN, PLAIN, SECTIONS


def test_every_part_of_a_job_is_kept() -> None:
    assert {*PLAIN, *GIVEN, *SECTIONS, "id", "created", "changed", "listings"} == set(Job.model_fields)


def test_every_part_of_a_listing_is_kept() -> None:
    assert {*LISTING_PLAIN, "id", "title", "text", "reading", "corrections"} == set(Listing.model_fields)
