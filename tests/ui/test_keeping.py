"""Bad days in the window: two windows on one job, a store that can't be written, backups, jobs as files."""

import json
import shutil
import sqlite3

import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton

from matcher.job import Job
from matcher.job.listing import Listing
from matcher.store import Store
from ui import intake
from ui.bench import LISTINGS, OLD_MOTOR, STOCK


def enter(bench, field: str, text: str) -> None:
    bench.pages[OLD_MOTOR]._enter(field, text)


def given(job: Job) -> dict[str, object]:
    return {name: list(v) if isinstance(v := one.value, tuple) else v for name, one in job.given.items()}


def answer(bench, words: str) -> None:
    """Click the button of a notice."""
    found = [
        one for one in bench.notices.findChildren(QPushButton) if one.text() == words and one.isVisible()
    ]
    QTest.mouseClick(found[-1], Qt.MouseButton.LeftButton)


@pytest.fixture
def stored(qtbot):
    """Waits until all that was entered is saved."""

    def wait(*benches) -> None:
        for bench in benches:
            bench.session.flush()
            qtbot.waitUntil(lambda bench=bench: bench.session.saving.is_saved and not bench.work.is_busy)

    return wait


@pytest.fixture
def pair(open_bench, stored, qtbot, tmp_path):
    """Two windows on the same job."""
    one = open_bench()
    QTest.keyClicks(one.plate.box, "1/2 HP 115V")
    stored(one)
    other = open_bench()
    with Store.open(tmp_path / "jobs.db") as store:
        held = store.load(one.session.job.id)
    other.session.open(held.job, held.version)
    return one, other


def hold_look(*benches) -> None:
    for bench in benches:
        bench.session.saving._look.stop()


def test_what_one_window_saves_appears_in_the_other(pair, stored, qtbot):
    one, other = pair
    enter(one, "hertz", "60")
    stored(one)
    qtbot.waitUntil(lambda: given(other.session.job) == {"hertz": "60"}, timeout=10_000)
    qtbot.waitUntil(lambda: other.pages[OLD_MOTOR].edits["hertz"].editor.text() == "60")


def test_typing_during_a_save_takes_nothing_back_from_the_other_window(pair, stored, qtbot):
    one, other = pair
    hold_look(one, other)
    enter(one, "phase", "3")
    stored(one)
    enter(other, "rpm", "1075")
    other.session.save_now()
    enter(other, "body_length_in", "5")
    other.session.save_now()
    enter(other, "hertz", "60")
    stored(other)
    assert given(other.session.job) == {"phase": 3, "rpm": [1075], "body_length_in": 5.0, "hertz": "60"}


def test_undo_takes_back_only_what_was_done_here(pair, stored):
    one, other = pair
    hold_look(one, other)
    enter(one, "phase", "3")
    stored(one)
    enter(other, "rpm", "1075")
    stored(other)
    other.session.history.undo()
    stored(other)
    assert given(other.session.job) == {"phase": 3}
    other.session.history.redo()
    assert given(other.session.job) == {"phase": 3, "rpm": [1075]}


@pytest.mark.parametrize(("button", "kept"), [("Take 460", "460"), ("Leave 230", "230")])
def test_the_same_field_changed_in_both_is_shown_with_both_values(pair, stored, qtbot, button, kept):
    one, other = pair
    hold_look(one, other)
    enter(one, "volts", "230")
    stored(one)
    enter(other, "volts", "460")
    other.session.flush()
    qtbot.waitUntil(lambda: bool(other.notices.lines))
    assert other.notices.lines == ("Volts was changed in another window too: 230 there, 460 here.",)
    assert given(other.session.job) == {"volts": "230"}
    answer(other, button)
    assert not other.notices.lines
    stored(other)
    assert given(other.session.job) == {"volts": kept}


def test_a_job_in_which_nothing_was_entered_is_never_saved(bench, stored, tmp_path):
    bench.new_job()
    bench.window.close()
    with Store.open(tmp_path / "jobs.db") as store:
        assert store.jobs() == ()


def test_typing_without_a_pause_is_saved_meanwhile(bench, qtbot, tmp_path):
    with qtbot.waitSignal(bench.session.saved, timeout=5000):
        for _ in range(12):
            QTest.keyClicks(bench.plate.box, "1 ")
            qtbot.wait(100)
        qtbot.waitUntil(lambda: bench.session.saving.version > 0)
    assert bench.session.saving.version > 0


def test_a_locked_store_is_tried_again_by_itself(bench, stored, qtbot, tmp_path):
    QTest.keyClicks(bench.plate.box, "1/2")
    stored(bench)
    bench.shelf._store._db.execute("PRAGMA busy_timeout = 0")
    bench.session.saving._again.setInterval(50)
    other = sqlite3.connect(tmp_path / "jobs.db", isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    QTest.keyClicks(bench.plate.box, " HP")
    qtbot.waitUntil(lambda: bool(bench.notices.lines))
    assert "another program is using the file" in bench.notices.lines[0]
    other.execute("COMMIT")
    other.close()
    qtbot.waitUntil(lambda: bench.session.saving.is_saved)
    assert not bench.notices.lines
    with Store.open(tmp_path / "jobs.db") as store:
        assert store.load(bench.session.job.id).job.plate_text == "1/2 HP"


def test_a_store_that_is_gone_is_left_for_another_place(open_bench, stored, qtbot, tmp_path):
    (tmp_path / "away").mkdir()
    bench = open_bench(tmp_path / "away" / "jobs.db")
    QTest.keyClicks(bench.plate.box, "1/2")
    stored(bench)
    shutil.rmtree(tmp_path / "away")
    QTest.keyClicks(bench.plate.box, " HP")
    assert not bench.window.close()
    assert "Close once more" in bench.window.message.text()
    qtbot.waitUntil(lambda: bool(bench.notices.lines))
    bench.keeping.save_elsewhere(tmp_path / "new.db")
    qtbot.waitUntil(lambda: not bench.notices.lines and not bench.work.is_busy)
    QTest.keyClicks(bench.plate.box, " 115V")
    stored(bench)
    with Store.open(tmp_path / "new.db") as store:
        assert store.load(bench.session.job.id).job.plate_text == "1/2 HP 115V"


def test_a_store_in_no_folder_says_so_at_once_and_work_goes_on(open_bench, qtbot, tmp_path):
    bench = open_bench(tmp_path / "none" / "jobs.db")
    qtbot.waitUntil(lambda: bool(bench.notices.lines))
    QTest.keyClicks(bench.plate.box, "1/2")
    bench.keeping.save_elsewhere(tmp_path / "new.db")
    qtbot.waitUntil(lambda: bench.session.saving.version > 0 and bench.session.saving.is_saved)
    qtbot.waitUntil(lambda: not bench.work.is_busy)
    assert not bench.notices.lines


def test_a_damaged_store_is_told_when_it_is_opened(open_bench, stored, qtbot, tmp_path):
    with Store.open(tmp_path / "hurt.db") as store:
        store.save(Job(name="kept"))
    content = bytearray((tmp_path / "hurt.db").read_bytes())
    content[8192:20000] = bytes(20000 - 8192)
    (tmp_path / "hurt.db").write_bytes(content)
    bench = open_bench(tmp_path / "hurt.db")
    qtbot.waitUntil(lambda: bool(bench.notices.lines), timeout=20_000)
    assert "the store was damaged" in bench.notices.lines[0]


def test_a_backup_is_restored_from_the_menu(bench, stored, qtbot):
    QTest.keyClicks(bench.plate.box, "1/2")
    stored(bench)
    bench.keeping.back_up()
    stored(bench)
    assert "Backed up" in bench.window.message.text()
    QTest.keyClicks(bench.plate.box, " wrong")
    stored(bench)
    bench.keeping.list_backups()
    stored(bench)
    bench.keeping.generations.actions()[0].trigger()
    qtbot.waitUntil(lambda: bench.session.job.plate_text == "1/2" and not bench.work.is_busy)
    assert "Restored" in bench.window.message.text()
    QTest.keyClicks(bench.plate.box, " HP")
    stored(bench)
    assert bench.session.job.plate_text == "1/2 HP"


def test_a_job_s_file_among_dropped_ones_is_taken_in(bench, stored, qtbot, tmp_path):
    QTest.keyClicks(bench.plate.box, "1/2 HP 115V")
    stored(bench)
    before = bench.session.job
    bench.keeping.export(tmp_path / "one.json")
    qtbot.waitUntil((tmp_path / "one.json").exists)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(tmp_path / "one.json"))])
    bench.pages[LISTINGS].intake.take_mime(data, "")
    qtbot.waitUntil(lambda: bench.session.job.id != before.id)
    assert bench.session.job.plate_text == before.plate_text
    assert bench.session.job.listings == ()


def test_a_job_goes_out_and_comes_in_as_one_file(bench, stored, qtbot, tmp_path):
    QTest.keyClicks(bench.plate.box, "1/2 HP")
    stored(bench)
    bench.keeping.export(tmp_path / "one.json")
    stored(bench)
    first = bench.session.job.id
    bench.keeping.take_in(tmp_path / "one.json")
    qtbot.waitUntil(lambda: bench.session.job.id != first and not bench.work.is_busy)
    assert bench.session.job.plate_text == "1/2 HP"


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\0" * 100,
        b"[" * 100_000,
        b"<script>alert(1)</script>",
        json.dumps({"samespin_job": 1, "job": {"id": "../../x"}}).encode(),
        json.dumps({"samespin_job": 99}).encode(),
        b'{"samespin_job": 1, "job": {"id": "a", "fallback": {"price": NaN}}}',
    ],
    ids=["empty", "zeros", "deep", "script", "path", "newer", "nan"],
)
def test_a_file_that_is_no_job_is_one_line(bench, qtbot, tmp_path, content):
    (tmp_path / "bad.json").write_bytes(content)
    job = bench.session.job
    bench.keeping.take_in(tmp_path / "bad.json")
    qtbot.waitUntil(lambda: bool(bench.notices.lines))
    assert len(bench.notices.lines[0].splitlines()) == 1
    assert bench.session.job is job


def test_a_hostile_job_shows_plain_and_can_be_edited(bench, stored, qtbot, tmp_path):
    nasty = "<b>1/2 HP</b>\0\u202e\r\n\u2028 115V \U0001f600 <img src=x> \ud7ff"
    listing = Listing.model_validate({"title": nasty, "text": nasty * 50, "source_name": "../../etc/x\n\0"})
    job = Job(name=nasty[:20].replace("\r\n", " "), plate_text=nasty, listings=(listing,))
    with Store.open(tmp_path / "jobs.db") as store:
        store.export_job(job, tmp_path / "nasty.json")
    bench.keeping.take_in(tmp_path / "nasty.json")
    qtbot.waitUntil(lambda: bench.session.job.id == job.id and bench.session.is_settled)
    for stage in range(bench.window.rail.count()):
        bench.window.go_to(stage)
        qtbot.wait(20)
    bench.window.go_to(OLD_MOTOR)
    QTest.keyClicks(bench.plate.box, " 1075 RPM")
    stored(bench)
    assert bench.session.job.plate_text.endswith(" 1075 RPM")


def test_a_paste_longer_than_any_plate_is_cut_and_said(bench, settle):
    QGuiApplication.clipboard().setText("1/2 HP 115V\n" * 900_000)
    bench.plate.box.paste()
    settle(bench)
    assert len(bench.session.job.plate_text) < 20_001
    assert "longer than any plate" in bench.plate.trouble.text()


def test_a_listing_too_long_to_keep_is_one_line_and_the_others_come_in(monkeypatch):
    monkeypatch.setattr(intake, "LONGEST_TEXT", 40)
    text = (
        "Model: QX-1\nHP: 1/2\nPrice: $20\n\n\nModel: QX-2\nHP: 1/3\n" + "very long " * 9 + "\nPrice: $30\n"
    )
    came = intake.from_text(lambda _share: None, text, "pasted")
    assert [one.splitlines() for one in came.problems] == [[came.problems[0]]]
    assert "more than a listing holds" in came.problems[0]


def test_a_lot_is_there_again_after_its_helper_was_ended(bench, settle, qtbot, tmp_path):
    (tmp_path / "lot.csv").write_text("title,hp,volts,price\nmotor,1/2,115,$20\nmotor,1/3,115,$25\n")
    QTest.keyClicks(bench.plate.box, "1/2 HP 115V")
    settle(bench)
    page = bench.pages[STOCK]
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=20_000)
    page.open_files([tmp_path / "lot.csv"])
    qtbot.waitUntil(lambda: page.model.total == 2 and page._task is None, timeout=20_000)
    bench.clerk._process.kill()
    bench.clerk._process.join()
    enter(bench, "volts", "230")
    qtbot.waitUntil(lambda: "try again" in page.trouble.text(), timeout=20_000)
    enter(bench, "volts", "115")
    settle(bench)
    qtbot.waitUntil(lambda: page._task is None and not page._is_stale(), timeout=20_000)
    assert page.model.total == 2


def test_a_line_of_trouble_stays_one_plain_line(bench):
    bench.plate.trouble.tell("a\nb\u202e\0<b>c</b>")
    assert bench.plate.trouble.text() == "a b\ufffd\u2400<b>c</b>"
