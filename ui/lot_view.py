"""The table of a lot: rows of one height, so that 50,000 of them scroll at once."""

from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QWidget

from ui.lot_delegate import LotDelegate
from ui.models.lot_table import CHANCE, LANDED, MARK, NAME, NUMBER, RANGE, LotTable
from ui.plain_table import PlainTable
from ui.theme import GRID

WIDTHS = {MARK: 17, RANGE: 15, LANDED: 16, CHANCE: 8, NAME: 32, NUMBER: 16}


class LotView(PlainTable):
    """Shows a `LotTable`; several rows may be selected."""

    def __init__(self, model: LotTable, parent: QWidget | None = None) -> None:
        super().__init__(model, WIDTHS, parent)
        self.setAccessibleName(self.tr("Offers, best first"))
        painted = LotDelegate(self)
        for column in (MARK, RANGE):
            self.setItemDelegateForColumn(column, painted)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setWordWrap(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        rows = self.verticalHeader()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(3 * GRID)
        self.horizontalHeader().setSectionsClickable(True)
