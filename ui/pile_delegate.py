"""Paints one listing of the pile: spin mark, name, and its state in words."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from ui.marks import paint_mark
from ui.models.pile import PRICE, STATE, VERDICT
from ui.theme import GRID, current_colours


class PileDelegate(QStyledItemDelegate):
    """Two lines a listing."""

    def sizeHint(self, option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Return room for two lines."""
        return QSize(20 * GRID, 2 * option.fontMetrics.height() + 2 * GRID)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint one row."""
        colours, box = current_colours(), option.rect
        painter.save()
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        if chosen:
            painter.fillRect(box, QColor(colours.lit))
        verdict = index.data(VERDICT)
        place = QRectF(box.left() + GRID, box.center().y() - 1.5 * GRID, 3 * GRID, 3 * GRID)
        paint_mark(painter, place, verdict, colours.verdict(verdict))
        room = box.adjusted(5 * GRID, GRID, -GRID, -GRID)
        line = option.fontMetrics.height()
        price = str(index.data(PRICE) or "")
        wide = option.fontMetrics.horizontalAdvance(price)
        lines = (
            (str(index.data()), colours.ink, room.width()),
            (str(index.data(STATE)), colours.soft, room.width() - (wide + GRID if price else 0)),
        )
        for row, (words, ink, space) in enumerate(lines):
            painter.setPen(QColor(ink))
            short = option.fontMetrics.elidedText(words, Qt.TextElideMode.ElideRight, space)
            painter.drawText(room.left(), room.top() + row * line + option.fontMetrics.ascent(), short)
        painter.setPen(QColor(colours.ink))  # a price is never cut: the words before it give way
        painter.drawText(room.right() - wide, room.top() + line + option.fontMetrics.ascent(), price)
        painter.setPen(QColor(colours.line))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        painter.restore()
