"""What an empty page says: one sentence about what to do next, and the example."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from ui.line import Line
from ui.theme import GRID


class Empty(QWidget):
    """A sentence with a button that opens the example job."""

    example = Signal()

    def __init__(self, sentence: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.line = Line(sentence)
        button = QPushButton(self.tr("Show the &example"))
        button.clicked.connect(self.example)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(2 * GRID)
        across.addWidget(self.line, 1)
        across.addWidget(button)
