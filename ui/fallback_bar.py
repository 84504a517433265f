"""What is paid if no second-hand motor works: the line that every gamble is measured against."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from matcher.job import Fallback
from ui.line import Line, Trouble
from ui.theme import GRID


class FallbackBar(QWidget):
    """Price, currency and what it is for."""

    entered = Signal(str, str, str)
    """Price, currency, what."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.price, self.currency, self.what, self.trouble = QLineEdit(), QLineEdit(), QLineEdit(), Trouble()
        names = (self.tr("Price of the fallback"), self.tr("Currency"), self.tr("What the fallback is"))
        across = QHBoxLayout()
        across.addWidget(Line(self.tr("If nothing works, I pay"), wrap=False))
        for edit, name, wide in zip((self.price, self.currency, self.what), names, (12, 7, 30), strict=True):
            edit.setAccessibleName(name)
            edit.setFixedWidth(wide * GRID)
            edit.editingFinished.connect(self._enter)
            edit.textEdited.connect(lambda _text: self.trouble.tell(""))
            across.addWidget(edit)
        self.what.setPlaceholderText(self.tr("quote, or new part at a counter"))
        across.addStretch(1)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.addLayout(across)
        down.addWidget(self.trouble)
        self._shown: tuple[str, str, str] = ("", "USD", "quote")
        self._put()

    def show_fallback(self, fallback: Fallback | None) -> None:
        """Show the job's fallback."""
        shown = ("", "USD", "quote")
        if fallback is not None:
            shown = (f"{fallback.price:g}", fallback.currency, fallback.what)
        if shown != self._shown:
            self._shown = shown
            self._put()

    def _put(self) -> None:
        for edit, text in zip((self.price, self.currency, self.what), self._shown, strict=True):
            edit.setText(text)

    def _enter(self) -> None:
        now = (self.price.text(), self.currency.text().upper(), self.what.text())
        if now != self._shown:
            self._shown = now
            self.entered.emit(*now)
