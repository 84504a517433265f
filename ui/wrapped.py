"""Writes plain words over as many whole lines as fit a box, the last one cut with an ellipsis."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QFont, QPainter, QTextLayout, QTextOption


def paint_wrapped(painter: QPainter, room: QRect, words: str) -> None:
    """Write words from the top of a box; a single line stands in its middle."""
    metrics = painter.fontMetrics()
    high = metrics.height()
    last = max(1, room.height() // high) - 1
    layout = _layout(words, painter.font())
    lines: list[str] = []
    layout.beginLayout()
    while len(lines) <= last and (line := layout.createLine()).isValid():
        line.setLineWidth(room.width())
        start = line.textStart()
        part = words[start:] if len(lines) == last else words[start : start + line.textLength()]
        lines.append(metrics.elidedText(part.strip(), Qt.TextElideMode.ElideRight, room.width()))
    layout.endLayout()
    top = room.top() + (max(0, room.height() - len(lines) * high) // 2 if last <= 1 else 0)
    for place, written in enumerate(lines):
        painter.drawText(room.left(), top + place * high + metrics.ascent(), written)


def lines_of(words: str, font: QFont, width: int, most: int) -> int:
    """Return how many lines words take in a box that wide, counted up to `most`."""
    layout, count = _layout(words, font), 0
    layout.beginLayout()
    while count < most and (line := layout.createLine()).isValid():
        line.setLineWidth(width)
        count += 1
    layout.endLayout()
    return count


def _layout(words: str, font: QFont) -> QTextLayout:
    layout = QTextLayout(words, font)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    return layout
