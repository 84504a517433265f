"""The plan as a picture: what each candidate costs if it works and if it doesn't, with its chance.

The line across all rows is the fallback: whatever reaches it is no bargain. The step's number says the
order; what is not worth trying stands below in soft ink.
"""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.marks import paint_mark
from ui.money_words import per_cent, whole_money
from ui.theme import GRID, Colours, bold, current_colours

ROW = 4 * GRID
SHOWN = 8
BAR = 9
"""Pixels; a figure is about as high."""
FAR = 2.5
"""A fallback this many times dearer than the dearest candidate stands beyond a break: to scale it would
leave the picture empty."""
BREAK = 4 * GRID


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
    presumed: bool = False
    """Both sums count a shipping cost that nobody named."""

    def says(self, amount: float) -> str:
        """Return one of its sums as people write it; `~` stands before what is partly presumed."""
        return f"~{whole_money(amount)}" if self.presumed else whole_money(amount)


class PlanPicture(QWidget):
    """Paints bars against the fallback's line."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bars: list[Bar] = []
        self._fallback, self._more = 0.0, ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(self.tr("Cost of each candidate against the fallback"))

    def show_plan(self, bars: list[Bar], fallback: float) -> None:
        """Show candidates in the order of the plan."""
        self._bars, self._fallback = bars[:SHOWN], fallback
        self._more = self._left(bars[SHOWN:])
        self.setAccessibleDescription("; ".join(self._words(bar) for bar in self._bars))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Return a row for each candidate and one for the scale."""
        return QSize(80 * GRID, ROW * (len(self._bars) + 1) + GRID)

    def _left(self, bars: list[Bar]) -> str:
        """Say how many are not in the picture, those of the plan apart from those it leaves out."""
        planned = sum(bar.step > 0 for bar in bars)
        left = len(bars) - planned
        words = [self.tr("{} more in the plan").format(f"{planned:,}")] if planned else []
        words += [self.tr("{} not worth trying").format(f"{left:,}")] if left else []
        return ", ".join(words)

    def _words(self, bar: Bar) -> str:
        return self.tr("{name}: {works} if it works, {fails} if not, chance {chance}").format(
            name=bar.name,
            works=bar.says(bar.landed),
            fails=bar.says(bar.lost),
            chance=per_cent(bar.chance),
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint names, bars and the line."""
        if not self._bars:
            return
        painter, colours = QPainter(self), current_colours()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left = min(40 * GRID, self.width() * 0.34)
        room = QRectF(left, 0, self.width() - left - 11 * GRID, self.height())
        scale, line = self._scale(room.width())
        self._paint_line(painter, room.left() + line, colours)
        for place, bar in enumerate(self._bars):
            self._paint_bar(painter, bar, QRectF(room.left(), place * ROW, room.width(), ROW), scale, colours)
        self._paint_below(painter, room, room.left() + line, colours)

    @property
    def is_broken(self) -> bool:
        """Whether the fallback is so dear that its line stands beyond a break, not to scale."""
        return self._fallback > FAR * self._dearest

    @property
    def _dearest(self) -> float:
        return max([max(bar.landed, bar.lost) for bar in self._bars], default=0.0)

    def _scale(self, wide: float) -> tuple[float, float]:
        """Return pixels for each unit of money, and where the fallback's line stands in the room."""
        figure = self.fontMetrics().horizontalAdvance(f"~{whole_money(self._dearest)}") + 2 * GRID
        if self.is_broken:
            line = wide - GRID
            return max(1.0, line - figure - BREAK - GRID) / max(self._dearest, 1.0), line
        scale = max(1.0, wide - figure) / max(self._fallback * 1.02, self._dearest, 1.0)
        return scale, self._fallback * scale

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
        lost = QRectF(room.left(), middle + 3, bar.lost * scale, BAR)
        painter.fillRect(QRectF(room.left(), middle - 3 - BAR, bar.landed * scale, BAR), ink)
        painter.fillRect(lost, QBrush(ink, Qt.BrushStyle.Dense5Pattern))
        painter.setPen(QPen(ink, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(lost.adjusted(0.5, 0.5, -0.5, -0.5))
        for amount, y in ((bar.landed, middle - 3 - BAR), (bar.lost, middle + 3)):
            end = QPointF(room.left() + amount * scale, y + BAR)
            self._paint_figure(painter, bar.says(amount), end, colours)
        painter.setPen(ink)
        chance = QRectF(room.right() + GRID, room.top(), 10 * GRID, ROW)
        painter.drawText(
            chance, Qt.AlignmentFlag.AlignVCenter, self.tr("{} likely").format(per_cent(bar.chance))
        )

    def _paint_figure(self, painter: QPainter, words: str, end: QPointF, colours: Colours) -> None:
        """Write an amount behind its bar, over the fallback's line where they meet."""
        wide = painter.fontMetrics().horizontalAdvance(words) + GRID
        painter.fillRect(QRectF(end.x() + 2, end.y() - BAR - 1, wide, BAR + 2), QColor(colours.ground))
        painter.drawText(end + QPointF(GRID * 0.75, 0), words)

    def _paint_line(self, painter: QPainter, x: float, colours: Colours) -> None:
        bottom = len(self._bars) * ROW + 4
        painter.setPen(QPen(QColor(colours.focus), 2))
        painter.drawLine(QPointF(x, 0), QPointF(x, bottom))
        if self.is_broken:  # two strokes across: what lies between is left out
            painter.setPen(QPen(QColor(colours.soft), 1))
            for shift in (0, 5):
                start = x - BREAK + shift
                painter.drawLine(QPointF(start, bottom), QPointF(start + 6, 0))

    def _paint_below(self, painter: QPainter, room: QRectF, x: float, colours: Colours) -> None:
        """Name the line, and what full and dotted bars mean, in the row below."""
        top, metrics = len(self._bars) * ROW + 4, painter.fontMetrics()
        words = self.tr("fallback {}").format(whole_money(self._fallback))
        words += self.tr(", not to scale") if self.is_broken else ""
        legend = self.tr("full: if it works   dotted: lost if not")
        if any(bar.presumed for bar in self._bars):
            legend += self.tr("   ~ shipping presumed")
        wide = metrics.horizontalAdvance(words)
        start = min(max(room.left(), x - wide), room.right() - wide)
        painter.setPen(QColor(colours.focus))
        painter.drawText(QRectF(start, top, wide + GRID, ROW - 4), 0, words)
        painter.setPen(QColor(colours.soft))
        beside = room.left() if start - room.left() > metrics.horizontalAdvance(legend) + GRID else 0.0
        painter.drawText(QRectF(beside, top, start - beside, ROW - 4), 0, legend)
        if beside:
            painter.drawText(QRectF(0, top, room.left(), ROW - 4), 0, self._more)
