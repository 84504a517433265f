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


@pytest.mark.parametrize(
    ("field", "text", "said"),
    [
        ("seen_from", "lead end", {"seen_from": "lead_end"}),
        ("seen_from", "Lead end.", {"seen_from": "lead_end"}),
        ("seen_from", "the end with the wires", {"seen_from": "lead_end"}),
        ("seen_from", "wire end", {"seen_from": "lead_end"}),
        ("seen_from", "opposite shaft end", {"seen_from": "lead_end"}),
        ("seen_from", "shaft end", {"seen_from": "shaft_end"}),
        ("seen_from", "from the shaft", {"seen_from": "shaft_end"}),
        ("plug_pins", "loose wires", {"leads": True}),
        ("plug_pins", "no plug, just wires", {"leads": True}),
        ("plug_pins", "a plug with 5 pins", {"plug_pins": (5,)}),
        ("leads", "loose wires", {"leads": True}),
        ("shaft_diameter_in", "half inch", {"shaft_diameter_in": 0.5}),
        ("shaft_diameter_in", "five eighths of an inch", {"shaft_diameter_in": 0.625}),
    ],
)
def test_a_short_answer_in_people_s_words(field: str, text: str, said: dict[str, object]) -> None:
    found = with_found(JOB, f"old.{field}", text).old_motor()
    told = Listing(text="motor").told(field, text, origin=Origin.ANSWERED).record()
    for record in (found, told):
        assert {name: getattr(record.facts, name) for name in record.where if name in said} == said


@pytest.mark.parametrize(
    ("field", "text", "way"),
    [
        ("seen_from", "not the lead end", "write lead end or shaft end"),
        ("seen_from", "lead end or shaft end", "write lead end or shaft end"),
        ("seen_from", "shaft end?", "write lead end or shaft end"),
        ("seen_from", "the end", "write lead end or shaft end"),
        ("plug_pins", "wires with a plug", "or loose wires"),
        ("plug_pins", "no wires", "or loose wires"),
        ("shaft_diameter_in", "half inch or 5/8", "is no number"),
        ("shaft_diameter_in", "not half inch", "is no number"),
    ],
)
def test_an_answer_with_a_doubt_is_refused_in_words(field: str, text: str, way: str) -> None:
    with pytest.raises(BadValue, match=way) as refused:
        with_found(JOB, f"old.{field}", text)
    assert "_end" not in str(refused.value)
