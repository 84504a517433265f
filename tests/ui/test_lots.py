"""A lot under a tired flipper's hands: no stale verdict, no dead end, every row out again."""

import csv

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from ui.bench import OLD_MOTOR, STOCK
from ui.lot import Lot
from ui.models.lot_columns import (
    CHANCE,
    CONDITION,
    LANDED,
    MARK,
    NAME,
    PRICE,
    QUANTITY,
    REASON,
    RETURNS,
    SOURCE,
)

PLATE = "1/2 HP 115V 60HZ 1PH 1075 RPM CCWLE PSC belly band shaft 1/2 x 5 5.6 in dia"
HEAD = "title,Mfr,model,hp,volts,phase,hz,rpm,rotation,shaft diameter,mounting,price\n"
LOT = HEAD + "".join(
    f"{title},{maker},QX-{n},1/2,115,1,60,1075,{turn},1/2,belly band,{20 + n}\n"
    for n, (title, maker, turn) in enumerate(
        (("@SUM(1)", "", "CCWLE"), ("BLOWER MTR", "Halvorne", "CCWLE"), ("fan motor", "Ossenby", "CWLE")) * 5
    )
)


@pytest.fixture
def lot(bench, qtbot, tmp_path):
    page = bench.pages[STOCK]
    table = tmp_path / "lot.csv"
    table.write_text(LOT, encoding="utf-8")
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=20_000)
    page.open_files([table])
    qtbot.waitUntil(lambda: page.model.total == 15 and page._task is None, timeout=20_000)
    return bench


def shown(page, column):
    return [page.model.index(row, column).data() for row in range(page.model.rowCount())]


@pytest.fixture
def ranked(lot, settle, qtbot):
    lot.window.go_to(OLD_MOTOR)
    lot.plate.box.insertPlainText(PLATE)  # as if pasted: many tests begin here
    settle(lot)
    lot.window.go_to(STOCK)
    page = lot.pages[STOCK]
    qtbot.waitUntil(lambda: page._task is None and page.model.rows[0].verdict == "fits", timeout=20_000)
    return lot


def test_without_a_plate_nothing_is_judged_and_the_line_says_so(lot):
    page = lot.pages[STOCK]
    assert set(shown(page, MARK)) == {"Not judged yet"}
    assert "type the plate" in page.line.text()
    assert (
        lot.window.rail.item(STOCK).data(Qt.ItemDataRole.AccessibleTextRole).endswith("15 offers, not ranked")
    )
    page.table.selectRow(1)
    assert not page.reason.text()
    assert not page.again.isVisible()


def test_a_new_plate_hides_the_old_verdicts_and_a_stop_is_no_dead_end(ranked, settle, qtbot):
    page = ranked.pages[STOCK]
    assert "Fits" in shown(page, MARK)
    QTest.keyClicks(ranked.plate.box, " 48Y")
    settle(ranked)
    page.model.call_stale(page._is_stale())
    page.rank()
    page.cancel()
    if page._ranked_for != page._question():
        assert set(shown(page, MARK)) == {"Not judged yet"}
        assert set(shown(page, CHANCE)) == {""}
        assert page.again.isVisible()
        assert "not ranked" in page.line.text()
        page.again.click()
    qtbot.waitUntil(lambda: page._task is None and "Fits" in shown(page, MARK), timeout=20_000)
    assert not page.again.isVisible()


def test_what_could_not_be_read_stays_told_while_the_rest_is_ranked(ranked, qtbot, tmp_path):
    page, table = ranked.pages[STOCK], tmp_path / "broken.csv"
    table.write_text(
        HEAD + '"never closed,Ossenby,QX-1,1/2\nfan motor,Ossenby,QX-2,1/2,115\n', encoding="utf-8"
    )
    page.open_files([table])
    qtbot.waitUntil(lambda: page.model.total == 1 and page._task is None, timeout=20_000)
    assert "never closed" in page.trouble.text()
    assert page.trouble.isVisible()


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "it is empty"),
        (bytes(range(256)) * 9, "bad.csv"),
        (b"Brand,HP,Price\n", "no offer in it"),
        (None, "can't be read"),
    ],
    ids=["empty", "random bytes", "only a header", "missing"],
)
def test_a_bad_file_keeps_the_lot_and_says_why(ranked, qtbot, tmp_path, content, words):
    page, bad = ranked.pages[STOCK], tmp_path / "bad.csv"
    before = list(page.model.rows)
    if content is not None:
        bad.write_bytes(content)
    page.open_files([bad])
    qtbot.waitUntil(page.trouble.isVisible, timeout=20_000)
    qtbot.waitUntil(lambda: page._task is None, timeout=20_000)
    assert words in page.trouble.text()
    assert page.model.rows == before
    assert "No stock yet" not in page.line.text()
    page.table.selectRow(3)
    page.choice.add_to_job()  # the clerk still holds the lot as well
    qtbot.waitUntil(lambda: len(ranked.session.job.listings) == 1, timeout=20_000)


def test_adding_an_offer_does_not_rank_the_lot_again(ranked, settle, qtbot):
    page = ranked.pages[STOCK]
    page.table.selectRow(4)
    page.choice.add_to_job()
    qtbot.waitUntil(lambda: len(ranked.session.job.listings) == 1, timeout=20_000)
    settle(ranked)
    assert page._task is None
    assert page.table.currentIndex().row() == 4


def test_rows_are_named_and_filtered_by_maker(ranked):
    page = ranked.pages[STOCK]
    page.seek.setText("halvorne fits")
    assert len(page.model.rows) == 5
    assert shown(page, NAME)[0].startswith("Halvorne QX-")


def test_a_row_of_the_file_is_found_by_its_number_and_no_name_by_a_row(lot):
    page = lot.pages[STOCK]
    page.seek.setText("#14")
    assert [row.source for row in page.model.rows] == ["lot.csv#14"]
    page.seek.setText("14")
    assert [row.number for row in page.model.rows] == ["QX-14"]


def test_a_second_click_sorts_the_other_way_round(ranked, qtbot):
    page = ranked.pages[STOCK]
    page.sort_by(NAME)
    qtbot.waitUntil(lambda: page._task is None)
    up = shown(page, NAME)
    page.sort_by(NAME)
    qtbot.waitUntil(lambda: page._task is None)
    assert shown(page, NAME) == up[::-1] != up


def test_selected_rows_and_the_rows_shown_go_into_a_spreadsheet(ranked, qtbot, tmp_path):
    page = ranked.pages[STOCK]
    page.table.selectAll()
    page.exits.copy()
    qtbot.waitUntil(lambda: QGuiApplication.clipboard().text().startswith("Verdict\t"))
    lines = QGuiApplication.clipboard().text().splitlines()
    assert len(lines) == 16
    assert any("\t'@SUM(1)\t" in line for line in lines)
    page.seek.setText("ossenby")
    page.exits.save_shown(tmp_path / "out.csv")
    qtbot.waitUntil(lambda: "saved" in page.done.text())
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 5
    assert {row["Verdict"] for row in rows} == {"Won't fit"}
    page.exits.save_shown(tmp_path / "nowhere" / "out.csv")
    qtbot.waitUntil(page.trouble.isVisible)
    assert page.trouble.text() == "out.csv: not saved (no such file or directory); choose another place"
    assert page.done.text() == ""


def test_all_selected_offers_are_added_and_none_twice(ranked, settle, qtbot):
    page, session = ranked.pages[STOCK], ranked.session
    page.table.selectRow(2)
    page.add.click()
    qtbot.waitUntil(lambda: len(session.job.listings) == 1, timeout=20_000)
    settle(ranked)
    page.add.click()
    qtbot.waitUntil(lambda: "in this job already" in page.done.text(), timeout=20_000)
    page.table.selectAll()
    page.add.click()
    qtbot.waitUntil(lambda: len(session.job.listings) == 15, timeout=20_000)
    settle(ranked)
    assert page.done.text() == "Added to this job: 14 offers; 1 in it already"
    assert len({listing.source_name for listing in session.job.listings}) == 15
    session.history.undo()
    assert len(session.job.listings) == 1
    assert page.done.text() == ""


def test_every_row_says_why_on_the_screen_and_in_a_saved_file(ranked, qtbot, tmp_path):
    page, many = ranked.pages[STOCK], tmp_path / "many.csv"
    many.write_text(LOT + LOT.removeprefix(HEAD) * 16, encoding="utf-8")
    page.open_files([many])
    qtbot.waitUntil(lambda: page.model.total == 255 and not ranked.work.is_busy, timeout=20_000)
    page.sort_by(LANDED)
    qtbot.waitUntil(lambda: page._task is None)
    page.sort_by(LANDED)
    qtbot.waitUntil(lambda: page._task is None)
    page.table.scrollToBottom()
    assert len([words for words in shown(page, REASON) if words]) < 255
    page.table.selectRow(254)
    qtbot.waitUntil(lambda: all(shown(page, REASON)[-10:]), timeout=20_000)
    qtbot.waitUntil(lambda: shown(page, REASON)[254] in page.reason.text(), timeout=20_000)
    page.exits.save_shown(tmp_path / "out.csv")
    qtbot.waitUntil(lambda: "saved" in page.done.text(), timeout=20_000)
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as file:
        assert all(row["Why"] for row in csv.DictReader(file))


def test_the_page_and_the_file_tell_what_a_buyer_of_lots_needs(bench, qtbot, tmp_path):
    page, table = bench.pages[STOCK], tmp_path / "buy.csv"
    table.write_text(
        "title,hp,volts,condition,price,qty,returns\nfan motor,1/2,115,used,$20,4,30 days\n", encoding="utf-8"
    )
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=20_000)
    page.open_files([table])
    qtbot.waitUntil(lambda: page.model.total == 1 and page._task is None, timeout=20_000)
    cells = [shown(page, column)[0] for column in (CONDITION, PRICE, QUANTITY, RETURNS, SOURCE)]
    assert cells == ["used", "20.00 USD", "4", "30", "buy.csv"]
    page.seek.setText("used")
    assert len(page.model.rows) == 1
    page.exits.save_shown(tmp_path / "out.csv")
    qtbot.waitUntil(lambda: "saved" in page.done.text(), timeout=20_000)
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as file:
        (row,) = csv.DictReader(file)
    assert [row[name] for name in ("Condition", "Price", "Quantity", "Return days", "From")] == [
        *("used", "20.00", "4", "30", "buy.csv")
    ]


def test_a_price_is_no_landed_cost_before_it_is_reckoned(lot):
    page = lot.pages[STOCK]
    assert shown(page, LANDED)[:2] == ["asks 20.00", "asks 21.00"]


def test_a_landed_cost_takes_the_place_of_the_price(ranked):
    page = ranked.pages[STOCK]
    assert not any(words.startswith("asks") for words in shown(page, LANDED))


def test_what_needs_an_offer_waits_for_one(bench, qtbot):
    page = bench.pages[STOCK]
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=20_000)
    assert not any(button.isEnabled() for button in (page.bar.keep, page.save, page.add))


def test_with_offers_they_can_be_kept_saved_and_added(lot):
    page = lot.pages[STOCK]
    assert all(button.isEnabled() for button in (page.bar.keep, page.save, page.add))


def test_no_reason_of_an_offer_that_is_filtered_away_stays(ranked):
    page = ranked.pages[STOCK]
    page.table.selectRow(0)
    page.reason.setText("BLOWER MTR: why")
    page.seek.setText("nothing has these words")
    assert page.model.rowCount() == 0
    assert page.reason.text() == ""


def test_no_reason_of_an_offer_that_was_taken_out_stays(ranked):
    page = ranked.pages[STOCK]
    page.table.selectRow(0)
    page.reason.setText("BLOWER MTR: why")
    page.model.drop({page.model.rows[0].at})
    assert page.reason.text() == ""


def test_the_line_has_its_commas(ranked):
    page = ranked.pages[STOCK]
    rows = page.model.rows
    page.model.show_rows([one._replace(at=at) for at, one in enumerate(rows * 150)])
    page.seek.setText("fits")
    assert page.line.text() == "1,500 of 2,250 offers"


def test_the_same_lot_is_kept_once_and_offers_are_taken_out_and_put_back(lot, open_bench, qtbot, tmp_path):
    page = lot.pages[STOCK]
    page.bar.keep.click()
    qtbot.waitUntil(lambda: page.done.text() == "15 offers kept as stock", timeout=20_000)
    assert not page.bar.keep.isEnabled()
    page.open_files([tmp_path / "lot.csv"])
    qtbot.waitUntil(lambda: page.bar.keep.isEnabled() and page._task is None, timeout=20_000)
    page.bar.keep.click()
    qtbot.waitUntil(lambda: "in the stock already" in page.done.text(), timeout=20_000)

    page.bar._choose(0)
    qtbot.waitUntil(lambda: page.bar.shown == "" and not lot.work.is_busy, timeout=20_000)
    assert page.model.total == 15
    assert [page.bar.which.itemText(n) for n in range(3)] == [
        "all kept stock, 15",
        "lot.csv, 15",
        "opened: lot.csv",
    ]
    sold = page.model.rows[4].name
    page.table.selectRow(4)
    QTest.keyClick(page.table, Qt.Key.Key_Delete)
    qtbot.waitUntil(lambda: page.model.total == 14, timeout=20_000)
    assert page.done.text() == "1 offer taken out of the stock"
    assert "14" in page.line.text()
    qtbot.waitUntil(lambda: not lot.work.is_busy, timeout=20_000)
    page.bar.put_back.click()
    qtbot.waitUntil(lambda: page.model.total == 15 and not lot.work.is_busy, timeout=20_000)
    assert sold in [row.name for row in page.model.rows]
    page.table.selectRow(0)
    page.bar.take_out.click()
    qtbot.waitUntil(lambda: page.model.total == 14 and not lot.work.is_busy, timeout=20_000)

    second = open_bench(tmp_path / "jobs.db")
    second.window.go_to(STOCK)
    qtbot.waitUntil(lambda: second.pages[STOCK].model.total == 14, timeout=20_000)


def test_rows_of_a_file_are_not_taken_for_the_stock(lot):
    page = lot.pages[STOCK]
    page.table.selectRow(0)
    page.bar.take_selected_out()
    assert "choose the kept stock" in page.trouble.text()
    assert page.model.total == 15


def test_a_column_that_is_not_understood_is_named_to_the_opener(tmp_path):
    table = tmp_path / "shop.csv"
    table.write_text("Cat No;H.P.;V;Wibble\nAB-12;1/3;115;110,00\nAB-13;1/2;230;99,00\n", encoding="utf-8")
    lot = Lot()
    lot.read(lambda _share: None, [table])
    assert len(lot.records) == 2
    assert [line.partition(";")[0] for line in lot.problems] == [
        "shop.csv: this column is not understood: Wibble"
    ]
