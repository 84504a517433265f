"""Two panes side by side, the left one with more of what room there is."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget


class Halves(QSplitter):
    """Neither pane can be closed."""

    def __init__(self, left: QWidget, right: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.addWidget(left)
        self.addWidget(right)
        self.setStretchFactor(0, 3)
        self.setStretchFactor(1, 2)
        self.setChildrenCollapsible(False)
