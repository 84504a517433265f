"""A list to choose from that the wheel scrolls past, and never changes in passing."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QWidget


class StillBox(QComboBox):
    """Changed by click and keyboard alone."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to what scrolls behind it."""
        event.ignore()
