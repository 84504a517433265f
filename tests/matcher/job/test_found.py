"""Answers from home go to the old motor and its place, never to a listing."""

import pytest

from matcher.errors import BadValue
from matcher.job import Job, Listing
from matcher.job.found import with_found
from matcher.record import Origin

JOB = Job(listings=(Listing(text="1/2 HP motor"),))


@pytest.mark.parametrize(
    ("key", "text", "value"),
    [
        ("old.mounting", "belly band", ("band",)),
        ("old.mounting", "band", ("band",)),
        ("old.shaft_diameter_in", "1/2", 0.5),
        ("old.volts", "208-230 V", "208-230"),
        ("old.motor_type", "PSC", "psc"),
    ],
)
def test_a_fact_of_the_old_motor(key: str, text: str, value: object) -> None:
    found = with_found(JOB, key, text)
    given = found.given[key.partition(".")[2]]
    assert (getattr(found.old_motor().facts, key.partition(".")[2]), given.origin) == (value, Origin.MEASURED)
    assert found.listings == JOB.listings


def test_a_turn_brings_the_end_it_is_seen_from() -> None:
    facts = with_found(JOB, "old.turn", "CCWLE").old_motor().facts
    assert (facts.turn, facts.seen_from) == ("ccw", "lead_end")


def test_a_fact_of_the_place_and_a_length_in_millimetres() -> None:
    assert with_found(JOB, "site.supply_volts", "230").wanted().site.supply_volts == 230
    assert (
        with_found(JOB, "old.shaft_diameter_in", "12.7", metric=True).old_motor().facts.shaft_diameter_in
        == 0.5
    )


@pytest.mark.parametrize(("key", "text"), [("old.shaft_diameter_in", "thick"), ("site.supply_volts", "many")])
def test_what_is_no_answer_is_refused(key: str, text: str) -> None:
    with pytest.raises(BadValue):
        with_found(JOB, key, text)
