"""One question with a few words to choose from, as buttons in a row; choosing again takes it back."""

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QToolButton, QWidget

from ui.theme import GRID


class ChoiceRow(QWidget):
    """Buttons of which none or one is down."""

    chosen = Signal(str)
    """The word that was chosen; empty when it was taken back."""

    def __init__(self, about: str, words: Mapping[str, str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(GRID // 2)
        self.buttons: dict[str, QToolButton] = {}
        for key, text in words.items():
            button = QToolButton()
            button.setText(text)
            button.setCheckable(True)
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            button.setAccessibleName(f"{about} {text}")
            button.clicked.connect(lambda down, one=key: self._choose(one, down=down))
            across.addWidget(button)
            self.buttons[key] = button
        across.addStretch(1)

    def _choose(self, key: str, *, down: bool) -> None:
        self.show_choice(key if down else "")
        self.chosen.emit(key if down else "")

    def show_choice(self, key: str) -> None:
        """Show which word is chosen."""
        for one, button in self.buttons.items():
            button.setChecked(one == key)
