"""Paints a cell of the comparison: the outcome's sign, then the value; the sign says it without colour."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from ui.models.side import IS_HEAD, OUTCOME
from ui.theme import GRID, Colours, bold, current_colours
from ui.words import outcome_sign
from ui.wrapped import paint_wrapped

Index = QModelIndex | QPersistentModelIndex
INKS = {"same": "soft", "ok": "soft", "loss": "poor", "unknown": "ask", "fail": "wont_fit"}


class SideDelegate(QStyledItemDelegate):
    """One cell."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint sign and value, or the head of a group."""
        colours, box = current_colours(), option.rect
        painter.save()
        if index.data(IS_HEAD):
            self._paint_head(painter, box, colours)
        else:
            self._paint_value(painter, box, option, index, colours)
        painter.restore()

    def _paint_head(self, painter: QPainter, box: QRect, colours: Colours) -> None:
        painter.fillRect(box, QColor(colours.ground))
        painter.setPen(QColor(colours.line))
        painter.drawLine(box.bottomLeft(), box.bottomRight())

    def _paint_value(
        self, painter: QPainter, box: QRect, option: QStyleOptionViewItem, index: Index, colours: Colours
    ) -> None:
        outcome = index.data(OUTCOME)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(colours.lit))
        if outcome:
            painter.setFont(bold(option.font))
            painter.setPen(QColor(getattr(colours, INKS[outcome])))
            sign = QRect(box.left() + GRID // 2, box.top(), 2 * GRID, box.height())
            painter.drawText(sign, Qt.AlignmentFlag.AlignCenter, outcome_sign(outcome))
        loud = outcome in {"fail", "unknown", "loss"}
        painter.setFont(bold(option.font) if outcome == "fail" else option.font)
        painter.setPen(QColor(colours.ink if loud or not outcome else colours.soft))
        words = str(index.data() or "")
        room = box.adjusted(3 * GRID, 0, -GRID // 2, 0)
        paint_wrapped(painter, room, words)
        painter.setPen(QColor(colours.line))
        painter.drawLine(box.topRight(), box.bottomRight())
