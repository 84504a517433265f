"""Money: what to try in which order."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from ui.desk import Desk, Page
from ui.line import Heading, Line
from ui.theme import GRID


class MoneyPage(Page):
    """Says what to do next."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        down = QVBoxLayout(self)
        down.setContentsMargins(2 * GRID, GRID, GRID, 0)
        down.addWidget(Heading(self.tr("Money")))
        down.addWidget(Line(self.tr("Type the plate and paste listings first.")))
        down.addStretch(1)
