"""The line that filters a table by words or a verdict."""

from PySide6.QtWidgets import QLineEdit, QWidget

from ui.theme import GRID


class FilterEdit(QLineEdit):
    """Says what it takes, and is emptied by one click; `wide` is in grid steps."""

    def __init__(self, name: str, wide: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setPlaceholderText(self.tr("filter: words or a verdict"))
        self.setAccessibleName(name)
        self.setClearButtonEnabled(True)
        self.setFixedWidth(wide * GRID)
