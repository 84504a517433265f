"""Underlines that say where a value came from, and the one legend that explains them.

Read from text: thin. Typed in: none. Measured or seen: double. Presumed: dotted. The seller's answer: wavy.
"""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.theme import GRID, current_colours
from ui.words import origin_word

ORIGINS = ("read", "typed", "measured", "seen", "answered", "presumed")


def paint_underline(painter: QPainter, box: QRectF, origin: str, ink: QColor) -> None:
    """Paint the underline of an origin along the bottom of a box; needs 4 pixels there."""
    draw = _LINES.get(origin)
    if draw is None:
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, origin == "answered")
    painter.setPen(QPen(ink, 1))
    draw(painter, box)
    painter.restore()


def _thin(painter: QPainter, box: QRectF) -> None:
    y = box.bottom() - 1.5
    painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))


def _double(painter: QPainter, box: QRectF) -> None:
    for y in (box.bottom() - 0.5, box.bottom() - 3.5):
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))


def _dash_double(painter: QPainter, box: QRectF) -> None:
    _thin(painter, box)
    for x in (box.left(), box.right() - 1):
        painter.drawLine(QPointF(x, box.bottom() - 1.5), QPointF(x, box.bottom() - 5.5))


def _dotted(painter: QPainter, box: QRectF) -> None:
    pen = painter.pen()
    pen.setWidthF(2)
    pen.setDashPattern([1, 2])
    painter.setPen(pen)
    y = box.bottom() - 1.5
    painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))


def _wavy(painter: QPainter, box: QRectF) -> None:
    wave, x, up = QPainterPath(QPointF(box.left(), box.bottom() - 2)), box.left(), True
    while x < box.right():
        y = box.bottom() - 2
        wave.quadTo(QPointF(x + 2, y + (-4 if up else 4)), QPointF(x + 4, y))
        x, up = x + 4, not up
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(wave)


_LINES = {"read": _thin, "measured": _double, "seen": _dash_double, "presumed": _dotted, "answered": _wavy}


class Underline(QWidget):
    """The underline below one field of a form."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._origin = ""
        self.setFixedHeight(5)

    def show_origin(self, origin: str) -> None:
        """Show where the field's value came from; empty while it has none."""
        self._origin = origin
        self.setToolTip(origin_word(origin))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the line."""
        painter = QPainter(self)
        paint_underline(painter, QRectF(self.rect()), self._origin, QColor(current_colours().ink))


class Legend(QWidget):
    """One line that shows every underline with its word."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(self.tr("What the underlines mean"))
        self.setAccessibleDescription(", ".join(origin_word(origin) for origin in ORIGINS))

    def sizeHint(self) -> QSize:
        """Return room for all words on as many lines as fit the width."""
        return QSize(40 * GRID, self.heightForWidth(40 * GRID))

    def hasHeightForWidth(self) -> bool:
        """Words wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Return the height that the words take at a width."""
        return int(self._places(width)[-1][1].bottom()) + GRID // 2

    def _places(self, width: int) -> list[tuple[str, QRectF]]:
        metrics = self.fontMetrics()
        x, y, height, places = 0.0, 0.0, metrics.height() + 6.0, []
        for origin in ORIGINS:
            wide = float(metrics.horizontalAdvance(origin_word(origin)))
            if x and x + wide > width:
                x, y = 0.0, y + height + 2
            places.append((origin, QRectF(x, y, wide, height)))
            x += wide + 2 * GRID
        return places

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the words over their lines."""
        painter, colours = QPainter(self), current_colours()
        for origin, box in self._places(self.width()):
            painter.setPen(QColor(colours.soft))
            painter.drawText(box, Qt.AlignmentFlag.AlignTop, origin_word(origin))
            paint_underline(painter, box, origin, QColor(colours.ink))
