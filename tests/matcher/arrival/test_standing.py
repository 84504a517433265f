"""A delivery as it stands: check list, measured facts, both judgements, advice, and the note."""

from datetime import date

import pytest

from matcher.arrival import Entries, due, stand, with_bought
from matcher.arrival.measured import same
from matcher.arrival.section import with_entry
from matcher.job import Job, Listing
from matcher.job.listing import Reading
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Conflict, Mark, Record

FACTS: dict[str, object] = {
    "power_hp": 0.5,
    "volts": "208-230",
    "phase": 1,
    "hertz": "60",
    "rpm": [1075],
    "turn": "ccw",
    "seen_from": "lead_end",
    "shaft_diameter_in": 0.5,
    "body_diameter_in": 5.625,
    "body_length_in": 5.5,
    "mounting": ["band"],
    "motor_type": "psc",
    "shaft_ends": 1,
}
WANTED = Wanted(motor=Motor.model_validate(FACTS), site=Site(supply_volts=230))
TODAY = date(2030, 4, 20)
SENT = {"bought": "2030-04-01", "delivered": "8 Apr 2030"}


def listing(**changes: object) -> Record:
    text = "1/2 hp blower motor, shaft 1/2, CCWLE"
    offer = Offer.model_validate(FACTS | {"return_days": 30, "return_shipping": "buyer"} | changes)
    where = {"shaft_diameter_in": Mark(source="text", span=(27, 30), said="1/2")}
    return Record("x", offer, where, title="Ossenby OB-5107 <b>1/2</b> HP", text=text)


def all_measured(**changes: str) -> dict[str, str]:
    plain = {
        "volts": "208-230",
        "phase": "1",
        "hertz": "60",
        "turn": "ccw",
        "seen_from": "lead_end",
        "shaft_diameter_in": "1/2",
        "shaft_flats": "1",
        "body_diameter_in": "5 5/8",
        "body_length_in": "5 1/2",
        "mounting": "band",
        "motor_type": "psc",
        "shaft_ends": "1",
    }
    return plain | changes


def test_measured_as_listed_is_kept() -> None:
    standing = stand(WANTED, listing(), Entries(**SENT, measured=all_measured()), TODAY)
    assert (standing.after.verdict, standing.advice.what) == ("fits", "keep")
    assert "as the listing says" in standing.advice.why[1]
    assert standing.faults == {}


def test_a_wrong_shaft_goes_back_with_the_listing_s_own_words() -> None:
    standing = stand(WANTED, listing(), Entries(**SENT, measured={"shaft_diameter_in": "5/8"}), TODAY)
    assert (standing.before.verdict, standing.after.verdict) == ("fits", "wont_fit")
    assert standing.advice.what == "send_back"
    assert 'the listing says "1/2" (1/2 in); it measures 5/8 in.' in standing.note
    assert "30 days" in standing.note
    assert "Fri 3 May 2030" in standing.note
    assert "<b>" in standing.note  # plain text: shown as it is, never as markup


@pytest.mark.parametrize(
    ("changes", "entries", "what", "says", "has_note"),
    [
        pytest.param({}, {}, "wait", "Measure it when it is there", False, id="on its way"),
        pytest.param(
            {"turn": "cw"}, {}, "cancel", "Cancel it if you still can", False, id="a wrong one on its way"
        ),
        pytest.param(
            {"item": "part"}, {}, "cancel", "Cancel it if you still can", False, id="a part on its way"
        ),
        pytest.param({"turn": "cw"}, SENT, "send_back", "Send it back", True, id="a wrong one that came"),
        pytest.param(
            {"turn": "cw", "return_days": 0, "return_shipping": None},
            SENT,
            "send_back",
            "Ask the seller to take it back",
            True,
            id="a wrong one as listed, without a return",
        ),
        pytest.param(
            {"return_days": 0, "return_shipping": None},
            {**SENT, "measured": {"turn": "cw", "seen_from": "lead_end"}},
            "send_back",
            "Send it back",
            True,
            id="not as listed, without a return",
        ),
    ],
)
def test_nothing_goes_back_before_it_is_there_or_where_nobody_takes_it(
    changes: dict[str, object], entries: dict[str, object], what: str, says: str, has_note: bool
) -> None:
    standing = stand(WANTED, listing(**changes), Entries(**entries), TODAY)  # type: ignore[arg-type]
    assert (standing.advice.what, standing.advice.says) == (what, says)
    assert bool(standing.note) is has_note


@pytest.mark.parametrize(
    ("measured", "decision", "decided"),
    [
        ({}, "", False),
        ({}, "keep", True),
        ({}, "send_back", True),
        ({"shaft_diameter_in": "5/8"}, "keep", False),
        ({"shaft_diameter_in": "5/8"}, "send_back", True),
    ],
)
def test_the_advice_is_gone_once_it_is_decided_unless_it_speaks_against(
    measured: dict[str, str], decision: str, decided: bool
) -> None:
    standing = stand(WANTED, listing(), Entries(**SENT, measured=measured, decision=decision), TODAY)
    assert standing.is_decided is decided


@pytest.mark.parametrize(
    ("listed", "measured", "differs"),
    [
        pytest.param({}, ("ccw", "lead_end"), [], id="as listed"),
        pytest.param({}, ("cw", "shaft_end"), [], id="the same from the other end"),
        pytest.param({}, ("cw", "lead_end"), ["turn"], id="the other way, the end as listed"),
        pytest.param({}, ("ccw", "shaft_end"), ["seen_from"], id="the turn as listed, from the other end"),
        pytest.param({}, ("ccw", ""), [], id="the end not looked at yet"),
        pytest.param({}, ("", "shaft_end"), [], id="an end alone says nothing of the turn"),
        pytest.param({"seen_from": None}, ("cw", "lead_end"), [], id="a listing that names no end"),
        pytest.param({"seen_from": None}, ("either", ""), ["turn"], id="either way against one"),
    ],
)
def test_what_is_ticked_as_listed_never_differs(
    listed: dict[str, object], measured: tuple[str, str], differs: list[str]
) -> None:
    texts = {name: text for name, text in zip(("turn", "seen_from"), measured, strict=True) if text}
    standing = stand(WANTED, listing(**listed), Entries(**SENT, measured=texts), TODAY)
    assert [one.field for one in standing.differing] == differs
    for one in standing.differing:
        assert one.says.startswith("Turn: listed as counter-clockwise")
        assert one.listed != one.measured


def test_until_the_hard_facts_are_measured_the_advice_is_to_measure() -> None:
    standing = stand(WANTED, listing(), Entries(**SENT, measured={"shaft_diameter_in": "1/2"}), TODAY)
    assert standing.advice.what == "measure"
    assert "turn" in standing.advice.why[0]


def test_a_motor_that_differs_and_fits_is_named_not_condemned() -> None:
    measured = all_measured(shaft_length_in="4.8")
    standing = stand(WANTED, listing(shaft_length_in=5.0), Entries(**SENT, measured=measured), TODAY)
    assert standing.advice.what == "keep"
    assert [one.field for one in standing.differing] == ["shaft_length_in"]


def test_a_bad_bearing_goes_back_whatever_it_measures() -> None:
    entries = Entries(**SENT, measured=all_measured(), looks={"spins": "bad", "parcel": "ok"})
    standing = stand(WANTED, listing(), entries, TODAY)
    assert standing.advice.what == "send_back"
    assert "the shaft does not turn freely by hand." in standing.note


def test_a_dented_parcel_alone_condemns_nothing() -> None:
    dented = Entries(**SENT, measured=all_measured(), looks={"parcel": "bad"})
    assert stand(WANTED, listing(), dented, TODAY).advice.what == "keep"
    broken = Entries(**SENT, measured=all_measured(), looks={"parcel": "bad", "spins": "bad"})
    assert "the parcel was damaged when it arrived." in stand(WANTED, listing(), broken, TODAY).note


def test_without_a_reason_there_is_no_note() -> None:
    assert stand(WANTED, listing(), Entries(**SENT), TODAY).note == ""
    decided = stand(WANTED, listing(), Entries(**SENT, decision="send_back"), TODAY)
    assert "I have decided not to keep it." in decided.note
    kept = Entries(**SENT, measured={"shaft_diameter_in": "5/8"}, decision="keep")
    assert stand(WANTED, listing(), kept, TODAY).note == ""


def test_the_note_does_not_blame_a_listing_that_said_nothing() -> None:
    measured = {"shaft_diameter_in": "5/8"}
    standing = stand(WANTED, listing(shaft_diameter_in=None), Entries(**SENT, measured=measured), TODAY)
    assert standing.advice.what == "send_back"
    assert "differs from the listing" not in standing.note
    assert "can't use it here" in standing.note
    assert "as listed" not in standing.note


@pytest.mark.parametrize(
    ("terms", "words"),
    [
        ({"return_shipping": "seller"}, "you pay the way back"),
        ({"return_days": 0}, "refund"),
        ({"return_days": None}, "refund"),
    ],
)
def test_the_note_asks_for_what_the_terms_give(terms: dict[str, object], words: str) -> None:
    standing = stand(WANTED, listing(**terms), Entries(**SENT, measured={"shaft_diameter_in": "5/8"}), TODAY)
    assert words in standing.note


@pytest.mark.parametrize(
    ("entries", "key", "words"),
    [
        ({"delivered": "8.44"}, "delivered", "is no date"),
        ({"delivered": "2030-03-01"}, "delivered", "before the purchase"),
        ({"delivered": "2030-05-01"}, "delivered", "in the future"),
        ({"delivered": "", "bought": "2030-05-01"}, "bought", "in the future"),
        ({"transit_days": "-2"}, "transit_days", "can't be"),
        ({"transit_days": "99"}, "transit_days", "60 at most; until then 5 are counted"),
        ({"transit_days": "400"}, "transit_days", "60 at most"),
        ({"measured": {"body_length_in": "long"}}, "body_length_in", "is no number"),
        ({"measured": {"shaft_flats": "7"}}, "shaft_flats", "can't be right"),
        ({"measured": {"nonsense": "1"}}, "nonsense", "is no fact"),
    ],
)
def test_what_cannot_be_is_named_and_the_rest_still_stands(
    entries: dict[str, object], key: str, words: str
) -> None:
    standing = stand(WANTED, listing(), Entries(**{**SENT, **entries}), TODAY)  # type: ignore[arg-type]
    assert words in standing.faults[key]
    assert standing.after.verdict == "fits"


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (30, "30 days from delivery"),
        (0, "no returns"),
        (None, "doesn't say"),
    ],
)
def test_before_the_delivery_the_terms_are_told(days: int | None, words: str) -> None:
    assert (
        words in stand(WANTED, listing(return_days=days, return_shipping=None), Entries(), TODAY).window_says
    )


WRONG_DATES = [
    {"delivered": "2030-05-01"},
    {"delivered": "2030-03-01"},
    {"delivered": "8.44"},
]


@pytest.mark.parametrize("entries", WRONG_DATES, ids=lambda one: one["delivered"])
def test_a_wrong_date_denies_no_return_that_the_listing_names(entries: dict[str, str]) -> None:
    measured = {"shaft_length_in": "3"}
    standing = stand(
        WANTED, listing(), Entries(**SENT | entries, measured=measured, decision="send_back"), TODAY
    )
    assert standing.window_short == "dates to mend"
    assert "until the dates are mended" in standing.window_says
    assert "names no return" not in standing.note
    assert "within the 30 days that the listing gives" in standing.note


@pytest.mark.parametrize(
    ("changes", "conflicts", "words"),
    [
        ({"return_days": None, "return_shipping": "seller"}, (), "return days not told"),
        ({"return_days": None}, (Conflict("return_days", (14, 30), ("14", "30")),), "return days to settle"),
        ({"return_days": 0}, (), "no return promised"),
        ({"return_days": None, "return_shipping": None}, (), "no return promised"),
    ],
)
def test_a_return_without_its_days_is_not_denied(
    changes: dict[str, object], conflicts: tuple[Conflict, ...], words: str
) -> None:
    record = listing(**changes)
    record.conflicts = conflicts
    standing = stand(WANTED, record, Entries(**SENT, decision="send_back"), TODAY)
    assert standing.window_short == words
    assert ("names no return" in standing.note) is (words == "no return promised")


def test_doubts_come_first_and_what_nobody_knows_or_asks_stays_out() -> None:
    record = listing(turn=None, seen_from=None)
    record.conflicts = (Conflict("turn", ("cw", "ccw"), ("CW", "CCW")),)
    items = stand(WANTED, record, Entries(), TODAY).items
    assert items[0].field in ("turn", "seen_from")
    assert items[0].doubt == "contradicted"
    names = {item.field for item in items}
    assert {"shaft_diameter_in", "volts", "mounting"} <= names
    assert not names & {"module_number", "program_number", "price", "explosion_proof", "shaft_keyed", "duty"}


def test_what_was_presumed_by_number_is_first_in_doubt() -> None:
    numbers = {"brand": "Velmarrow", "part_number": "VM-1"}
    wanted = Wanted(motor=Motor.model_validate(FACTS | numbers), site=Site(supply_volts=230))
    items = stand(wanted, Record("x", Offer.model_validate(numbers)), Entries(), TODAY).items
    doubts = {item.field: item.doubt for item in items if item.hard}
    assert doubts["shaft_diameter_in"] == doubts["turn"] == "presumed"
    assert doubts["shaft_flats"] == "not said"  # the old one's isn't known either


@pytest.mark.parametrize(
    ("field", "one", "other", "equal"),
    [
        ("shaft_diameter_in", {"shaft_diameter_in": 0.5}, {"shaft_diameter_in": 0.504}, True),
        ("shaft_diameter_in", {"shaft_diameter_in": 0.5}, {"shaft_diameter_in": 0.51}, False),
        ("body_length_in", {"body_length_in": 5.0}, {"body_length_in": 5.1}, True),
        ("body_length_in", {"body_length_in": 5.0}, {"body_length_in": 5.2}, False),
        ("volts", {"volts": "208-230"}, {"volts": "230"}, False),
        ("part_number", {"part_number": "OB-5107"}, {"part_number": "ob 5107"}, True),
        ("amps", {"amps": [8.6, 4.3]}, {"amps": [8.6]}, False),
        (
            "turn",
            {"turn": "cw", "seen_from": "shaft_end"},
            {"turn": "ccw", "seen_from": "lead_end"},
            True,
        ),
        ("turn", {"turn": "cw", "seen_from": "lead_end"}, {"turn": "ccw", "seen_from": "lead_end"}, False),
        ("shaft_flats", {"shaft_flats": 1}, {"shaft_flats": 2}, False),
        ("leads", {"leads": True}, {"leads": False}, False),
        ("mounting", {"mounting": ["band"]}, {"mounting": ["studs"]}, False),
    ],
)
def test_rounding_is_no_difference(
    field: str, one: dict[str, object], other: dict[str, object], equal: bool
) -> None:
    assert same(field, Offer.model_validate(one), Offer.model_validate(other)) is equal


def test_the_note_says_turns_and_names_in_words() -> None:
    offer = Offer.model_validate(FACTS | {"brand": "Ossenby", "part_number": "OB-5107"})
    pasted = Record("x", offer, {}, text="Ossenby OB-5107 blower motor, CCWLE, and so on and on")
    entries = Entries(measured={"turn": "cw", "seen_from": "lead_end"}, decision="send_back")
    note = stand(WANTED, pasted, entries, date(2030, 4, 9)).note
    assert 'The motor from your listing "Ossenby OB-5107"' in note
    assert (
        "listed as counter-clockwise seen from the lead end; it turns clockwise seen from the lead end"
        in note
    )


@pytest.mark.parametrize("turn", ["cw", "ccw"])
def test_a_reversible_motor_that_turns_one_way_is_as_listed(turn: str) -> None:
    reversible = listing(turn="either", seen_from=None)
    measured = all_measured(turn=turn)
    standing = stand(WANTED, reversible, Entries(**SENT, measured=measured), TODAY)
    assert standing.differing == ()
    assert standing.values["turn"] == turn
    assert (standing.after.verdict, standing.advice.what) == ("fits", "keep")


@pytest.mark.parametrize(
    ("delivered", "decision", "return_days", "words"),
    [
        ("8 Apr 2030", "", 30, "send back by Fri 3 May 2030"),
        ("8 Apr 2030", "send_back", 30, "send back by Fri 3 May 2030"),
        ("8 Apr 2030", "keep", 30, ""),
        ("1 Feb 2030", "", 30, "last safe day was Tue 26 Feb 2030"),
        ("8 Apr 2030", "", 0, ""),
        ("no day", "", 30, ""),
        ("", "", 30, ""),
    ],
)
def test_a_list_of_jobs_tells_the_window_that_runs(
    delivered: str, decision: str, return_days: int, words: str
) -> None:
    offer = Listing(text="a motor", reading=Reading(facts=Offer(return_days=return_days)))
    job = with_bought(Job(listings=(offer,)), offer.id)
    for name, text in (("delivered", delivered), ("decision", decision)):
        job = with_entry(job, name, text)
    assert due(job, TODAY) == words
    assert due(Job(), TODAY) == ""
