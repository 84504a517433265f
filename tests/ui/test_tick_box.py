"""The box to tick is seen in light and dark, and its words have room."""

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QCheckBox

from ui import tick_box
from ui.bench import SIDE_BY_SIDE
from ui.theme import DARK, LIGHT
from ui.tick_box import TickBox


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
def test_the_outline_is_painted_in_an_ink_that_is_read(qtbot, monkeypatch, colours):
    monkeypatch.setattr(tick_box, "current_colours", lambda: colours)
    box = TickBox("only &differences")
    qtbot.addWidget(box)
    box.resize(box.sizeHint())
    picture = box.grab().toImage()
    assert picture.pixelColor(2, picture.height() // 2) == QColor(colours.soft)


def test_the_words_are_whole_and_a_box_without_them_stays_small(qtbot):
    with_words, bare = TickBox("only &differences"), TickBox()
    for box in (with_words, bare):
        qtbot.addWidget(box)
    wide = with_words.fontMetrics().horizontalAdvance("only differences")
    assert with_words.minimumSizeHint().width() >= wide + bare.sizeHint().width()


def test_no_box_of_the_window_is_left_to_the_style(bench):
    boxes = bench.window.findChildren(QCheckBox)
    assert bench.pages[SIDE_BY_SIDE].differences in boxes
    assert all(isinstance(box, TickBox) for box in boxes)
