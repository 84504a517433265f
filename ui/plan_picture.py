"""The plan as a picture: what each candidate costs if it works and if it doesn't, with its chance.

The line across all rows is the fallback: whatever reaches it is no bargain. The step's number says the
order; what is not worth trying stands below in soft ink.
"""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.marks import paint_mark
from ui.money_words import per_cent, whole_money
from ui.theme import GRID, Colours, bold, colours_of

ROW = 4 * GRID
SHOWN = 8


@dataclass(frozen=True)
class Bar:
    """One candidate in the picture; money in the fallback's currency, `chance` 0 .. 1."""

    name: str
    verdict: str | None
    step: int
    """Place in the plan from 1; 0 when it isn't worth trying."""
    landed: float
    lost: float
    chance: float


class PlanPicture(QWidget):
    """Paints bars against the fallback's line."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bars: list[Bar] = []
        self._fallback = 0.0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(self.tr("Cost of each candidate against the fallback"))

    def show_plan(self, bars: list[Bar], fallback: float) -> None:
        """Show candidates in the order of the plan."""
        self._bars, self._fallback = bars[:SHOWN], fallback
        self.setAccessibleDescription("; ".join(self._words(bar) for bar in self._bars))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Return a row for each candidate and one for the scale."""
        return QSize(80 * GRID, ROW * (len(self._bars) + 1) + GRID)

    def _words(self, bar: Bar) -> str:
        return self.tr("{name}: {works} if it works, {fails} if not, chance {chance}").format(
            name=bar.name,
            works=whole_money(bar.landed),
            fails=whole_money(bar.lost),
            chance=per_cent(bar.chance),
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint names, bars and the line."""
        if not self._bars:
            return
        painter, colours = QPainter(self), colours_of(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left = min(40 * GRID, self.width() * 0.34)
        room = QRectF(left, 0, self.width() - left - 11 * GRID, self.height())
        most = max([self._fallback * 1.05] + [max(bar.landed, bar.lost) for bar in self._bars])
        scale = room.width() / most
        for place, bar in enumerate(self._bars):
            self._paint_bar(painter, bar, QRectF(room.left(), place * ROW, room.width(), ROW), scale, colours)
        self._paint_fallback(painter, room, scale, colours)

    def _paint_bar(self, painter: QPainter, bar: Bar, room: QRectF, scale: float, colours: Colours) -> None:
        ink = QColor(colours.ink if bar.step else colours.soft)
        middle = room.center().y()
        painter.setPen(ink)
        painter.setFont(bold(self.font()))
        number = QRectF(0, room.top(), 3 * GRID, ROW)
        painter.drawText(number, Qt.AlignmentFlag.AlignVCenter, f"{bar.step}." if bar.step else "")
        painter.setFont(self.font())
        mark = QRectF(3 * GRID, middle - 1.25 * GRID, 2.5 * GRID, 2.5 * GRID)
        paint_mark(painter, mark, bar.verdict, colours.verdict(bar.verdict))
        painter.setPen(ink)
        name = QRectF(6.5 * GRID, room.top(), room.left() - 7 * GRID, ROW)
        short = painter.fontMetrics().elidedText(bar.name, Qt.TextElideMode.ElideRight, int(name.width()))
        painter.drawText(name, Qt.AlignmentFlag.AlignVCenter, short)
        painter.fillRect(QRectF(room.left(), middle - 11, bar.landed * scale, 10), ink)
        lost = QRectF(room.left(), middle + 1, bar.lost * scale, 10)
        painter.fillRect(lost, QBrush(ink, Qt.BrushStyle.Dense5Pattern))
        painter.setPen(QPen(ink, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(lost.adjusted(0.5, 0.5, -0.5, -0.5))
        chance = QRectF(room.right() + GRID, room.top(), 10 * GRID, ROW)
        painter.drawText(
            chance, Qt.AlignmentFlag.AlignVCenter, self.tr("{} likely").format(per_cent(bar.chance))
        )

    def _paint_fallback(self, painter: QPainter, room: QRectF, scale: float, colours: Colours) -> None:
        x = room.left() + self._fallback * scale
        bottom = len(self._bars) * ROW
        painter.setPen(QPen(QColor(colours.focus), 2))
        painter.drawLine(int(x), 0, int(x), bottom + 4)
        words = self.tr("fallback {}").format(whole_money(self._fallback))
        legend = self.tr("full: if it works   dotted: lost if not")
        wide = painter.fontMetrics().horizontalAdvance(f"{words}{legend}") + 2 * GRID
        right = Qt.AlignmentFlag.AlignRight
        below, side = QRectF(0, bottom + 4, x, ROW - 4), Qt.AlignmentFlag.AlignLeft
        beside = QRectF(room.left(), bottom + 4, room.width(), ROW - 4)
        if x - room.left() < wide:  # no room at the left: the line's words and the legend change sides
            below, side = QRectF(x + GRID, bottom + 4, room.right() - x, ROW - 4), right
        painter.drawText(below, Qt.AlignmentFlag.AlignLeft if side == right else right, words)
        painter.setPen(QColor(colours.soft))
        painter.drawText(beside, side, legend)
