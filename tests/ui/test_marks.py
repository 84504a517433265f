"""The five verdicts tell apart at 16 px and in grey; each mark has its word."""

import itertools

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from ui.marks import VerdictMark, paint_mark
from ui.words import VERDICTS

SIDE = 16


def grey(verdict: str | None) -> list[int]:
    image = QImage(SIDE, SIDE, QImage.Format.Format_Grayscale8)
    image.fill(255)
    painter = QPainter(image)
    paint_mark(painter, QRectF(0, 0, SIDE, SIDE), verdict, QColor("#202020"))
    painter.end()
    return [image.pixelColor(x, y).lightness() for y in range(SIDE) for x in range(SIDE)]


@pytest.mark.parametrize(("one", "other"), list(itertools.combinations([*VERDICTS, None], 2)), ids=str)
def test_any_two_marks_differ_in_grey_at_16_px(qapp, one, other):
    different = sum(abs(a - b) > 60 for a, b in zip(grey(one), grey(other), strict=True))
    assert different >= 10


def test_the_word_stands_beside_the_mark(qtbot):
    mark = VerdictMark("ask")
    qtbot.addWidget(mark)
    assert mark.accessibleName() == "Ask first"
    mark.show_verdict("wont_fit")
    assert mark.accessibleName() == "Won't fit"
    picture = mark.grab().toImage()
    right_half = [picture.pixelColor(x, y).lightness() for x in range(40, picture.width()) for y in range(24)]
    assert min(right_half) < 128
