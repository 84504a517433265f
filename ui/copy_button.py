"""A button that says for a moment that it has copied."""

from PySide6.QtCore import QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QPushButton, QWidget

SAID_MS = 2500


class CopyButton(QPushButton):
    """Puts text on the clipboard and says so in its own words."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(words, parent)
        self._words = words
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(SAID_MS)
        self._later.timeout.connect(lambda: self.setText(self._words))

    def copy(self, text: str) -> None:
        """Copy a text."""
        QGuiApplication.clipboard().setText(text)
        self.say_copied()

    def say_copied(self) -> None:
        """Say that it was copied, without a jump of what stands beside."""
        self.setMinimumWidth(self.width())
        self.setText(self.tr("Copied"))
        self._later.start()
