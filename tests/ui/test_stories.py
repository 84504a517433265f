"""Whole stories in real windows, by keyboard and mouse."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from matcher.record import Origin
from ui.bench import LISTINGS, MONEY, OLD_MOTOR, SIDE_BY_SIDE, STOCK
from ui.models.facts import VALUE
from ui.models.pile import STATE

PLATE = "Velmarrow VM-1 1/2 HP 208-230V 60HZ 1PH 1075 RPM 3.4A CCWLE PSC belly band shaft 1/2 x 5 5.6 in dia"
GOOD = "Krellin KR-2 1/2 HP 208-230V 60HZ 1PH 1075 RPM CCWLE PSC belly band 1/2 in shaft used $50 ship $10"
SILENT = "Ossenby OB-7 1/2 HP 208-230V 60HZ 1PH 1075 RPM PSC belly band 1/2 in shaft used $35 free shipping"
TWICE = (
    "Tarrowick TW-3 1/2 HP 208-230V 60HZ 1PH 1075 RPM CCWLE PSC belly band 1/2 in shaft $20. Rotation CWLE"
)


def press(widget, *keys: str) -> None:
    for key in keys:
        QTest.keySequence(widget, key)


def paste(bench, text: str) -> None:
    QGuiApplication.clipboard().setText(text)
    bench.window.go_to(LISTINGS)
    bench.pages[LISTINGS].paste()


def is_lit(selection) -> bool:
    return selection.format.background().style() != Qt.BrushStyle.NoBrush


@pytest.fixture
def job_with_listings(bench, settle, qtbot):
    """A window with a plate typed and three listings pasted one after another."""
    bench.plate.box.setFocus()
    QTest.keyClicks(bench.plate.box, PLATE)
    settle(bench)
    for count, text in enumerate((GOOD, SILENT, TWICE), start=1):
        paste(bench, text)
        qtbot.waitUntil(lambda count=count: len(bench.session.job.listings) == count)
    settle(bench)
    return bench


def test_a_homeowner_types_the_plate_and_the_form_fills(bench, settle):
    page = bench.pages[OLD_MOTOR]
    QTest.keyClicks(bench.plate.box, "1/2 HP 208-230V 1075 RPM ccwle 48Y serial 88123")
    settle(bench)
    assert page.edits["power_hp"].editor.text() == "1/2"
    assert page.edits["volts"].editor.text() == "208-230"
    assert page.edits["turn"].editor.currentData() == "ccw"
    assert "88123" in bench.plate._left.text()
    assert page.missing.list.count() > 0
    words = page.missing.list.item(0).text()
    QTest.mouseClick(
        page.missing.list.viewport(),
        Qt.MouseButton.LeftButton,
        pos=page.missing.list.visualItemRect(page.missing.list.item(0)).center(),
    )
    focused = QApplication.focusWidget()
    assert focused is not None
    assert focused.accessibleName() == words.split(":")[0]


def test_a_field_is_typed_measured_in_millimetres_and_taken_back(bench, settle):
    page = bench.pages[OLD_MOTOR]
    edit = page.edits["shaft_diameter_in"]
    QTest.mouseClick(page.in_mm, Qt.MouseButton.LeftButton)
    edit.setFocus()
    QTest.keyClicks(edit.editor, "12.7")
    press(edit.editor, "Return")
    settle(bench)
    given = bench.session.job.given["shaft_diameter_in"]
    assert (given.value, given.origin) == (0.5, Origin.MEASURED)
    QTest.mouseClick(page.in_mm, Qt.MouseButton.LeftButton)
    assert edit.editor.text() == "1/2"
    press(bench.window, "Ctrl+Z")
    settle(bench)
    assert bench.session.job.given == {}
    assert edit.editor.text() == ""
    press(bench.window, "Ctrl+Shift+Z")
    settle(bench)
    assert edit.editor.text() == "1/2"


def test_a_wrong_value_says_so_beside_its_field_until_it_is_mended(bench, settle):
    edit = bench.pages[OLD_MOTOR].edits["body_length_in"]
    edit.setFocus()
    QTest.keyClicks(edit.editor, "5 5/")
    press(edit.editor, "Return")
    assert "write it like" in edit.trouble.text()
    assert edit.trouble.isVisible()
    edit.editor.selectAll()
    QTest.keyClicks(edit.editor, "5 5/8")
    press(edit.editor, "Return")
    settle(bench)
    assert not edit.trouble.isVisible()
    assert bench.session.job.given["body_length_in"].value == 5.625


def test_pasted_listings_are_judged_side_by_side(job_with_listings):
    bench = job_with_listings
    side = bench.pages[SIDE_BY_SIDE].side
    assert [one.judgement.verdict for one in side.candidates] == ["fits", "ask", "ask"]
    assert bench.window.rail.item(LISTINGS).data(Qt.ItemDataRole.AccessibleTextRole) == (
        "Listings: 3 listings, 1 conflict"
    )
    press(bench.window, "Ctrl+3")
    page = bench.pages[SIDE_BY_SIDE]
    assert bench.window.pages.currentWidget() is page
    QTest.keyClicks(page.seek, "krellin")
    assert [one.id for one in side.candidates] == [bench.session.job.listings[0].id]
    assert page.why.text()


def test_a_fact_lights_its_words_and_words_find_their_fact(job_with_listings):
    bench, page = job_with_listings, job_with_listings.pages[LISTINGS]
    page.choose(bench.session.job.listings[0].id)
    page.point_at("volts")
    lit = [one for one in page.words.extraSelections() if is_lit(one)]
    assert [one.cursor.selectedText() for one in lit] == ["208-230V"]
    cursor = page.words.document().find("belly band")
    place = page.words.cursorRect(cursor).center() - QPoint(20, 0)
    QTest.mouseClick(page.words.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert page.facts.rows[page.table.currentIndex().row()] == "mounting"


def test_a_conflict_is_settled_by_a_button(job_with_listings, settle):
    bench, page = job_with_listings, job_with_listings.pages[LISTINGS]
    page.choose(bench.session.job.listings[2].id)
    from PySide6.QtWidgets import QPushButton

    buttons = {one.text(): one for one in page.conflicts.findChildren(QPushButton)}
    assert set(buttons) == {"clockwise", "counter-clockwise", "Show"}
    QTest.mouseClick(buttons["counter-clockwise"], Qt.MouseButton.LeftButton)
    settle(bench)
    assert bench.session.job.listings[2].corrections["turn"].value == "ccw"
    assert not page.conflicts.isVisible()


def test_what_a_picture_shows_and_what_the_seller_says_have_their_origin(job_with_listings, settle):
    bench, page = job_with_listings, job_with_listings.pages[LISTINGS]
    silent = bench.session.job.listings[1].id
    page.choose(silent)
    page.given.given.emit("shaft_flats", "1", Origin.SEEN)
    settle(bench)
    page.given.choose("turn")
    QTest.keyClicks(page.given._answer, "ccw")
    press(page.given._answer, "Return")
    settle(bench)
    page.given.choose("seen_from")
    QTest.keyClicks(page.given._answer, "lead_end")
    press(page.given._answer, "Return")
    settle(bench)
    given = bench.session.job.listing(silent).corrections
    assert {name: one.origin for name, one in given.items()} == {
        "shaft_flats": Origin.SEEN,
        "turn": Origin.ANSWERED,
        "seen_from": Origin.ANSWERED,
    }
    assert bench.session.answers.weighed[silent].judgement.verdict == "fits"


def test_a_value_is_corrected_in_its_cell_and_survives_reading_again(job_with_listings, settle):
    bench, page = job_with_listings, job_with_listings.pages[LISTINGS]
    first = bench.session.job.listings[0]
    page.choose(first.id)
    page.facts.setData(page.facts.index(page.facts.row_of("power_hp"), VALUE), "1/3")
    settle(bench)
    again = bench.session.job.listing(first.id).read_again()
    assert again.record().facts.power_hp == pytest.approx(1 / 3)
    assert again.record().where["power_hp"].origin is Origin.TYPED


def test_selected_words_become_a_fact(job_with_listings, settle):
    bench, page = job_with_listings, job_with_listings.pages[LISTINGS]
    page.choose(bench.session.job.listings[1].id)
    cursor = page.words.document().find("OB-7")
    page.words.setTextCursor(cursor)
    page.words_are("module_number")
    settle(bench)
    assert bench.session.job.listings[1].corrections["module_number"].value == "OB-7"


def test_a_pasted_split_is_corrected(bench, settle, qtbot):
    page = bench.pages[LISTINGS]
    paste(bench, "1/2 HP motor $20 then 1/3 HP motor $30")
    qtbot.waitUntil(lambda: bool(bench.session.job.listings))
    settle(bench)
    page.words.setTextCursor(page.words.document().find("1/3"))
    cursor = page.words.textCursor()
    cursor.setPosition(cursor.selectionStart())
    page.words.setTextCursor(cursor)
    page.split_here()
    settle(bench)
    assert [one.record().facts.power_hp for one in bench.session.job.listings] == [0.5, 0.3333]
    page.choose(bench.session.job.listings[0].id)
    page.join_next()
    settle(bench)
    assert len(bench.session.job.listings) == 1


def test_listings_come_by_ctrl_v_and_go_by_del_on_their_list_alone(bench, settle, qtbot):
    page = bench.pages[LISTINGS]
    bench.window.go_to(LISTINGS)
    page.list.setFocus()
    QGuiApplication.clipboard().setText("Fan motor 1/2 HP 115V $20")
    press(page.list, "Ctrl+V")
    qtbot.waitUntil(lambda: len(bench.session.job.listings) == 1)
    settle(bench)
    page.table.setFocus()
    QTest.keyClick(page.table, Qt.Key.Key_Delete)
    assert len(bench.session.job.listings) == 1
    page.list.setFocus()
    QTest.keyClick(page.list, Qt.Key.Key_Delete)
    assert not bench.session.job.listings


def test_the_same_paste_adds_nothing_and_a_mixture_adds_what_is_new(bench, settle, qtbot):
    page, first, second, third = bench.pages[LISTINGS], GOOD, SILENT, TWICE
    for texts, count, said in (
        ((first, second), 2, ""),
        ((first, second), 2, "All 2 are in this job already; nothing was added"),
        ((first,), 2, "It is in this job already; nothing was added"),
        ((second, third), 3, "1 of 2 stand in this job already and were not added again"),
    ):
        paste(bench, "\n\n---\n\n".join(texts))
        settle(bench)
        qtbot.waitUntil(lambda said=said: page.trouble.text() == said)
        qtbot.waitUntil(lambda count=count: len(bench.session.job.listings) == count)
    settle(bench)
    assert page.current() is bench.session.job.listings[2]
    assert [one.record().facts.part_number for one in bench.session.job.listings] == ["KR-2", "OB-7", "TW-3"]


def test_hostile_words_are_shown_and_never_obeyed(bench, settle, qtbot):
    page = bench.pages[LISTINGS]
    paste(bench, "<img src='file:///etc/passwd'><b>1/2 HP</b> \u202e motor \U0001f525 208-230V $20")
    qtbot.waitUntil(lambda: bool(bench.session.job.listings))
    settle(bench)
    assert "<b>1/2 HP</b>" in page.words.toPlainText()
    page.point_at("volts")
    lit = [one.cursor.selectedText() for one in page.words.extraSelections() if is_lit(one)]
    assert lit == ["208-230V"]


def test_the_plan_asks_for_the_fallback_then_says_what_to_try(job_with_listings, settle):
    bench, page = job_with_listings, job_with_listings.pages[MONEY]
    bench.window.go_to(MONEY)
    assert "pay if nothing here works" in page.sentence.text()
    page.fallback.price.setFocus()
    QTest.keyClicks(page.fallback.price, "400")
    press(page.fallback.price, "Return")
    settle(bench)
    assert page.sentence.text().startswith("Try ")
    assert "instead of 400 USD" in page.sentence.text()
    page.copy()
    assert QGuiApplication.clipboard().text().startswith("Hello")
    before = bench.session.answers.weighed
    page.figures.setData(page.figures.index(3, 1), "0")
    settle(bench)
    assert bench.session.job.settings_changes
    assert bench.session.answers.weighed is not before
    page.figures.setData(page.figures.index(3, 1), "-5")
    assert "0 or more" in page.figures_trouble.text()


def test_the_saved_jobs_are_offered_at_the_start_and_brought_by_a_click(open_bench, tmp_path, settle, qtbot):
    path = tmp_path / "kept.db"
    first = open_bench(store=path)
    assert first.head.found.isHidden()  # there is none yet
    QTest.keyClicks(first.plate.box, PLATE)
    settle(first)
    first.window.close()
    second = open_bench(store=path)
    head = second.head
    qtbot.waitUntil(head.found.isVisible)
    assert "VM-1" in head.found.item(0).text()
    assert head.found.currentItem() is None  # nothing is chosen by itself
    assert head.found.height() >= 3 * head.found.fontMetrics().height()  # its plate takes three lines
    assert head.found.verticalScrollBar().maximum() == 0
    QTest.keyClicks(second.plate.box, "1/3 HP")  # a new job was begun
    settle(second)
    assert head.found.isHidden()
    QTest.mouseClick(head.seek, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(head.found.isVisible)
    row = next(at for at in range(head.found.count()) if "VM-1" in head.found.item(at).text())
    rect = head.found.visualItemRect(head.found.item(row))
    QTest.mouseClick(head.found.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    qtbot.waitUntil(lambda: second.session.job.plate_text == PLATE)
    settle(second)
    assert head.found.isHidden()


def test_a_job_is_saved_by_itself_and_found_again_after_a_restart(open_bench, tmp_path, settle, qtbot):
    first = open_bench(tmp_path / "kept.db")
    QTest.keyClicks(first.plate.box, PLATE)
    QTest.keyClicks(first.head.name, "Barn fan")
    settle(first)
    saved = first.session.job.id
    first.window.close()
    second = open_bench(tmp_path / "kept.db")
    press(second.window, "Ctrl+K")
    qtbot.waitUntil(lambda: second.head.found.count() > 0 and not second.head.found.isHidden())
    QTest.keyClicks(second.head.seek, "VM1")
    qtbot.waitUntil(lambda: not second.work.is_busy and second.head.found.count() == 1)
    press(second.head.seek, "Return")
    qtbot.waitUntil(lambda: second.session.job.id == saved)
    settle(second)
    assert (second.session.job.name, second.plate.box.toPlainText()) == ("Barn fan", PLATE)


TABLE = "title,hp,volts,phase,hz,rpm,rotation,shaft diameter,mounting,price\n" + "".join(
    f"Fan motor {n},1/2,208-230,1,60,1075,{'CCWLE' if n % 3 else 'CWLE'},1/2,belly band,{20 + n}\n"
    for n in range(60)
)


def test_a_clerk_ranks_the_saved_stock_in_under_ten_keystrokes(bench, settle, qtbot, tmp_path):
    page = bench.pages[STOCK]
    table = tmp_path / "stock.csv"
    table.write_text(TABLE, encoding="utf-8")
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=60_000)
    page.open_files([table])
    qtbot.waitUntil(lambda: page.model.total == 60 and page._task is None, timeout=60_000)
    page.bar.keep.click()
    qtbot.waitUntil(lambda: "60 offers kept" in page.done.text(), timeout=60_000)

    keys = ["Ctrl+N"]
    press(bench.window, "Ctrl+N")
    QTest.keyClicks(QApplication.focusWidget(), PLATE)
    keys.append("Ctrl+Return")
    press(QApplication.focusWidget(), "Ctrl+Return")
    qtbot.waitUntil(
        lambda: page._task is None and bool(page.model.rows) and page.model.rows[0].verdict == "fits",
        timeout=60_000,
    )
    assert bench.window.pages.currentWidget() is page
    assert len(keys) < 10
    keys.append("Return")
    press(page.table, "Return")
    qtbot.waitUntil(lambda: len(bench.session.job.listings) == 1, timeout=60_000)


def test_a_lot_is_stopped_and_filtered(bench, qtbot, tmp_path):
    page = bench.pages[STOCK]
    table = tmp_path / "lot.csv"
    table.write_text(TABLE * 40, encoding="utf-8")
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=60_000)
    page.open_files([table])
    QTest.mouseClick(page.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not bench.work.is_busy, timeout=60_000)
    assert page.model.total == 0
    table.write_text(TABLE, encoding="utf-8")
    page.open_files([table])
    qtbot.waitUntil(lambda: page.model.total == 60, timeout=60_000)
    QTest.keyClicks(page.seek, "motor 59")
    assert [row.name for row in page.model.rows] == ["Fan motor 59"]
    qtbot.waitUntil(lambda: page._task is None, timeout=60_000)


def test_a_missing_file_is_one_line_where_it_arose(bench, qtbot, tmp_path):
    page = bench.pages[LISTINGS]
    bench.window.go_to(LISTINGS)
    page.take_files([tmp_path / "gone.txt"])
    qtbot.waitUntil(page.trouble.isVisible)
    assert "gone.txt" in page.trouble.text()
    assert "\n" not in page.trouble.text()


def test_pictures_are_kept_with_their_listing_and_shown_large(job_with_listings, settle, qtbot, tmp_path):
    from PySide6.QtGui import QColor, QImage

    bench, page = job_with_listings, job_with_listings.pages[LISTINGS]
    image = QImage(40, 30, QImage.Format.Format_RGB32)
    image.fill(QColor("#3060c0"))
    assert image.save(str(tmp_path / "shaft.png"))
    (tmp_path / "not.png").write_bytes(b"no picture at all")
    first = bench.session.job.listings[0].id
    page.choose(first)
    page.take_files([tmp_path / "shaft.png", tmp_path / "not.png"])
    qtbot.waitUntil(lambda: len(bench.session.job.listing(first).pictures) == 2)
    settle(bench)
    names = ["shaft.png", "not.png: no picture, or too large to show"]
    qtbot.waitUntil(lambda: [page.pictures.item(row).text() for row in range(2)] == names)
    assert [page.pictures.item(row).icon().isNull() for row in range(2)] == [False, True]
    page.pictures.itemActivated.emit(page.pictures.item(0))
    qtbot.waitUntil(lambda: page.views.currentWidget() is page.large and not bench.work.is_busy)
    press(page.large, "Escape")
    assert page.views.currentWidget() is page.words


def test_a_currency_that_is_none_is_one_clear_line_and_does_not_stay(job_with_listings, settle):
    bench, page = job_with_listings, job_with_listings.pages[MONEY]
    bench.window.go_to(MONEY)
    page.fallback.entered.emit("400", "USD", "quote")
    settle(bench)
    page.fallback.currency.setFocus()
    page.fallback.currency.selectAll()
    QTest.keyClicks(page.fallback.currency, "xx")
    QTest.keyClick(page.fallback.currency, Qt.Key.Key_Return)
    assert page.fallback.trouble.text() == "'XX' is no currency; write its three letters, such as USD"
    assert page.fallback.currency.text() == "USD"
    assert bench.session.job.fallback.currency == "USD"
    page.fallback.currency.selectAll()
    QTest.keyClicks(page.fallback.currency, "eur")
    QTest.keyClick(page.fallback.currency, Qt.Key.Key_Return)
    assert not page.fallback.trouble.isVisible()
    assert bench.session.job.fallback.currency == "EUR"


def test_against_an_empty_plate_nothing_is_judged(bench, settle, qtbot):
    paste(bench, GOOD)
    qtbot.waitUntil(lambda: len(bench.session.job.listings) == 1)
    page = bench.pages[MONEY]
    page.fallback.entered.emit("400", "USD", "quote")
    bench.window.go_to(SIDE_BY_SIDE)
    settle(bench)
    side, rail = bench.pages[SIDE_BY_SIDE], bench.window.rail
    assert not side.table.isVisible()
    assert "type the plate" in side.empty.line.text()
    assert [rail.item(stage).toolTip() for stage in (SIDE_BY_SIDE, MONEY)] == ["type the plate first"] * 2
    assert bench.pages[LISTINGS].pile.index(0).data(STATE).startswith("Not judged yet")
    assert "type the plate" in page.sentence.text()
    bench.window.go_to(OLD_MOTOR)
    QTest.keyClicks(bench.plate.box, PLATE)
    settle(bench)
    bench.window.go_to(SIDE_BY_SIDE)
    assert side.table.isVisible()
    assert not side.empty.isVisible()


def test_many_listings_are_read_with_a_bar_and_stopped(bench, qtbot, tmp_path):
    page, table = bench.pages[LISTINGS], tmp_path / "many.csv"
    table.write_text(TABLE + TABLE.partition("\n")[2] * 60, encoding="utf-8")
    bench.window.go_to(LISTINGS)
    page.take_files([table])
    qtbot.waitUntil(page.intake.bar.isVisible, timeout=20_000)
    assert page.intake.bar.words.text() == "reading many.csv"
    page.intake.bar.stop.click()
    assert not page.intake.bar.isVisible()
    qtbot.waitUntil(lambda: not bench.work.is_busy, timeout=60_000)
    assert bench.session.job.listings == ()
    table.write_text(TABLE, encoding="utf-8")
    page.take_files([table])
    qtbot.waitUntil(lambda: len(bench.session.job.listings) == 60, timeout=60_000)
    assert bench.window.rail.item(LISTINGS).toolTip().startswith("60 listings")
    qtbot.waitUntil(lambda: not bench.work.is_busy, timeout=60_000)
    assert not page.intake.bar.isVisible()
