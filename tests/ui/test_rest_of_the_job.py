"""The rest of the job in real windows: which part failed, arrival, sheet, proof run, worth, papers."""

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from matcher.arrival.section import with_bought
from matcher.job import Fallback, Job, Listing
from matcher.job.listing import Reading
from matcher.motor import Offer
from matcher.record import Mark
from matcher.rest import rest_of
from matcher.sheet import as_html
from ui.bench import ARRIVAL, MONEY, SIDE_BY_SIDE, SWAP_PROOF
from ui.curve_picture import nice_step
from ui.paper_view import PaperView, save_pdf
from ui.rest_worker import RestWorker

TODAY = date(2030, 4, 20)
FACTS: dict[str, object] = {
    "brand": "Velmarrow",
    "part_number": "VM-48-3075B",
    "motor_type": "psc",
    "power_hp": 0.5,
    "volts": "208-230",
    "phase": 1,
    "hertz": "60",
    "amps": [3.4],
    "rpm": [1075, 825],
    "speeds": 2,
    "turn": "ccw",
    "seen_from": "lead_end",
    "shaft_diameter_in": 0.5,
    "shaft_length_in": 5.0,
    "body_diameter_in": 5.625,
    "mounting": ["band"],
    "capacitor_uf": 7.5,
    "leads": True,
}
OFFER = Offer.model_validate(
    FACTS
    | {"brand": "Ossenby", "part_number": "OB-5107", "price": 55, "shipping": 12, "currency": "USD"}
    | {"return_days": 30, "return_shipping": "buyer", "condition": "used"}
)
TITLE = "Ossenby <b>OB-5107</b> motor"
LISTING = Listing(
    title=TITLE,
    text="1/2 hp, shaft 1/2 in",
    reading=Reading(facts=OFFER, where={"shaft_diameter_in": Mark(source="text", span=(14, 17), said="1/2")}),
)


def old_job(**more: object) -> Job:
    job = Job(name="Attic unit", listings=(LISTING,), fallback=Fallback(price=1180))
    for name, value in (FACTS | more).items():
        job = job.with_given(name, value)
    return job.with_site("supply_volts", 230)


@pytest.fixture
def delivered(bench, settle):
    """A window on a job whose motor was bought and delivered, on a known day."""
    RestWorker.of(bench.session).clock = lambda: TODAY
    bench.session.open(old_job())
    settle(bench)
    page = bench.pages[ARRIVAL]
    bench.window.go_to(ARRIVAL)
    page.dates.listing.setCurrentIndex(1)
    page.dates.listing.activated.emit(1)
    settle(bench)
    for name, text in (("bought", "1 Apr 2030"), ("delivered", "8 Apr 2030")):
        QTest.keyClicks(page.dates.edits[name], text)
    settle(bench)
    return bench


def rail_words(bench, stage: int) -> str:
    return bench.window.rail.item(stage).toolTip()


def type_measured(bench, settle, field: str, text: str):
    row = bench.pages[ARRIVAL].list.rows[field]
    row.edit.setFocus()
    row.edit.selectAll()
    QTest.keyClicks(row.edit, text)
    settle(bench)
    return row


def test_before_anything_is_bought_the_page_says_what_to_do(bench, settle):
    page = bench.pages[ARRIVAL]
    bench.session.open(old_job())
    settle(bench)
    assert page.below.isHidden()
    assert "say above which of the listings" in page.empty.text()
    assert rail_words(bench, ARRIVAL) == "nothing bought yet"


def test_the_day_it_must_go_back_stands_in_large_and_in_the_rail(delivered):
    page = delivered.pages[ARRIVAL]
    assert page.day.text() == "Send it back by Fri 3 May 2030: 13 days left."
    assert "end on Wed 8 May 2030" in page.says.text()
    assert rail_words(delivered, ARRIVAL) == "send back by Fri 3 May 2030"


@pytest.mark.parametrize(
    ("name", "text", "words", "rail"),
    [
        ("delivered", "1 Jan 2031", "lies in the future", "dates to mend"),
        ("transit_days", "-3", "'-3' can't be", "send back by Fri 3 May 2030"),
        ("transit_days", "400", "60 at most", "send back by Fri 3 May 2030"),
    ],
)
def test_a_wrong_entry_is_told_once_it_is_finished_though_the_keyboard_stays(
    delivered, settle, name, text, words, rail
):
    page = delivered.pages[ARRIVAL]
    edit = page.dates.edits[name]
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, text[:1])
    settle(delivered)
    assert not page.dates.trouble.isVisible()
    QTest.keyClicks(edit, text[1:])
    QTest.keyClick(edit, Qt.Key.Key_Return)
    settle(delivered)
    assert edit.hasFocus()
    assert words in page.dates.trouble.text()
    assert page.dates.trouble.isVisible()
    assert rail_words(delivered, ARRIVAL) == rail


def test_the_days_are_counted_anew_when_the_calendar_turns(delivered, settle):
    worker = RestWorker.of(delivered.session)
    worker.clock = lambda: date(2030, 5, 3)
    worker.look_at_clock()
    settle(delivered)
    assert delivered.pages[ARRIVAL].day.text() == "Send it back today, Fri 3 May 2030, or keep it."


def test_the_verdict_moves_as_one_types_and_the_note_cites_the_listing(delivered, settle):
    page = delivered.pages[ARRIVAL]
    row = type_measured(delivered, settle, "shaft_diameter_in", "5/8")
    assert page.verdict.before.accessibleName() == "Fits"
    assert page.verdict.after.accessibleName() == "Won't fit"
    assert row.mark.text() == "differs"
    assert page.verdict.advice.text() == "Send it back."
    assert 'the listing says "1/2" (1/2 in); it measures 5/8 in.' in page.note.toPlainText()
    page.copy.click()
    assert "measures 5/8 in" in QGuiApplication.clipboard().text()
    type_measured(delivered, settle, "shaft_diameter_in", "0.5")
    assert page.verdict.after.accessibleName() == "Fits"
    assert page.note.toPlainText() == ""


def test_ticking_the_box_says_measured_as_listed_and_unticking_takes_it_back(delivered, settle):
    row = delivered.pages[ARRIVAL].list.rows["shaft_diameter_in"]
    QTest.mouseClick(row.box, Qt.MouseButton.LeftButton)
    settle(delivered)
    assert delivered.session.job.arrival["measured"] == {"shaft_diameter_in": "1/2"}
    assert row.edit.text() == "1/2"
    QTest.mouseClick(row.box, Qt.MouseButton.LeftButton)
    settle(delivered)
    assert delivered.session.job.arrival["measured"] == {}


def test_everything_as_listed_is_kept(delivered, settle):
    page = delivered.pages[ARRIVAL]
    for row in page.list.rows.values():
        if not row.box.isHidden():
            QTest.mouseClick(row.box, Qt.MouseButton.LeftButton)
    settle(delivered)
    left = [name for name, row in page.list.rows.items() if row.box.isHidden() and row.fact.font().bold()]
    for name, text in (("shaft_ends", "1"), ("shaft_flats", "1"), ("plug_pins", "")):
        if name in left and text:
            delivered.pages[ARRIVAL].list.rows[name].measured.emit(name, text)
    settle(delivered)
    assert page.verdict.advice.text() == "Keep it."
    page.decision.buttons["keep"].click()
    settle(delivered)
    assert rail_words(delivered, ARRIVAL) == "kept"


def test_what_goes_back_is_recommended_nowhere(delivered, settle):
    pages = delivered.pages
    type_measured(delivered, settle, "shaft_diameter_in", "5/8")
    assert rail_words(delivered, SIDE_BY_SIDE) == "1 worth trying"
    pages[ARRIVAL].decision.buttons["send_back"].click()
    settle(delivered)
    name = "Ossenby OB-5107"
    assert rail_words(delivered, SIDE_BY_SIDE) == "1 going back"
    assert pages[SIDE_BY_SIDE].side.plain()[1][-1] == "Fits, goes back"
    assert pages[MONEY].sentence.text().startswith("Nothing here is worth trying")
    assert pages[MONEY].beside.text() == f"{name} goes back: it is not in the plan."
    assert pages[MONEY].questions.rows == []
    assert pages[ARRIVAL].dates.listing.currentText() == f"Fits, goes back: {name}"
    pages[ARRIVAL].decision.buttons["keep"].click()
    settle(delivered)
    assert rail_words(delivered, SIDE_BY_SIDE) == "one is kept"
    assert rail_words(delivered, MONEY) == "nothing left to try"
    assert pages[MONEY].sentence.text() == f"Nothing is left to try: {name} was bought and is kept."


def test_what_cannot_be_stays_in_its_box_with_the_reason(delivered, settle):
    row = type_measured(delivered, settle, "shaft_length_in", "long")
    assert "is no number" in row.trouble.text()
    assert row.edit.text() == "long"
    page = delivered.pages[ARRIVAL]
    edit = page.dates.edits["delivered"]
    edit.selectAll()
    QTest.keyClicks(edit, "1 Mar 2030")
    settle(delivered)
    QTest.keyClick(edit, Qt.Key.Key_Return)
    assert "before the purchase" in page.dates.trouble.text()
    assert edit.text() == "1 Mar 2030"
    assert page.verdict.after.accessibleName() == "Fits"


def test_nothing_is_said_as_measured_before_it_is(delivered, settle):
    page = delivered.pages[ARRIVAL]
    assert page.verdict.after.isHidden()
    type_measured(delivered, settle, "shaft_diameter_in", "1/2")
    assert not page.verdict.after.isHidden()
    assert page.verdict.advice.text() == "Measure on."
    page.decision.buttons["keep"].click()
    settle(delivered)
    assert page.verdict.advice.isHidden()
    assert page.verdict.why.text() == ""


def test_a_day_without_its_year_is_kept_with_it(delivered, settle):
    day = RestWorker.of(delivered.session).day()
    edit = delivered.pages[ARRIVAL].dates.edits["delivered"]
    delivered.window.go_to(ARRIVAL)
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, "today")
    settle(delivered)
    assert delivered.session.job.arrival["delivered"] == f"{day.day} {day:%b %Y}"
    assert edit.text() == "today"  # not written over under the fingers


def test_a_wheel_that_was_bought_is_named_and_gets_no_sheet(delivered, settle):
    wheel = LISTING.corrected("item", "part")
    delivered.session.edit("a wheel", delivered.session.job.with_listing(wheel))
    settle(delivered)
    page = delivered.pages[ARRIVAL]
    assert page.dates.listing.currentText().startswith("Not a motor: ")
    sheet = delivered.pages[SWAP_PROOF].sheet
    delivered.pages[SWAP_PROOF].tabs.setCurrentWidget(sheet)
    assert "is no motor" in sheet.empty.text()
    assert not sheet.empty.isHidden()
    assert sheet.paper.isHidden()


def test_millimetres_are_understood(delivered, settle):
    delivered.desk.units.use_metric(True)
    row = type_measured(delivered, settle, "shaft_diameter_in", "12.7")
    assert row.unit.text() == "mm"
    assert row.mark.text() == ""
    row = type_measured(delivered, settle, "shaft_diameter_in", "16")
    assert row.mark.text() == "differs"
    delivered.desk.units.use_metric(False)
    assert row.edit.text() in ("16", "16 mm")


def test_a_bad_bearing_and_pictures_reach_the_note(delivered, settle):
    page = delivered.pages[ARRIVAL]
    page.looks.rows["spins"].buttons["bad"].click()
    page.add_photos(["/somewhere/else/plate.jpg"])
    settle(delivered)
    assert "does not turn freely by hand" in page.note.toPlainText()
    assert "plate.jpg" in page.note.toPlainText()
    assert page.photos.text() == "plate.jpg"


def test_every_step_can_be_taken_back(delivered, settle):
    type_measured(delivered, settle, "shaft_diameter_in", "5/8")
    delivered.session.history.undo()
    settle(delivered)
    assert delivered.pages[ARRIVAL].verdict.after.accessibleName() == "Fits"


def test_the_listing_s_words_are_shown_as_words(delivered, settle):
    page = delivered.pages[ARRIVAL]
    assert page.dates.listing.currentText() == "Fits: Ossenby OB-5107"
    nameless = LISTING.withdrawn("part_number")
    delivered.session.edit("no number", delivered.session.job.with_listing(nameless))
    settle(delivered)
    assert page.dates.listing.currentText() == f"Fits: {TITLE}"
    assert page.list.rows["shaft_diameter_in"].listed.textFormat() == Qt.TextFormat.PlainText


def test_another_job_shows_nothing_of_the_one_before(delivered, settle):
    delivered.session.open(Job())
    assert RestWorker.of(delivered.session).rest is None
    settle(delivered)
    assert delivered.pages[ARRIVAL].below.isHidden()
    assert rail_words(delivered, SWAP_PROOF) == "which part failed?"


def test_worn_bearings_change_the_verdict_of_a_motor_without_module(bench, settle):
    ecm = {"brand": "Velmarrow", "motor_type": "ecm_airflow", "control_signal": "serial"}
    offer = Offer.model_validate(FACTS | ecm | {"capacitor_uf": None, "module": "without"})
    listing = Listing(title="no module", reading=Reading(facts=offer))
    job = old_job(**ecm, capacitor_uf=None).edited(listings=(listing,))
    bench.session.open(job)
    settle(bench)
    bench.window.go_to(SWAP_PROOF)
    loss = next(f.loss for f in bench.session.answers.best_first[0].judgement.findings if f.check == "module")
    page = bench.pages[SWAP_PROOF]
    assert page.bench.says.text().startswith("Not settled, next test: Did it still run")
    page.bench.rows["ran_until_now"].choice.buttons["yes"].click()
    settle(bench)
    page.bench.rows["grinds"].choice.buttons["yes"].click()
    settle(bench)
    assert page.bench.says.text() == "The motor has failed."
    assert "old module: good" in page.bench.means.text()
    now = next(f.loss for f in bench.session.answers.best_first[0].judgement.findings if f.check == "module")
    assert now < loss
    page.bench.rows["grinds"].choice.buttons["yes"].click()  # once more takes it back
    settle(bench)
    assert bench.session.job.wanted().site.module_health is None


def test_readings_are_typed_and_a_bad_one_says_why(delivered, settle):
    page = delivered.pages[SWAP_PROOF]
    delivered.window.go_to(SWAP_PROOF)
    row = page.bench.rows["capacitor_uf"]
    QTest.keyClicks(row.edit, "6.2x")
    settle(delivered)
    assert "isn't a reading" in row.trouble.text()
    row.edit.selectAll()
    QTest.keyClicks(row.edit, "6.2")
    settle(delivered)
    assert row.trouble.isHidden()
    assert page.bench.says.text() == "The run capacitor has failed."


def test_half_a_reading_and_half_a_date_are_not_wrong_yet(bench, settle):
    job = old_job(motor_type="ecm_airflow")
    bench.session.open(with_bought(job, LISTING.id))
    settle(bench)
    bench.window.go_to(SWAP_PROOF)
    row = bench.pages[SWAP_PROOF].bench.rows["windings_ohm"]
    row.edit.setFocus()
    QTest.keyClicks(row.edit, "2.1 2.0")
    settle(bench)
    assert row.trouble.isHidden()
    QTest.keyClick(row.edit, Qt.Key.Key_Return)
    assert "isn't 3 reading" in row.trouble.text()
    bench.window.go_to(ARRIVAL)
    dates = bench.pages[ARRIVAL].dates
    dates.edits["delivered"].setFocus()
    QTest.keyClicks(dates.edits["delivered"], "8 Ap")
    settle(bench)
    assert dates.trouble.isHidden()


@pytest.fixture
def swap(delivered, settle):
    """The page of the swap, on the delivered job."""
    delivered.window.go_to(SWAP_PROOF)
    page = delivered.pages[SWAP_PROOF]

    def show(view):
        page.tabs.setCurrentWidget(view)
        settle(delivered)
        return page

    return show, page


def test_notes_stand_on_the_sheet_at_once(delivered, settle, swap):
    show, page = swap
    show(page.sheet)
    QTest.keyClicks(page.sheet.edits["band_position"], "2 1/4 in")
    settle(delivered)
    assert "2 1/4 in" in page.sheet.paper.paper.toPlainText()
    assert "Lock" in page.sheet.paper.html or "lock out" in page.sheet.paper.html


def test_a_step_beside_its_blank_follows_the_facts(delivered, settle, swap):
    show, page = swap
    show(page.sheet)
    counted = "taps_in_use"
    assert "how many of 2 isn't known" in page.sheet.edits[counted].accessibleName()
    assert delivered.session.try_edit("counting", lambda job: job.with_site(counted, 1)) == ""
    settle(delivered)
    assert "(1 in use)" in page.sheet.edits[counted].accessibleName()


def test_a_blank_s_hint_is_the_blank_whole(delivered, settle, swap):
    show, page = swap
    show(page.sheet)
    assert page.sheet.edits["inlet_gap"].placeholderText() == "___ in / ___ in"
    assert page.sheet.edits["turn"].placeholderText() == ""


def test_the_sheet_goes_to_a_pdf_of_at_most_two_pages(tmp_path: Path, swap):
    show, page = swap
    show(page.sheet)
    page.sheet.paper.save_to(tmp_path / "sheet.pdf")
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF")
    page.sheet.paper.save_to(tmp_path / "sheet.html")
    assert "<b>OB" not in (tmp_path / "sheet.html").read_text(encoding="utf-8")
    page.sheet.paper.save_to(tmp_path / "no such folder" / "sheet.pdf")
    assert "not saved" in page.sheet.paper.trouble.text()


@pytest.mark.parametrize(
    ("old", "new", "site"),
    [
        pytest.param({}, {"turn": "either", "speeds": 5, "shaft_length_in": 8.0}, {}, id="band"),
        pytest.param({"mounting": ["studs"]}, {}, {"outdoors": True}, id="studs outdoors"),
        pytest.param(
            {"motor_type": "ecm_airflow", "plug_pins": [5, 16], "leads": None},
            {"module": "without", "volts": "120/240"},
            {"module_health": "good"},
            id="ecm without module",
        ),
        pytest.param({"shaft_ends": 2, "mounting": ["lugs"]}, {"turn": "either"}, {}, id="two wheels"),
    ],
)
def test_every_sheet_fits_two_pages(
    qapp, tmp_path: Path, old: dict[str, object], new: dict[str, object], site: dict[str, object]
):
    listing = Listing(reading=Reading(facts=Offer.model_validate(OFFER.said() | old | new)))
    job = old_job(**old).edited(listings=(listing,))
    for name, value in site.items():
        job = job.with_site(name, value)
    sheet = rest_of(with_bought(job, listing.id), TODAY).sheet
    assert sheet is not None
    assert (
        save_pdf(tmp_path / "sheet.pdf", "sheet", as_html(sheet, job="A job with a name", day="2030-04-20"))
        <= 2
    )


def test_a_paper_loads_nothing(qtbot):
    view = PaperView("x")
    qtbot.addWidget(view)
    view.show_page('<p>a</p><img src="file:///etc/hostname"><img src="http://127.0.0.1:9/x.png">')
    assert view.paper.loadResource(2, "http://127.0.0.1:9/x.png") is None
    assert not view.paper.openLinks()


def enter(delivered, settle, form, **texts: str) -> None:
    for name, text in texts.items():
        edit = form.rows[name].edit
        edit.selectAll()
        QTest.keyClicks(edit, text)
    settle(delivered)


def test_a_proof_run_is_held_against_its_limits_and_drawn(delivered, settle, swap):
    show, page = swap
    show(page.proof)
    assert page.proof.picture.isHidden()
    enter(delivered, settle, page.proof.form, heater_watts="9600", rise_f="27", tons="3")
    assert "1,123 CFM from the heat rise" in page.proof.results._lines[0][1].text()
    assert page.proof.says.text() == "Proved, 1,123 CFM"
    enter(delivered, settle, page.proof.form, supply_static="0.3", return_static="-0.3", rpm="1060")
    assert not page.proof.picture.isHidden()
    assert "1060 rpm: 1,123 CFM at 0.60 in." in page.proof.picture.accessibleName()
    assert "825 rpm" in page.proof.picture.accessibleName()
    assert not page.proof.picture.grab().isNull()
    assert rail_words(delivered, SWAP_PROOF) == "look at it again, 1,123 CFM"


def test_an_impossible_measurement_is_refused_and_kept(delivered, settle, swap):
    show, page = swap
    show(page.proof)
    enter(delivered, settle, page.proof.form, heater_watts="9600", rise_f="-5", supply_static="40")
    form = page.proof.form
    assert "Heat rise: -5 F can't be" in form.rows["rise_f"].trouble.text()
    assert "40 in. w.c. can't be" in form.rows["supply_static"].trouble.text()
    assert (form.rows["rise_f"].edit.text(), form.rows["supply_static"].edit.text()) == ("-5", "40")
    assert page.proof.says.text() == "Nothing measured yet"


def test_only_the_chosen_heat_source_is_asked_for(delivered, settle, swap):
    show, page = swap
    show(page.proof)
    form = page.proof.form
    assert form.rows["furnace_output"].isHidden()
    form.choices["heat_source"].buttons["furnace"].click()
    settle(delivered)
    assert form.rows["heater_watts"].isHidden()
    assert not form.rows["furnace_output"].isHidden()


def test_was_it_worth_it(delivered, settle, swap):
    show, page = swap
    show(page.worth)
    assert page.worth.says.text() == "Nothing is saved yet: no proof run is in yet."
    assert page.worth.more.text() == "Spent so far: 67.00 USD, against a quote of 1,180.00."
    enter(delivered, settle, page.proof.form, heater_watts="9600", rise_f="27", tons="3")
    assert page.worth.says.text() == "It cost 1,113.00 USD less than the quote of 1,180.00."
    enter(delivered, settle, page.worth.form, hours="3", run_hours="2000", price_kwh="0.15")
    assert "371.00 USD for each of 3 hours" in page.worth.more.text()
    assert "power factor assumed" in page.worth.small.text()
    enter(delivered, settle, page.worth.form, hours="-3")
    assert page.worth.form.rows["hours"].trouble.text()


@pytest.mark.parametrize(
    ("arrival", "proof", "words"),
    [
        ({}, {}, "it isn't delivered yet"),
        ({"delivered": "8 Apr 2030"}, {}, "no proof run is in yet"),
        ({"delivered": "8 Apr 2030", "decision": "send_back"}, {}, "it goes back"),
        (
            {"delivered": "8 Apr 2030"},
            {"volts": "230", "amps": "9"},
            "isn't right yet",
        ),
        ({"delivered": "8 Apr 2030"}, {"heater_watts": "9600", "rise_f": "27", "tons": "3"}, ""),
    ],
)
def test_nothing_is_called_saved_before_the_motor_is_here_and_proved(arrival, proof, words):
    job = with_bought(old_job(), LISTING.id)
    job = job.edited(arrival=job.arrival | arrival, proof={"entries": proof}, worth={"hours": "3"})
    worth = rest_of(job, TODAY).worth
    assert words in worth.unproven
    told = " ".join(worth.says)
    assert ("less than the quote" in told) is (not words)
    assert ("for each of" in told) is (not words)
    assert ("Nothing is saved yet" in told) is bool(words)


def test_the_record_and_the_note_to_sign(delivered, settle, swap, tmp_path: Path):
    show, page = swap
    show(page.papers)
    assert "Record: Attic unit" in page.papers.paper.paper.toPlainText()
    page.papers.choice.buttons["note"].click()
    text = page.papers.paper.paper.toPlainText()
    assert "Ossenby OB-5107" in text
    assert "I have read this and take the substitute" in text
    page.papers.paper.save_to(tmp_path / "note.pdf")
    assert (tmp_path / "note.pdf").stat().st_size > 1000


@pytest.mark.parametrize(
    ("most", "wanted", "step"), [(2400, 6, 500), (1.1, 4, 0.5), (0.3, 4, 0.1), (5200, 6, 1000), (90, 6, 20)]
)
def test_axes_are_cut_at_round_figures(most: float, wanted: int, step: float) -> None:
    assert nice_step(most, wanted) == pytest.approx(step)


def test_cautions_stand_above_the_bench_the_proof_run_and_the_sizes(delivered, settle):
    page = delivered.pages[SWAP_PROOF]
    delivered.window.go_to(SWAP_PROOF)
    settle(delivered)
    assert page.bench.caution.isVisible()
    assert "run capacitor" in page.bench.caution.text()
    page.tabs.setCurrentWidget(page.proof)
    assert page.proof.caution.isVisible()
    old = delivered.pages[0]
    delivered.window.go_to(0)
    old.focus_field("shaft_diameter_in")
    assert old.how_to.caution.isVisible()
    old.focus_field("part_number")
    assert not old.how_to.caution.isVisible()


def test_the_list_of_jobs_says_what_must_go_back_and_when(delivered, qtbot, settle):
    delivered.session.flush()
    settle(delivered)
    delivered.new_job()
    settle(delivered)
    QTest.keySequence(delivered.window, "Ctrl+K")
    found = delivered.head.found
    qtbot.waitUntil(lambda: found.count() == 1 and found.item(0).text().startswith("send back by "))
    assert found.item(0).text().startswith("send back by Fri 3 May 2030 · Attic unit")


def test_without_listings_the_page_sends_one_there_first(bench, settle):
    bench.window.go_to(ARRIVAL)
    settle(bench)
    assert "under Listings first" in bench.pages[ARRIVAL].empty.text()
