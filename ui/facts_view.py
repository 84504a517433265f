"""The table of one listing's facts."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from ui.facts_delegate import FactsDelegate
from ui.models.facts import FACT, VALUE, Facts
from ui.theme import GRID


class FactsView(QTableView):
    """Shows facts with the underline of their origin; the value can be edited in place."""

    def __init__(self, facts: Facts, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(facts)
        self.setItemDelegate(FactsDelegate(self))
        self.setAccessibleName(self.tr("Facts of the listing"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + GRID + 4)
        header = self.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setStretchLastSection(True)
        header.setHighlightSections(False)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        header.resizeSection(FACT, 16 * GRID)
        header.resizeSection(VALUE, 16 * GRID)
