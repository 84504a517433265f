"""A table without lines and row numbers: rows are chosen whole, the last column takes what is left."""

from collections.abc import Mapping

from PySide6.QtCore import QAbstractItemModel, Qt
from PySide6.QtWidgets import QAbstractItemView, QTableView, QWidget

from ui.theme import GRID


class PlainTable(QTableView):
    """Shows a model, and Tab leaves it; `widths` are in grid steps, by column."""

    def __init__(
        self, model: QAbstractItemModel, widths: Mapping[int, int], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + GRID)
        header = self.horizontalHeader()
        header.setStretchLastSection(True)
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for column, wide in widths.items():
            header.resizeSection(column, wide * GRID)
