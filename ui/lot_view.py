"""The table of a lot: rows of one height, so that 50,000 of them scroll at once."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from ui.lot_delegate import LotDelegate
from ui.models.lot_table import CHANCE, LANDED, MARK, NAME, NUMBER, RANGE, LotTable
from ui.theme import GRID

WIDTHS = {MARK: 17, RANGE: 15, LANDED: 14, CHANCE: 8, NAME: 32, NUMBER: 16}


class LotView(QTableView):
    """Shows a `LotTable`; several rows may be selected."""

    def __init__(self, model: LotTable, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        painted = LotDelegate(self)
        for column in (MARK, RANGE):
            self.setItemDelegateForColumn(column, painted)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        rows = self.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(3 * GRID)
        self._prepare_header()

    def _prepare_header(self) -> None:
        header = self.horizontalHeader()
        header.setStretchLastSection(True)
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for column, wide in WIDTHS.items():
            header.resizeSection(column, wide * GRID)
        header.setSectionsClickable(True)
