"""Conflicts of a listing, each a line with a button for every value that the text gives."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from matcher.record import Conflict, Record
from ui.fields import label
from ui.line import Trouble
from ui.spans import shown
from ui.theme import GRID
from ui.units import Units


class Conflicts(QWidget):
    """Asks for each conflict to be settled; hidden while there is none."""

    settled = Signal(str, object, str)
    """Field, the value that counts, the words behind it."""
    pointed = Signal(str)

    def __init__(self, units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._units = units
        self._shown: tuple[Conflict, ...] = ()
        self._down = QVBoxLayout(self)
        self._down.setContentsMargins(0, 0, 0, 0)
        self._down.setSpacing(GRID // 2)
        self.hide()

    def show_record(self, record: Record) -> None:
        """Show a record's conflicts."""
        if record.conflicts == self._shown:
            return
        self._shown = record.conflicts
        while (item := self._down.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.hide()
                old.deleteLater()
        for conflict in record.conflicts:
            self._down.addWidget(self._line(conflict))
        self.setVisible(bool(record.conflicts))

    def _line(self, conflict: Conflict) -> QWidget:
        whole = QWidget()
        down = QVBoxLayout(whole)
        down.setContentsMargins(0, 0, 0, 0)
        words = Trouble()
        down.addWidget(words)
        across = QHBoxLayout()
        down.addLayout(across)
        words.tell(self.tr("{}: the listing says both. Which counts?").format(label(conflict.field)))
        for value, said in zip(conflict.values, conflict.said, strict=False):
            button = QPushButton(shown(self._units.words(conflict.field, value)).replace("&", "&&"))
            button.setAccessibleDescription(shown(said))
            button.clicked.connect(
                lambda _on=False, one=conflict, value=value, said=said: self.settled.emit(
                    one.field, value, said
                )
            )
            across.addWidget(button)
        show = QPushButton(self.tr("Show"))
        show.clicked.connect(lambda _on=False, one=conflict: self.pointed.emit(one.field))
        across.addWidget(show)
        across.addStretch(1)
        return whole
