"""The names of the rows at the left of the comparison; heads of groups in bold."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QHeaderView, QWidget

from ui.models.side import Side
from ui.theme import GRID, bold, current_colours


class RowHeader(QHeaderView):
    """Paints row names over a `Side` model."""

    def __init__(self, side: Side, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self._side = side
        self.setHighlightSections(False)
        self.setSectionsClickable(False)

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one name."""
        colours, row = current_colours(), self._side.rows[section]
        head = row.kind == "head"
        painter.save()
        painter.fillRect(rect, QColor(colours.ground if head else colours.sheet))
        painter.setFont(bold(self.font()) if head else self.font())
        painter.setPen(QColor(colours.ink))
        painter.drawText(rect.adjusted(GRID, 0, 0, 0), Qt.AlignmentFlag.AlignVCenter, row.label)
        if head:
            painter.setPen(QColor(colours.line))
            painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        painter.restore()
