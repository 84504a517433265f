"""Paints the mark with its word, and the range bar, in a lot's table."""

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from ui.marks import mark_pixmap
from ui.models.lot_columns import RANGE
from ui.models.lot_table import SCORES, VERDICT
from ui.range_bar import paint_range
from ui.theme import GRID, current_colours

Index = QModelIndex | QPersistentModelIndex
SIDE = 2 * GRID


class LotDelegate(QStyledItemDelegate):
    """One cell."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._marks: dict[tuple[str | None, str, float], QPixmap] = {}

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint mark or bar."""
        colours = current_colours()
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, QColor(colours.lit))
        if index.column() == RANGE:
            room = QRectF(option.rect).adjusted(GRID, 2, -GRID, -2)
            paint_range(painter, room, index.data(SCORES), colours)
        else:
            self._paint_mark(painter, option, index)
        painter.restore()

    def _paint_mark(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        colours, verdict = current_colours(), index.data(VERDICT)
        ink, scale = colours.verdict(verdict), painter.device().devicePixelRatioF()
        key = (verdict, ink.name(), scale)
        picture = self._marks.get(key)
        if picture is None:
            picture = self._marks[key] = mark_pixmap(verdict, SIDE, ink, scale)
        top = option.rect.top() + (option.rect.height() - SIDE) // 2
        painter.drawPixmap(option.rect.left() + GRID // 2, top, picture)
        painter.setPen(ink)
        room = option.rect.adjusted(3 * GRID + 4, 0, 0, 0)
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, str(index.data()))
