"""The papers of a finished job: everything on them, nothing of a listing as markup."""

from datetime import date

import pytest
from markup import PRINTED, tags

from matcher.airflow.entries import with_reading
from matcher.arrival.section import with_bought, with_entry, with_named
from matcher.dossier import record_page, substitution_note
from matcher.job import Fallback, Job, Listing
from matcher.job.listing import Reading
from matcher.motor import Offer
from matcher.record import Mark
from matcher.rest import rest_of, with_note
from matcher.triage import with_answer
from matcher.worth import with_worth

TODAY = date(2030, 4, 20)
OLD: dict[str, object] = {
    "brand": "Velmarrow",
    "part_number": "VM-48-3075B",
    "motor_type": "psc",
    "power_hp": 0.5,
    "volts": "208-230",
    "turn": "ccw",
    "seen_from": "lead_end",
    "shaft_diameter_in": 0.5,
    "mounting": ["band"],
    "rpm": [1075],
    "capacitor_uf": 7.5,
}
NEW = Offer.model_validate(
    OLD
    | {"brand": "Ossenby", "part_number": "OB-5107", "price": 55, "shipping": 12, "currency": "USD"}
    | {"capacitor_uf": 10, "condition": "used", "warranty_days": 0, "return_days": 30}
)
LISTING = Listing(
    title="Ossenby <script>alert(1)</script>",
    text="1/2 hp motor, shaft 1/2 in <img src=x onerror=y>",
    reading=Reading(facts=NEW, where={"shaft_diameter_in": Mark(source="text", span=(20, 23), said="1/2")}),
)


def finished() -> Job:
    job = Job(name="Attic <b>unit</b>", place="Tolvane", listings=(LISTING,), fallback=Fallback(price=1180))
    for name, value in OLD.items():
        job = job.with_given(name, value)
    job = with_answer(job.with_site("supply_volts", 230), job.wanted().motor, "grinds", "yes")
    job = with_bought(job, LISTING.id)
    for name, text in (("bought", "2030-04-01"), ("delivered", "2030-04-08"), ("decision", "keep")):
        job = with_entry(job, name, text)
    job = with_named(job, "measured", "shaft_diameter_in", "0.5")
    job = with_note(job, "band_position", "2 1/4 in")
    job = with_reading(with_reading(job, "unit_cfm", "1180"), "tons", "3")
    return with_worth(job, "hours", "3")


@pytest.mark.parametrize(
    ("facts", "begins"),
    [
        ({}, "<p>Ossenby OB-5107 (price 55.00 USD, "),
        ({"brand": None, "part_number": None}, "<p>Price 55.00 USD, "),
    ],
    ids=["maker and number", "neither"],
)
def test_a_listing_without_a_title_is_called_by_what_is_known(facts: dict[str, None], begins: str) -> None:
    untitled = Listing(text=LISTING.text, reading=Reading(facts=NEW.model_copy(update=facts)))
    page = record_page(rest_of(with_bought(Job(listings=(untitled,)), untitled.id), TODAY), TODAY)
    assert page.partition("The listing it was bought from</h2>")[2].lstrip().startswith(begins)


def test_the_record_holds_every_stage() -> None:
    page = record_page(rest_of(finished(), TODAY), TODAY)
    for words in (
        "Attic &lt;b&gt;unit&lt;/b&gt;",
        "It grinds as it turns",
        "VM-48-3075B",
        "Ossenby &lt;script&gt;",
        "Fits",
        "NEMA MG 1 12.44",
        "Send it back by Fri 3 May 2030",
        "Decision: kept",
        "2 1/4 in",
        "1,180 CFM",
        "1,113.00 USD less than the quote of 1,180.00",
        "That is 371.00 USD for each of 3 hours",
        "begun ",
        "delivered 8 Apr 2030",
        ">PSC<",
        "belly band",
        "Does it grind, rumble or catch as it turns? yes",
        "price 55.00 USD, shipping 12.00 USD, condition used, 30 days to return, no warranty",
        "Voltage",
    ):
        assert words in page, words


def test_the_note_names_every_difference_and_has_a_place_to_sign() -> None:
    note = substitution_note(rest_of(finished(), TODAY), TODAY)
    assert "Velmarrow VM-48-3075B" in note
    assert "Ossenby OB-5107" in note
    assert "used; no warranty" in note
    assert "capacitor" in note
    assert "run capacitor that matches the new plate" in note
    assert "I have read this and take the substitute" in note


def test_what_goes_back_stands_in_for_nothing() -> None:
    rest = rest_of(with_entry(finished(), "decision", "send_back"), TODAY)
    assert substitution_note(rest, TODAY) == ""
    assert "Decision: goes back." in record_page(rest, TODAY)


@pytest.mark.parametrize("paper", [record_page, substitution_note])
def test_a_hostile_listing_stays_text(paper) -> None:  # type: ignore[no-untyped-def]
    page = paper(rest_of(finished(), TODAY), TODAY)
    assert tags(page) <= PRINTED
    assert "onerror=y>" not in page


def test_a_job_that_has_hardly_begun_still_prints() -> None:
    rest = rest_of(Job(), TODAY)
    assert rest.standing is None
    assert rest.sheet is None
    assert "a job without a name" in record_page(rest, TODAY)
    assert substitution_note(rest, TODAY) == ""


def test_measured_facts_reach_the_sheet() -> None:
    job = with_named(finished(), "measured", "turn", "either")
    rest = rest_of(job, TODAY)
    assert rest.sheet is not None
    assert "rotation" in rest.sheet.names()
    assert "rotation" not in (rest_of(finished(), TODAY).sheet or rest.sheet).names()


def test_a_note_emptied_is_taken_out() -> None:
    assert with_note(finished(), "band_position", " ").sheet_notes == {}


@pytest.mark.parametrize("paper", [record_page, substitution_note])
def test_no_raw_word_of_a_field_is_printed(paper) -> None:  # type: ignore[no-untyped-def]
    job = finished().with_given("protector", "auto").with_given("module", "without")
    job = job.with_given("control_signal", "taps_24v").with_given("mounting", ["rigid_base", "studs"])
    page = paper(rest_of(job.with_site("module_health", "good"), TODAY), TODAY)
    for raw in (">psc<", ">auto<", ">without<", "taps_24v", "rigid_base", "lead_end", ">ccw<", ">voltage<"):
        assert raw not in page, raw
