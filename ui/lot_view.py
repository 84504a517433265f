"""The table of a lot: rows of one height, so that 50,000 of them scroll at once."""

from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QWidget

from ui.lot_delegate import LotDelegate
from ui.models import lot_columns as at
from ui.models.lot_table import LotTable
from ui.plain_table import PlainTable
from ui.theme import GRID

WIDTHS = {
    at.MARK: 20,
    at.RANGE: 11,
    at.LANDED: 14,
    at.CHANCE: 8,
    at.NAME: 24,
    at.CONDITION: 12,
    at.PRICE: 12,
    at.QUANTITY: 5,
    at.RETURNS: 9,
    at.SOURCE: 11,
}


class LotView(PlainTable):
    """Shows a `LotTable`; several rows may be selected."""

    def __init__(self, model: LotTable, parent: QWidget | None = None) -> None:
        super().__init__(model, WIDTHS, parent)
        self.setAccessibleName(self.tr("Offers, best first"))
        painted = LotDelegate(self)
        for column in (at.MARK, at.RANGE):
            self.setItemDelegateForColumn(column, painted)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setWordWrap(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        rows = self.verticalHeader()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(3 * GRID)
        self.horizontalHeader().setSectionsClickable(True)
