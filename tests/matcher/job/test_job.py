"""A job: what was given counts over what was read, and bad values are refused with a line."""

import pytest

from matcher.errors import BadValue, UnknownField
from matcher.job import Fallback, Given, Job, Listing, Reading
from matcher.job.text import safe_name
from matcher.motor import Offer
from matcher.record import Conflict, Mark, Origin, Record

TEXT = "1/2 HP 208-230V CW facing lead end, 1075 RPM"
READ = Reading(
    facts=Offer(power_hp=0.5, volts="208-230", turn="cw", seen_from="lead_end", rpm=(1075,)),
    where={
        "power_hp": Mark(Origin.READ, "text", (0, 6), "1/2 HP"),
        "turn": Mark(Origin.READ, "text", (16, 18), "CW"),
    },
    conflicts=(Conflict("shaft_diameter_in", (0.5, 0.625), ("1/2 in", "5/8 in")),),
)
LISTING = Listing(text=TEXT, reading=READ)


def test_a_correction_counts_and_says_whose_it_is() -> None:
    record = LISTING.corrected("volts", 115, origin=Origin.ANSWERED, note="seller: it is 115").record()
    assert record.facts.volts == "115"
    assert record.where["volts"] == Mark(Origin.ANSWERED, said="seller: it is 115")
    assert record.where["power_hp"].said == "1/2 HP"


def test_a_correction_survives_reading_again() -> None:
    again = LISTING.corrected("volts", "460").read_again()
    assert again.reading != READ
    assert again.record().facts.volts == "460"


def test_a_new_text_drops_what_was_read_but_no_correction() -> None:
    changed = LISTING.corrected("volts", "460").edited(text="115V")
    assert changed.reading is None
    assert changed.corrections["volts"].value == "460"


def test_settling_a_conflict_is_a_correction() -> None:
    assert LISTING.record().contradicted == {"shaft_diameter_in"}
    settled = LISTING.corrected("shaft_diameter_in", 0.5, origin=Origin.SEEN).record()
    assert settled.contradicted == frozenset()
    assert settled.facts.shaft_diameter_in == 0.5


def test_not_known_after_all_takes_value_mark_and_conflict_away() -> None:
    record = LISTING.withdrawn("power_hp").withdrawn("shaft_diameter_in").record()
    assert record.facts.power_hp is None
    assert "power_hp" not in record.where
    assert record.contradicted == frozenset()


def test_as_read_undoes_a_correction() -> None:
    assert LISTING.corrected("volts", "115").as_read("volts") == LISTING


@pytest.mark.parametrize(
    ("field", "value", "gone"),
    [("turn", "ccw", "seen_from"), ("rpm_range", [600, 1200], "rpm")],
    ids=["a turn without its view", "a range of speeds"],
)
def test_a_given_fact_unseats_its_read_partner(field: str, value: object, gone: str) -> None:
    record = LISTING.corrected(field, value).record()
    assert getattr(record.facts, gone) is None
    assert gone not in record.where


def test_the_same_turn_given_keeps_its_view() -> None:
    assert LISTING.corrected("turn", "cw").record().facts.seen_from == "lead_end"


def test_given_counts_over_the_plate() -> None:
    job = Job(plate_text="1/2 HP 208-230V 60 HZ").with_given("power_hp", 1 / 3).with_site("supply_volts", 230)
    wanted = job.wanted()
    assert wanted.motor.power_hp == pytest.approx(1 / 3)
    assert wanted.motor.volts == "208-230"
    assert wanted.site.supply_volts == 230
    assert wanted.id == job.id
    assert job.without_given("power_hp").wanted().motor.power_hp == 0.5
    assert job.without_site("supply_volts").wanted().site.supply_volts is None


def test_an_edit_shares_what_it_leaves_alone() -> None:
    job = Job(listings=(LISTING, Listing(title="other")))
    after = job.with_listing(LISTING.edited(decision="buy"))
    assert after.listings[1] is job.listings[1]
    assert [one.decision for one in job.listings] == ["", ""]
    assert after.without_listing(LISTING.id).listings == job.listings[1:]


@pytest.mark.parametrize(
    ("field", "value", "error", "line"),
    [
        ("volt", "115", UnknownField, "'volt' is no fact of a motor; did you mean 'volts'?"),
        ("power_hp", float("nan"), BadValue, "power_hp: not a finite number"),
        ("power_hp", -1, BadValue, "power_hp: -1 can't be right"),
        ("power_hp", 1e308, BadValue, "power_hp: 1e+308 can't be right"),
        ("turn", "left", BadValue, "turn: 'left' can't be right"),
        ("rpm", "fast", BadValue, "rpm: 'fast' can't be right"),
        ("amps", [], BadValue, "amps: [] can't be right"),
        ("brand", object(), BadValue, "brand: a object can't be kept"),
        ("price", 5.0, UnknownField, "'price' is no fact of a motor"),
    ],
    ids=lambda value: str(value)[:20],
)
def test_bad_values_are_refused_with_one_line(field: str, value: object, error: type, line: str) -> None:
    with pytest.raises(error) as caught:
        Job().with_given(field, value)
    assert str(caught.value).startswith(line)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("change", "line"),
    [
        ({"fallback": {"price": -1}}, "fallback.price: "),
        ({"listings": (LISTING, LISTING)}, "listings: two listings have the same id"),
        ({"arrival": {"x": float("inf")}}, "arrival: not a finite number"),
        ({"nonsense": 1}, "nonsense: "),
        ({"id": "../../x"}, "id: "),
        ({"created": "yesterday"}, "created: "),
    ],
    ids=lambda value: str(value)[:30],
)
def test_bad_edits_are_refused_with_one_line(change: dict[str, object], line: str) -> None:
    with pytest.raises(BadValue) as caught:
        Job().edited(**change)
    assert str(caught.value).startswith(line)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("name", "safe"),
    [
        ("front.jpg", "front.jpg"),
        ("../../etc/passwd", "passwd"),
        ("/abs/x.png", "x.png"),
        ("C:\\Windows\\con.txt", "_con.txt"),
        ("nul", "_nul"),
        ("COM1.tar.gz", "_COM1.tar.gz"),
        ("a\0b", "a_b"),
        ("..", "_"),
        ("", "_"),
        ("photo\u202egpj.exe", "photo_gpj.exe"),
        ("half\ud800.png", "half\ufffd.png"),
        ("x" * 500 + ".png", "x" * 116 + ".png"),
        ("a:b|c?.png", "a_b_c_.png"),
        ("trailing. ", "trailing"),
    ],
    ids=lambda value: repr(value)[:24],
)
def test_file_names_stay_in_their_folder(name: str, safe: str) -> None:
    assert safe_name(name) == safe


def test_hostile_text_is_kept_plainly() -> None:
    text = "\u202e=cmd|' /C calc'!A0\0\ud800</script>"
    assert Listing(text=text).text == text.replace("\ud800", "\ufffd")


def test_half_characters_in_a_record_keep_their_spans() -> None:
    record = Record(
        "x\ud800", Offer(), {"volts": Mark(source="text", span=(0, 5), said="115V\ud800")}, text="115V\ud800"
    )
    listing = Listing.of(record)
    assert listing.text[0:5] == listing.record().where["volts"].said
    assert Listing.model_validate_json(listing.model_dump_json()) == listing


def test_fallback_and_given_are_plain_values() -> None:
    job = Job(fallback=Fallback(price=1150, what="quote"), given={"volts": Given(value=115)})
    assert job.given["volts"].value == "115"
    assert Job.model_validate_json(job.model_dump_json()) == job


def test_settling_a_turn_keeps_the_end_that_its_words_say() -> None:
    listing = Listing(text="1/2 HP motor CCWLE, 115V. Rotation: CWLE").read_again()
    assert "turn" in listing.record().contradicted
    facts = listing.settled("turn", "cw", "CWLE").record().facts
    assert (facts.turn, facts.seen_from) == ("cw", "lead_end")


@pytest.mark.parametrize(
    ("field", "text", "value"),
    [
        ("turn", "CCWLE", ("ccw", "lead_end")),
        ("turn", "clockwise facing shaft end", ("cw", "shaft_end")),
        ("turn", "cw", ("cw", None)),
    ],
    ids=["in a listing's letters", "in words", "as the form says it"],
)
def test_an_answer_in_the_trade_s_words_is_understood(field: str, text: str, value: object) -> None:
    told = Listing(text="motor").told(field, text, origin=Origin.ANSWERED, note=text)
    facts = told.record().facts
    assert (facts.turn, facts.seen_from) == value
    assert told.record().where["turn"].origin is Origin.ANSWERED


def test_an_answer_that_means_nothing_is_refused_with_a_line() -> None:
    with pytest.raises(BadValue, match="turn"):
        Listing(text="motor").told("turn", "no idea")
