"""A box to tick that is seen in light and dark alike: the style's own outline vanishes in the dark."""

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QCheckBox

from ui.theme import GRID, current_colours

SIDE = 2 * GRID
TICK = ((0.22, 0.52), (0.42, 0.74), (0.8, 0.26))
"""Corners of the tick, as shares of the box."""


class TickBox(QCheckBox):
    """A check box, with words beside it or without."""

    def sizeHint(self) -> QSize:
        """Return the box with room for the focus around it, and for its words."""
        words = self.fontMetrics().size(Qt.TextFlag.TextShowMnemonic, self.text())
        wide = words.width() + GRID if self.text() else 0
        return QSize(SIDE + 4 + wide, max(SIDE + 4, words.height()))

    def minimumSizeHint(self) -> QSize:
        """Return the same: no word may be cut."""
        return self.sizeHint()

    def hitButton(self, _at: QPoint) -> bool:
        """Take a click anywhere on the widget."""
        return True

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint outline, tick, focus and words."""
        painter, colours = QPainter(self), current_colours()
        box = QRectF(2.5, (self.height() - SIDE) / 2 + 0.5, SIDE - 1, SIDE - 1)
        painter.setPen(
            QPen(QColor(colours.focus if self.hasFocus() else colours.soft), 2 if self.hasFocus() else 1)
        )
        painter.setBrush(QColor(colours.sheet))
        painter.drawRect(box)
        if self.isChecked():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(QColor(colours.ink), 2))
            corners = [QPointF(box.left() + x * box.width(), box.top() + y * box.height()) for x, y in TICK]
            painter.drawPolyline(corners)
        painter.setPen(QColor(colours.ink))
        beside = self.rect().adjusted(SIDE + 4 + GRID // 2, 0, 0, 0)
        painter.drawText(beside, Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextShowMnemonic, self.text())
