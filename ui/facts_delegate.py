"""Paints a fact: conflicts in bold, and the underline of where its value came from."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPalette
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from ui.models.facts import IS_CONFLICT, ORIGIN, VALUE, WORDS
from ui.theme import current_colours
from ui.underline import paint_underline

Index = QModelIndex | QPersistentModelIndex


class FactsDelegate(QStyledItemDelegate):
    """One row of the facts table."""

    def initStyleOption(self, option: QStyleOptionViewItem, index: Index) -> None:
        """Make conflicts bold, words soft, and cut long words at their end."""
        super().initStyleOption(option, index)
        colours = current_colours()
        option.textElideMode = Qt.TextElideMode.ElideRight
        tint = QColor(colours.soft if index.column() == WORDS else colours.ink)
        if index.data(IS_CONFLICT):
            option.font.setBold(True)
            tint = QColor(colours.wont_fit)
        option.palette.setColor(QPalette.ColorRole.Text, tint)
        option.palette.setColor(QPalette.ColorRole.HighlightedText, tint)
        option.palette.setColor(QPalette.ColorRole.Highlight, QColor(colours.lit))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint the cell, then the underline below its words."""
        super().paint(painter, option, index)
        words, origin = index.data(), index.data(ORIGIN)
        if index.column() == VALUE and words and origin:
            wide = min(option.fontMetrics.horizontalAdvance(words), option.rect.width() - 8)
            box = QRectF(option.rect.left() + 3, option.rect.top(), wide, option.rect.height() - 2)
            paint_underline(painter, box, origin, QColor(current_colours().ink))
