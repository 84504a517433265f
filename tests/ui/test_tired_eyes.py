"""What a tired person typed, and what misled one: sums with commas, answers in letters, names in lists."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from matcher.job import Listing
from matcher.motor import Offer
from matcher.record import Origin, Record
from ui.bench import LISTINGS, MONEY, SIDE_BY_SIDE
from ui.called import called
from ui.lot import Lot

PLATE = "Velmarrow VM-1 1/2 HP 115V 60HZ 1PH 1075 RPM 3.4A CWLE PSC shaft 1/2 x 5 5.6 in dia"
TWICE = "Krellin KR-2 1/2 HP 115V 60HZ 1PH 1075 RPM CCWLE PSC belly band 1/2 in shaft $20. Rotation CWLE"


@pytest.fixture
def job(bench, settle, qtbot):
    QTest.keyClicks(bench.plate.box, PLATE)
    QGuiApplication.clipboard().setText(TWICE)
    bench.window.go_to(LISTINGS)
    bench.pages[LISTINGS].paste()
    qtbot.waitUntil(lambda: len(bench.session.job.listings) == 1)
    settle(bench)
    return bench


def test_a_quote_with_a_comma_is_not_a_dollar_and_fifteen_cents(job, settle):
    page = job.pages[MONEY]
    job.window.go_to(MONEY)
    page.fallback.price.setFocus()
    QTest.keyClicks(page.fallback.price, "1,150")
    QTest.keySequence(page.fallback.price, "Return")
    settle(job)
    assert job.session.job.fallback.price == 1150


def test_a_settled_turn_keeps_the_end_it_is_seen_from(job, settle):
    page = job.pages[LISTINGS]
    record = job.session.answers.records[job.session.job.listings[0].id]
    assert page.facts.index(page.facts.row_of("turn"), 1).data() == "which counts?"
    page.conflicts.settled.emit("turn", "cw", "CWLE")
    settle(job)
    facts = job.session.answers.records[record.id].facts
    assert (facts.turn, facts.seen_from) == ("cw", "lead_end")


def test_a_seller_s_letters_are_understood(job, settle):
    page, listing = job.pages[LISTINGS], job.session.job.listings[0]
    page.choose(listing.id)
    page.given.given.emit("turn", "CCWLE", Origin.ANSWERED)
    settle(job)
    facts = job.session.job.listing(listing.id).record().facts
    assert (facts.turn, facts.seen_from) == ("ccw", "lead_end")


def test_what_only_a_look_at_home_tells_is_no_seller_s_question(job, settle):
    page = job.pages[MONEY]
    job.window.go_to(MONEY)
    model = page.questions
    fields = [row.question.field for row in model.rows]
    at = fields.index("old.mounting")
    assert model.index(at, 1).data() == "look at home"
    page.asked.selectRow(at)
    assert not page.copy_message.isEnabled()
    assert "Old motor" in page.message.text()
    page.asked.selectRow(next(n for n, field in enumerate(fields) if not field.startswith("old.")))
    assert page.message.text().startswith("Hello")
    assert "old" not in page.message.text()


LONG = "fan motor out of my moms old furnace 1/3 hp 115v 60hz 1ph 1075 rpm 4 speed"


@pytest.mark.parametrize(
    ("brand", "number", "words", "name"),
    [
        ("Halvorne", "HV-9", "Mfr: Halvorne\nModel: HV-9", "Halvorne HV-9"),
        (None, "HV-9", "fan motor\n1/2 hp", "fan motor"),
        (None, "HV-9", " \n ", "HV-9"),
        ("Halvorne", None, "blower\u202emotor", "blower\ufffdmotor"),
        (None, None, "", ""),
        (None, None, f"{LONG} belly band", f"{LONG}…"),
    ],
    ids=["maker and number", "a title", "a number alone", "hostile signs", "nothing", "a long title"],
)
def test_an_offer_is_called_by_maker_and_number(brand, number, words, name):
    assert called(brand, number, words) == name


def test_a_lot_is_filtered_by_maker_and_by_title():
    offer = Offer(brand="Halvorne", part_number="HV-9")
    lot = Lot()
    lot.gather(lambda _share: None, [Record("a", offer, title="BLOWER MTR")])
    assert lot.rows[0].name == "Halvorne HV-9"
    assert "halvorne" in lot.rows[0].words
    assert "blower mtr" in lot.rows[0].words


def test_an_unsaid_value_that_is_presumed_is_not_called_unknown(job, settle):
    page = job.pages[SIDE_BY_SIDE]
    side = page.side
    rows = {row.key: place for place, row in enumerate(side.rows)}
    said = {key: side.index(rows[key], 1).data() for key in ("rotation", "shaft", "hazard")}
    assert said == {"rotation": "not known", "shaft": "1/2 in", "hazard": "not said"}
    assert side.index(rows["shaft"], 0).data() == "1/2 in x 5 in"
    frequency = next(f for f in side.candidates[0].judgement.findings if f.check == "frequency")
    unsaid = frequency.__class__(**{**_plain(frequency), "new": "", "presumed": ("hertz",)})
    assert side._said(unsaid) == "not said, presumed"


def _plain(finding):
    return {name: getattr(finding, name) for name in finding.__dataclass_fields__}


def test_a_filter_that_nothing_matches_says_so_and_draws_nothing(job):
    page = job.pages[SIDE_BY_SIDE]
    job.window.go_to(SIDE_BY_SIDE)
    page.seek.setText("zzz")
    assert "matches" in page.why.text()
    assert not page.drawing.isVisible()
    page.seek.setText("")
    assert page.drawing.isVisible()
    assert "Krellin" in page.side.headerData(1, Qt.Orientation.Horizontal)


def test_what_was_found_at_home_is_typed_beside_its_question(job, settle):
    page = job.pages[MONEY]
    job.window.go_to(MONEY)
    row = next(at for at, one in enumerate(page.questions.rows) if one.question.field == "old.mounting")
    page.asked.selectRow(row)
    assert "How is the old motor held?" in page.message.text()
    assert "at home" in page.answer.placeholderText()
    QTest.keyClicks(page.answer, "belly band")
    QTest.keySequence(page.answer, "Return")
    settle(job)
    assert job.session.job.given["mounting"].value == ["band"]
    assert "mounting" not in job.session.job.listings[0].corrections
    assert not any(one.question.field == "old.mounting" for one in page.questions.rows)


def test_figures_stand_beside_the_shipped_ones_and_changed_ones_are_bold(job, settle):
    page = job.pages[MONEY]
    model = page.figures
    assert model.index(3, 1).data() == model.index(3, 2).data()
    assert model.index(3, 1).data(Qt.ItemDataRole.FontRole) is None
    model.setData(model.index(3, 1), "33")
    settle(job)
    assert (model.index(3, 1).data(), model.index(3, 2).data()) == ("33", "10")
    assert model.index(3, 1).data(Qt.ItemDataRole.FontRole).bold()


def test_the_short_list_says_how_many_more_are_missing(bench, settle):
    QTest.keyClicks(bench.plate.box, "1/2 HP")
    settle(bench)
    missing = bench.session.answers.missing
    shown = bench.pages[0].missing.list
    assert len(missing) > shown.count() - 1
    assert f"and {len(missing) - shown.count() + 1} more" in shown.item(shown.count() - 1).text()


def test_a_price_in_the_facts_has_its_cents():
    from ui.units import Units

    assert Units().words("price", 14.5) == "14.50"


def test_a_long_plate_opens_at_its_first_line(bench, settle):
    from matcher.job import Job

    lines = [f"LINE {at}" for at in range(30)]
    bench.session.open(Job(plate_text="\n".join(lines)))
    settle(bench)
    box = bench.plate.box
    assert box.firstVisibleBlock().text() == "LINE 0"
    QTest.keyClicks(box, " 1/2 HP")
    assert box.toPlainText().endswith("LINE 29 1/2 HP")
    assert box.firstVisibleBlock().blockNumber() > 0


def test_what_the_plate_gives_twice_is_asked_only_while_it_does(bench, settle):
    edit = bench.old_motor.edits["enclosure"]
    QTest.keyClicks(bench.plate.box, "1/2 HP OAO TEAO")
    settle(bench)
    assert "OAO or TEAO" in edit.trouble.text()
    bench.plate.box.setPlainText("1/2 HP OAO")
    settle(bench)
    assert edit.trouble.text() == ""
    bench.plate.box.setPlainText("1/2 HP OAO TEAO")
    settle(bench)
    bench.new_job()
    settle(bench)
    assert edit.trouble.text() == ""
    assert not edit.trouble.isVisible()


def test_a_value_that_is_being_typed_counts_for_its_own_job(bench, settle):
    edit, job = bench.old_motor.edits["power_hp"], bench.session.job
    edit.setFocus()
    QTest.keyClicks(edit.editor, "1/2")
    QTest.keySequence(bench.window, "Ctrl+N")
    settle(bench)
    assert bench.session.job.given == {}
    assert edit.editor.text() == ""
    task = bench.shelf.load(job.id)
    held = []
    task.done.connect(held.append)
    settle(bench)
    assert held[0].job.given["power_hp"].value == 0.5


def test_a_wrong_value_is_not_held_against_the_next_job(bench, settle):
    edit = bench.old_motor.edits["power_hp"]
    edit.setFocus()
    QTest.keyClicks(edit.editor, "lots")
    QTest.keySequence(edit.editor, "Return")
    assert edit.trouble.text()
    bench.new_job()
    settle(bench)
    assert (edit.trouble.text(), edit.editor.text()) == ("", "")


SCRATCHED = "fan motor, the label is scratched cant read the rest, 1/2 hp $30"


def test_a_private_seller_is_asked_little_and_nothing_twice(bench, settle):
    plate = "1/2 HP 115V 60HZ 1PH 1075 RPM CCWLE PSC belly band shaft 1/2 x 5 5.6 in dia OAO class B sleeve"
    job = bench.session.job.edited(plate_text=plate, listings=(Listing(text=SCRATCHED),))
    bench.session.edit("test", job)
    settle(bench)
    page = bench.pages[MONEY]
    bench.window.go_to(MONEY)
    few = [row.question.field for row in page.questions.rows]
    assert len(few) <= 4
    assert "What does the plate say" not in page.message.text()
    page.more.click()
    every = [row.question.field for row in page.questions.rows]
    assert len(every) == len(few) + page.questions.left_out
    assert set(few) < set(every)
    page.more.click()
    assert page.message.text().count("?") <= 4
    page.copy_message.click()
    assert QGuiApplication.clipboard().text() == page.message.text()
    assert page.copy_message.text() == "Copied"
    field = page.questions.rows[0].question.field
    page.asked.selectRow(0)
    page.unknown.click()
    settle(bench)
    assert bench.session.job.listings[0].corrections[field].withdrawn
    assert field not in [row.question.field for row in page.questions.rows]
    assert page.trouble.text() == ""


def test_what_cannot_be_an_answer_is_said_once(bench, settle):
    job = bench.session.job.edited(plate_text="1/2 HP 115V CCWLE", listings=(Listing(text="fan motor"),))
    bench.session.edit("test", job)
    settle(bench)
    page = bench.pages[MONEY]
    at = [row.question.field for row in page.questions.rows].index("volts")
    page.asked.selectRow(at)
    page.answer.setText("purple")
    page.answer.returnPressed.emit()
    assert page.trouble.text().casefold().count("volts:") == 1
