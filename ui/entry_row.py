"""One line to fill in: label, editor, unit, and its trouble below; what was typed stays, right or wrong."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from ui.line import Line, Soft, Trouble
from ui.theme import GRID

LABEL_WIDTH = 19 * GRID
UNIT_WIDTH = 7 * GRID


class Typed(QLineEdit):
    """A line that tells of every change made by the user, and is never overwritten under his fingers."""

    typed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.textEdited.connect(self.typed)

    def show_text(self, text: str) -> None:
        """Show a text from the job; while the user writes here, his own is newer."""
        if self.text() != text and not (self.hasFocus() and self.isModified()):
            self.setText(text)
            self.setCursorPosition(0)
        if self.text() == text:
            self.setModified(False)


class EntryRow(QWidget):
    """One entry of a form."""

    entered = Signal(str, str)
    """Name and text."""

    def __init__(
        self, name: str, label: str, unit: str = "", how: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.name = name
        self.edit, self.trouble = Typed(), Trouble()
        self.edit.setAccessibleName(f"{label}, {unit}" if unit else label)
        self.edit.setAccessibleDescription(how)
        self.edit.setToolTip(how)
        self.edit.typed.connect(lambda text: self.entered.emit(name, text))
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GRID)
        grid.setVerticalSpacing(0)
        words = Line(label, wrap=False)
        words.setBuddy(self.edit)
        words.setToolTip(how)
        words.setFixedWidth(LABEL_WIDTH)
        grid.addWidget(words, 0, 0)
        grid.addWidget(self.edit, 0, 1)
        self._unit = Soft(unit)
        self._unit.setWordWrap(False)
        self._unit.setFixedWidth(UNIT_WIDTH)
        grid.addWidget(self._unit, 0, 2)
        grid.addWidget(self.trouble, 1, 0, 1, 3)
        grid.setColumnStretch(1, 1)
        self.setFocusProxy(self.edit)

    def show_entry(self, text: str, fault: str = "") -> None:
        """Show what the job holds, and why it doesn't count."""
        self.edit.show_text(text)
        self.trouble.tell(fault)
