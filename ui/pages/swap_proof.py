"""Swap and proof: the page's frame, until a motor is bought."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from ui.desk import Desk, Page
from ui.line import Heading, Line
from ui.theme import GRID


class SwapProofPage(Page):
    """Says what to do next."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        down = QVBoxLayout(self)
        down.setContentsMargins(2 * GRID, GRID, GRID, 0)
        down.addWidget(Heading(self.tr("Swap and proof")))
        down.addWidget(
            Line(self.tr("Nothing has been bought yet: choose a candidate under Side by side first."))
        )
        down.addStretch(1)
        desk.session.answered.connect(lambda _answers: self.state.emit(self.tr("nothing bought yet")))
