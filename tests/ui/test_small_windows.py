"""Small screens: the window gets as small as a laptop at 200 %, pages scroll, nothing changes in passing."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage, QPainter, QWheelEvent
from PySide6.QtWidgets import QApplication, QComboBox, QListView, QScrollArea

from matcher.arrival.section import with_bought
from matcher.job import Listing
from matcher.tables import data_folder
from ui.bench import ARRIVAL, LISTINGS, OLD_MOTOR, SIDE_BY_SIDE, STOCK
from ui.halves import Halves
from ui.line import Heading
from ui.models.pile import PRICE
from ui.stack import Roomy
from ui.wrapped import lines_of


@pytest.fixture
def demo(open_bench, settle):
    bench = open_bench(demo=data_folder() / "demo")
    settle(bench)
    return bench


@pytest.mark.parametrize("size", [(1024, 640), (683, 360)], ids=["1024 x 640", "1366 x 768 at 200 %"])
def test_the_window_gets_small_and_every_page_scrolls_to_its_end(demo, settle, size):
    window = demo.window
    window.resize(*size)
    for stage, page in enumerate(demo.pages):
        window.go_to(stage)
        settle(demo)
        for _ in range(3):  # panes that turn ask for another height, and the page is fitted anew
            QApplication.processEvents()
        assert (window.width(), window.height()) == size
        room = window.findChild(Roomy)
        least = page.minimumSizeHint().width()
        for bar, seen, whole in (
            (room.horizontalScrollBar(), room.viewport().width(), least),
            (room.verticalScrollBar(), room.viewport().height(), window.pages.least_height(page.width())),
        ):
            assert bar.maximum() == max(0, whole - seen)


def test_no_page_scrolls_sideways_at_1024_and_the_panes_stand_abreast_again_at_1366(demo, settle):
    window, halves = demo.window, demo.pages[OLD_MOTOR].findChild(Halves)
    window.resize(1024, 700)
    demo.session.edit("bought", with_bought(demo.session.job, demo.session.job.listings[0].id))
    for stage, page in enumerate(demo.pages):
        window.go_to(stage)
        settle(demo)
        QApplication.processEvents()
        assert window.findChild(Roomy).horizontalScrollBar().maximum() == 0, stage
        assert page.width() >= page.minimumSizeHint().width(), stage
    window.go_to(OLD_MOTOR)
    assert halves.orientation() == Qt.Orientation.Vertical
    window.resize(1366, 768)
    QApplication.processEvents()
    assert halves.orientation() == Qt.Orientation.Horizontal


@pytest.mark.parametrize(("count", "seen"), [(1, 1), (8, 8), (30, 9)])
def test_the_plates_box_shows_whole_lines_as_many_as_it_has(bench, settle, count, seen):
    bench.plate.show_text("\n".join(f"LINE {number}" for number in range(count)))
    QApplication.processEvents()
    box = bench.plate.box
    high = box.fontMetrics().lineSpacing()
    assert box.viewport().height() >= seen * high
    assert box.viewport().height() < (max(seen, 4) + 1) * high + 8
    assert (box.verticalScrollBar().maximum() > 0) is (count > seen)


def test_both_columns_of_the_form_stand_whole_at_1024(demo, settle):
    page = demo.pages[OLD_MOTOR]
    demo.window.resize(1024, 640)
    settle(demo)
    QApplication.processEvents()
    area = next(one for one in page.findChildren(QScrollArea) if one.isAncestorOf(page.edits["volts"]))
    for edit in page.edits.values():
        right = edit.mapTo(area.viewport(), QPoint(edit.width(), 0)).x()
        assert right <= area.viewport().width(), edit.field.name


def wheel_over(box: QComboBox) -> None:
    at = QPointF(box.rect().center())
    turned = QWheelEvent(
        at,
        box.mapToGlobal(at),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(box, turned)


@pytest.mark.parametrize("stage", [OLD_MOTOR, LISTINGS, ARRIVAL])
def test_the_wheel_changes_nothing_in_passing(demo, settle, stage):
    demo.window.go_to(stage)
    before = demo.session.job
    boxes = demo.pages[stage].findChildren(QComboBox)
    assert boxes
    for box in boxes:
        wheel_over(box)
    settle(demo)
    assert demo.session.job == before


def test_no_price_of_the_pile_is_cut(demo):
    """The last pixels of a price are painted, also where the words before it had to give way."""
    page = demo.pages[LISTINGS]
    demo.window.go_to(LISTINGS)
    painted: list[str] = []

    class Heard(QPainter):
        def drawText(self, *args: object) -> None:
            painted.append(str(args[-1]))

    view: QListView = page.list
    delegate = view.itemDelegate()
    image = QImage(view.minimumWidth(), 60, QImage.Format.Format_RGB32)
    for row in range(page.pile.rowCount()):
        from PySide6.QtWidgets import QStyleOptionViewItem

        option = QStyleOptionViewItem()
        view.initViewItemOption(option)
        option.rect = image.rect()
        heard = Heard(image)
        delegate.paint(heard, option, page.pile.index(row))
        heard.end()
        price = page.pile.index(row).data(PRICE)
        assert not price or painted[-1] == price


def test_side_by_side_keeps_rows_in_sight_on_the_smallest_screen(demo, settle):
    demo.window.resize(683, 360)
    demo.window.go_to(SIDE_BY_SIDE)
    settle(demo)
    QApplication.processEvents()
    table = demo.pages[SIDE_BY_SIDE].table.new
    assert table.viewport().height() >= 4 * table.rowHeight(1)


LONG = "Complete Lunnfield 5SM39 w/ module, 1/2 hp 120/240V 1050 rpm CCWLE belly band shaft 1/2, program 88-1130-02"


@pytest.mark.parametrize("size", [(1366, 768), (1920, 1080)])
def test_the_deciding_sentence_stands_whole_over_its_column(bench, settle, size):
    bench.window.resize(*size)
    plate = (
        "Lunnfield 5SM39 1/2 HP 120/240V 1PH 1050 RPM ECM with module program 88-1122-03C CCWLE belly band"
    )
    listings = tuple(Listing(text=f"{LONG} ${price}") for price in range(100, 1300, 100))
    bench.session.edit("test", bench.session.job.edited(plate_text=plate, listings=listings))
    bench.window.go_to(SIDE_BY_SIDE)
    settle(bench)
    page = bench.pages[SIDE_BY_SIDE]
    head = page.table.new.horizontalHeader()
    for place, one in enumerate(page.side.candidates, start=1):
        lines = lines_of(one.judgement.reason, head.font(), head.sectionSize(place) - 16, 20)
        assert head.height() >= head.height_for(lines)
        assert one.judgement.reason in page.side.headerData(
            place, Qt.Orientation.Horizontal, Qt.ItemDataRole.ToolTipRole
        )
    assert page.table.old.horizontalHeader().height() == head.height()


@pytest.mark.parametrize("stage", [OLD_MOTOR, LISTINGS, SIDE_BY_SIDE, STOCK])
def test_a_title_stays_on_one_line(demo, settle, stage):
    demo.window.resize(683, 360)
    demo.window.go_to(stage)
    settle(demo)
    title = demo.pages[stage].findChild(Heading)
    assert title.height() < 2 * title.fontMetrics().height()
