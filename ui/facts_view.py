"""The table of one listing's facts."""

from PySide6.QtWidgets import QWidget

from ui.facts_delegate import FactsDelegate
from ui.models.facts import FACT, VALUE, Facts
from ui.plain_table import PlainTable
from ui.theme import GRID


class FactsView(PlainTable):
    """Shows facts with the underline of their origin; the value can be edited in place."""

    def __init__(self, facts: Facts, parent: QWidget | None = None) -> None:
        super().__init__(facts, {FACT: 16, VALUE: 16}, parent)
        self.setAccessibleName(self.tr("Facts of the listing"))
        self.setItemDelegate(FactsDelegate(self))
        # The underline takes 4 pixels of its own.
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + GRID + 4)
