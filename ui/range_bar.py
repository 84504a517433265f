"""The range bar: from the lowest to the highest score with a tick at the score itself.

A wide bar is the message "not enough is known", so the bar is never replaced by a bare number.
"""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.theme import GRID, Colours, current_colours


def paint_range(
    painter: QPainter, box: QRectF, scores: tuple[float | None, float | None, float | None], colours: Colours
) -> None:
    """Paint (low, score, high), each 0 .. 100 or `None` where no check is known, into a box."""
    low, score, high = scores
    middle = box.center().y()
    painter.fillRect(QRectF(box.left(), middle - 0.5, box.width(), 1), QColor(colours.line))
    for end in (box.left(), box.right() - 1):
        painter.fillRect(QRectF(end, middle - 3, 1, 7), QColor(colours.line))
    if low is not None and high is not None:
        start, stop = (box.left() + share / 100 * box.width() for share in (low, high))
        painter.fillRect(QRectF(start, middle - 3, max(2.0, stop - start), 6), QColor(colours.soft))
    if score is not None:
        at = box.left() + score / 100 * (box.width() - 2)
        painter.fillRect(QRectF(at, middle - GRID, 3, 2 * GRID), QColor(colours.ink))


def range_words(low: float | None, score: float | None, high: float | None) -> str:
    """Return the range as a person would write it: `84 (61 to 97)`."""
    if low is None or high is None:
        return ""
    if score is not None and f"{low:.0f}" == f"{high:.0f}":
        return f"{score:.0f}"
    span = f"{low:.0f} to {high:.0f}"
    return span if score is None else f"{score:.0f} ({span})"


class RangeBar(QWidget):
    """One range bar with its words as accessible name."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._scores: tuple[float | None, float | None, float | None] = (None, None, None)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_range(self, low: float | None, score: float | None, high: float | None) -> None:
        """Show a score, 0 .. 100, in its range."""
        self._scores = (low, score, high)
        words = range_words(low, score, high) or self.tr("score not known yet")
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.update()

    def sizeHint(self) -> QSize:
        """Return a bar as wide as a small column."""
        return QSize(16 * GRID, 3 * GRID)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the bar."""
        painter = QPainter(self)
        paint_range(painter, QRectF(self.rect()).adjusted(1, 0, -1, 0), self._scores, current_colours())
