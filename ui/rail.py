"""The rail at the left: the six stages of a job, each with its state in words; any order will do."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from ui.theme import GRID, bold, current_colours

STATE = Qt.ItemDataRole.UserRole + 1
_WRAPPED = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignTop


class _StageDelegate(QStyledItemDelegate):
    """Paints a stage's name in bold over its state, and a bar before the chosen one.

    It asks the rail itself what is chosen: loading the style's flags would cost a tenth of the start.
    """

    def __init__(self, rail: "Rail") -> None:
        super().__init__(rail)
        self._rail = rail

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Return room for the name and two lines of state; where the rail is low, for what is said alone."""
        line, room = option.fontMetrics.height(), self._rail.viewport().size()
        ample = 3 * line + 3 * GRID
        if self._rail.count() * ample <= room.height():
            return QSize(20 * GRID, ample)
        beside = QRect(0, 0, room.width() - 3 * GRID, ample)
        said = option.fontMetrics.boundingRect(beside, _WRAPPED, str(index.data(STATE) or "")).height()
        return QSize(20 * GRID, line + min(said, 2 * line) + GRID + GRID // 2)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint one stage."""
        colours, box = current_colours(), option.rect
        chosen = index.row() == self._rail.currentRow()
        painter.save()
        if chosen:
            painter.fillRect(box, QColor(colours.sheet))
            painter.fillRect(QRect(box.left(), box.top(), 4, box.height()), QColor(colours.focus))
        line = option.fontMetrics.height()
        top = GRID if box.height() >= 3 * line + 3 * GRID else GRID // 2
        room = box.adjusted(2 * GRID, top, -GRID, -2)
        painter.setFont(bold(option.font))
        painter.setPen(QColor(colours.ink))
        painter.drawText(room, Qt.AlignmentFlag.AlignTop, str(index.data()))
        painter.setFont(option.font)
        painter.setPen(QColor(colours.soft))
        below = room.adjusted(0, line + 2, 0, 0)
        painter.drawText(below, _WRAPPED, str(index.data(STATE) or ""))
        if chosen and self._rail.hasFocus():
            painter.setPen(QColor(colours.focus))
            painter.drawRect(box.adjusted(0, 0, -1, -1))
        painter.restore()


class Rail(QListWidget):
    """Lists the stages; `chosen` tells which one the user went to."""

    chosen = Signal(int)

    def __init__(self, names: list[str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.tr("Stages of the job"))
        self.setItemDelegate(_StageDelegate(self))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.viewport().setAutoFillBackground(False)
        self.setStyleSheet("QListView { background: palette(window); }")  # not for its scroll bar
        for name in names:
            item = QListWidgetItem(name, self)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, name)
        self.setCurrentRow(0)
        self.currentRowChanged.connect(self.chosen)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Measure the stages anew: how much room each has goes by the height of the rail."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()

    def show_state(self, stage: int, words: str) -> None:
        """Show a stage's state in words."""
        item = self.item(stage)
        item.setData(STATE, words)
        item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{item.text()}: {words}" if words else item.text())
        item.setToolTip(words)
        self.scheduleDelayedItemsLayout()
