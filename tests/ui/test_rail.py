"""The rail shows every stage as far as the window's height lets it."""

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QApplication

from ui.rail import Rail
from ui.theme import GRID
from ui.window import RAIL_WIDTH

NAMES = ["Old motor", "Listings", "Side by side", "Money", "Arrival", "Swap and proof", "Stock and lots"]
SAID = [
    "all that counts is known",
    "17 listings, 1 conflict",
    "7 worth trying, 2 to ask about",
    "",
    "sent back",
]


@pytest.fixture
def rail(qtbot):
    shown = Rail(NAMES)
    qtbot.addWidget(shown)
    for stage, words in enumerate(SAID):
        shown.show_state(stage, words)
    shown.resize(RAIL_WIDTH - 2 * GRID, 1000)
    shown.show()
    return shown


def test_each_stage_has_the_same_room_in_a_high_window(rail):
    QApplication.processEvents()
    assert len({rail.visualItemRect(rail.item(stage)).height() for stage in range(len(NAMES))}) == 1
    assert rail.verticalScrollBar().maximum() == 0


def test_a_low_window_takes_the_empty_lines_first(rail):
    QApplication.processEvents()
    line = rail.fontMetrics().height()
    rail.resize(rail.width(), 7 * (3 * line + 3 * GRID) - 10)
    QApplication.processEvents()
    assert rail.verticalScrollBar().maximum() == 0
    last = rail.visualItemRect(rail.item(len(NAMES) - 1))
    assert rail.viewport().rect().contains(last.bottomLeft() + QPoint(1, 0))
    high = [rail.visualItemRect(rail.item(stage)).height() for stage in range(len(NAMES))]
    assert high[2] >= 3 * line  # both lines of what is said stay
    assert high[5] < high[2]
