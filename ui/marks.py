"""Spin marks: a verdict drawn as the turn of a motor seen from its end.

Two arcs chase each other round a shaft with a flat, inside the thin circle of the shell. The shape
says the verdict, so that it reads at 16 px and in grey; the word always stands beside it, and a mark
never sits on a button.
"""

import math
from collections.abc import Callable, Mapping

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPixmap, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from matcher.finding import Verdict
from ui.theme import GRID, bold, current_colours
from ui.words import verdict_word

ORBIT, SHELL, SHAFT = 0.58, 0.93, 0.24
"""Radii of the arcs, the shell and the shaft, as shares of half the mark's width."""
STROKE = 0.18
HEAD = 0.26


def paint_mark(painter: QPainter, box: QRectF, verdict: str | None, ink: QColor) -> None:
    """Paint the mark of a verdict into a square box; `None` (not a motor) is the bare shell."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.center())
    half = min(box.width(), box.height()) / 2
    painter.scale(half, half)
    _MARKS.get(verdict, _bare)(painter, ink)
    painter.restore()


def _pen(ink: QColor, width: float) -> QPen:
    return QPen(ink, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)


def _shell(painter: QPainter, ink: QColor) -> None:
    painter.setPen(_pen(ink, 0.09))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawEllipse(QPointF(0, 0), SHELL, SHELL)


def _shaft(painter: QPainter, ink: QColor) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    painter.drawChord(QRectF(-SHAFT, -SHAFT, 2 * SHAFT, 2 * SHAFT), 145 * 16, 250 * 16)


def _arc(painter: QPainter, ink: QColor, start: float, sweep: float, width: float = STROKE) -> None:
    """Draw an arc with its head at the far end; degrees, counter-clockwise from three o'clock."""
    box = QRectF(-ORBIT, -ORBIT, 2 * ORBIT, 2 * ORBIT)
    painter.setPen(_pen(ink, width))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawArc(box, round(start * 16), round(sweep * 16))
    _head(painter, ink, start + sweep, 1 if sweep > 0 else -1, HEAD * (0.7 + 0.3 * width / STROKE))


def _head(painter: QPainter, ink: QColor, at: float, way: int, size: float) -> None:
    angle = math.radians(at)
    middle = QPointF(ORBIT * math.cos(angle), -ORBIT * math.sin(angle))
    along = QPointF(-math.sin(angle), -math.cos(angle)) * way
    across = QPointF(math.cos(angle), -math.sin(angle))
    corners = [middle + along * (1.5 * size), middle + across * size, middle - across * size]
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    painter.drawPolygon(QPolygonF(corners))


def _fits(painter: QPainter, ink: QColor) -> None:
    _shell(painter, ink)
    _shaft(painter, ink)
    _arc(painter, ink, 178, -136)
    _arc(painter, ink, -2, -136)


def _fits_with_work(painter: QPainter, ink: QColor) -> None:
    _shell(painter, ink)
    _shaft(painter, ink)
    _arc(painter, ink, 178, -136)
    box = QRectF(-ORBIT, -ORBIT, 2 * ORBIT, 2 * ORBIT)
    painter.setPen(_pen(ink, STROKE))
    for start in (-6, -58):
        painter.drawArc(box, start * 16, -26 * 16)
    _head(painter, ink, -138, -1, HEAD)


def _poor(painter: QPainter, ink: QColor) -> None:
    _shell(painter, ink)
    _shaft(painter, ink)
    _arc(painter, ink, 178, -136)
    _arc(painter, ink, -62, -40, 0.08)


def _ask(painter: QPainter, ink: QColor) -> None:
    painter.setPen(_pen(ink, 0.09))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawArc(QRectF(-SHELL, -SHELL, 2 * SHELL, 2 * SHELL), -50 * 16, 280 * 16)
    _shaft(painter, ink)
    _arc(painter, ink, 178, -136)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    painter.drawEllipse(QPointF(0, 0.78), 0.16, 0.16)


def _wont_fit(painter: QPainter, ink: QColor) -> None:
    _shell(painter, ink)
    _arc(painter, ink, 190, -136)
    _arc(painter, ink, 170, 136)
    painter.setPen(_pen(ink, STROKE))
    painter.drawLine(QPointF(0.32, 0), QPointF(SHELL, 0))


def _bare(painter: QPainter, ink: QColor) -> None:
    _shell(painter, ink)


_MARKS: Mapping[str | None, Callable[[QPainter, QColor], None]] = {
    Verdict.FITS: _fits,
    Verdict.FITS_WITH_WORK: _fits_with_work,
    Verdict.POOR: _poor,
    Verdict.ASK: _ask,
    Verdict.WONT_FIT: _wont_fit,
}


def mark_pixmap(verdict: str | None, side: int, ink: QColor, scale: float = 1.0) -> QPixmap:
    """Return the mark as a transparent picture, `side` device-independent pixels wide."""
    made = QPixmap(QSize(side, side) * scale)
    made.setDevicePixelRatio(scale)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    paint_mark(painter, QRectF(0, 0, side, side), verdict, ink)
    painter.end()
    return made


class VerdictMark(QWidget):
    """A spin mark with its word."""

    def __init__(self, verdict: str | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._verdict, self._word = verdict, ""
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.setFont(bold(self.font()))
        self.show_verdict(verdict)

    def show_verdict(self, verdict: str | None, minds: int = 0) -> None:
        """Show another verdict, with what is still to mind."""
        self._verdict, self._word = verdict, verdict_word(verdict, minds)
        self.setAccessibleName(self._word)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for the mark, a gap and the word."""
        word = self.fontMetrics().horizontalAdvance(self._word)
        return QSize(3 * GRID + GRID + word + GRID, 3 * GRID)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint mark and word."""
        painter = QPainter(self)
        ink = current_colours().verdict(self._verdict)
        paint_mark(painter, QRectF(0, 0, 3 * GRID, 3 * GRID), self._verdict, ink)
        painter.setPen(ink)
        room = self.rect().adjusted(4 * GRID, 0, 0, 0)
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, self._word)
