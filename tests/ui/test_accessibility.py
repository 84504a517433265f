"""What a screen reader is told, asked through Qt's own accessibility interface; and the order of focus."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QMenu, QScrollArea, QWidget

from matcher.tables import data_folder
from ui.bench import OLD_MOTOR, STOCK, SWAP_PROOF


def takes_focus(widget: QWidget) -> bool:
    return bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus) and widget.focusProxy() is None


def spoken(widget: QWidget) -> str:
    interface = QAccessible.queryAccessibleInterface(widget)
    return interface.text(QAccessible.Text.Name) if interface else ""


@pytest.mark.parametrize("stage", range(STOCK + 1))
def test_everything_that_takes_the_keyboard_has_a_name(bench, settle, stage):
    bench.window.go_to(stage)
    settle(bench)
    page = bench.pages[stage]
    nameless = [
        widget
        for widget in page.findChildren(QWidget)
        if takes_focus(widget) and widget.isVisible() and not spoken(widget)
    ]
    inside = [
        widget
        for widget in nameless
        if not (widget.parent() and spoken(widget.parent()))
        and widget.objectName() != "qt_scrollarea_viewport"
    ]
    assert inside == []


def test_a_button_says_its_words_and_a_field_how_to_find_it(bench):
    buttons = bench.window.findChildren(QAbstractButton)
    assert all(spoken(one) for one in buttons if one.isVisible() and takes_focus(one))
    editor = bench.pages[OLD_MOTOR].edits["shaft_diameter_in"].editor
    interface = QAccessible.queryAccessibleInterface(editor)
    assert interface.text(QAccessible.Text.Name) == "Shaft diameter"
    assert "Caliper" in interface.text(QAccessible.Text.Description)


def test_the_rail_speaks_each_stage_with_its_state(bench, settle):
    settle(bench)
    interface = QAccessible.queryAccessibleInterface(bench.window.rail)
    names = [interface.child(at).text(QAccessible.Text.Name) for at in range(interface.childCount())]
    assert names[0] == "Old motor: type or paste the plate"
    assert names[1] == "Listings: paste or drop some"


def test_tab_walks_from_the_plate_down_the_form(bench, qtbot):
    page = bench.pages[OLD_MOTOR]
    bench.plate.box.setFocus()
    walked = []
    for _ in range(5):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        walked.append(spoken(QApplication.focusWidget()))
    assert walked == ["Maker", "Part number", "Other numbers", "Power", "Volts"]
    assert page.how_to._name.text() == "Volts"


def test_no_window_flashes_up_while_the_pages_are_made(qtbot, tmp_path):
    from PySide6.QtCore import QEvent, QObject

    from ui.app import furnish
    from ui.window import Window

    class Watch(QObject):
        shown: list[QObject]

        def eventFilter(self, watched: QObject, event: QEvent) -> bool:
            if event.type() == QEvent.Type.Show and isinstance(watched, QWidget) and watched.isWindow():
                self.shown.append(watched)
            return False

    watch = Watch()
    watch.shown = []
    QApplication.instance().installEventFilter(watch)
    window = Window()
    qtbot.addWidget(window)
    window.show()
    furnish(window, None, tmp_path / "a.db")
    qtbot.waitUntil(lambda: window.bench.session.is_settled and not window.bench.work.is_busy, timeout=60_000)
    window.close()
    QApplication.instance().removeEventFilter(watch)
    assert watch.shown == [window]


def tabbed_through(bench) -> list[QWidget]:
    """Press Tab from where a page starts until the keyboard is back there, and return what was reached."""
    first = QApplication.focusWidget()
    reached = [first]
    for _step in range(300):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        at = QApplication.focusWidget()
        if at is first:
            return reached
        reached.append(at)
    raise AssertionError(f"Tab never comes back to {first}")


@pytest.mark.parametrize("stage", range(STOCK + 1))
def test_tab_reaches_all_that_takes_the_keyboard(open_bench, settle, stage):
    bench = open_bench(demo=data_folder() / "demo")
    settle(bench)
    bench.window.go_to(stage)
    settle(bench)
    reached = tabbed_through(bench)
    page = bench.pages[stage]
    due = [
        one
        for one in page.findChildren(QWidget)
        if takes_focus(one)
        and one.isVisible()
        and one.isEnabled()
        and not isinstance(one, QScrollArea | QMenu)
    ]
    assert [one for one in due if one not in reached] == []


def test_the_capacitor_s_tolerance_comes_after_its_reading(bench, settle):
    bench.window.go_to(SWAP_PROOF)
    settle(bench)
    view = bench.pages[SWAP_PROOF].bench
    reached = tabbed_through(bench)
    assert reached.index(view.tolerance) > reached.index(view.rows["capacitor_uf"].edit)
