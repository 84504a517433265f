"""Stock and lots: the shop's saved offers and opened tables, ranked against the plate."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from ui.desk import Desk, Page
from ui.line import Heading, Line
from ui.theme import GRID


class StockPage(Page):
    """Says what to do next."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        down = QVBoxLayout(self)
        down.setContentsMargins(2 * GRID, GRID, GRID, 0)
        down.addWidget(Heading(self.tr("Stock and lots")))
        down.addWidget(Line(self.tr("Open a table of offers to rank it against the old motor.")))
        down.addStretch(1)
