"""What to look at on arrival: each question with "good" and "bad"."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from matcher.arrival.looks import BAD, GOOD, Look
from ui.choice_row import ChoiceRow
from ui.line import Line, Strong
from ui.theme import GRID


class LookList(QWidget):
    """One row a question."""

    looked = Signal(str, str)
    """Name and `ok`, `bad` or nothing."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: dict[str, ChoiceRow] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(GRID)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(0, 1)
        self._grid.addWidget(Strong(self.tr("To look at")), 0, 0)
        self._questions: list[Line] = []

    def show_looks(self, looks: tuple[Look, ...]) -> None:
        """Show the questions with their answers so far."""
        if [look.name for look in looks] != list(self.rows):
            self._make(looks)
        for look in looks:
            self.rows[look.name].show_choice(look.answer)

    def _make(self, looks: tuple[Look, ...]) -> None:
        for widget in (*self.rows.values(), *self._questions):
            self._grid.removeWidget(widget)
            widget.deleteLater()
        self.rows, self._questions = {}, []
        for place, look in enumerate(looks, 1):
            words, row = (
                Line(look.question),
                ChoiceRow(look.question, {GOOD: self.tr("good"), BAD: self.tr("bad")}),
            )
            words.setToolTip(look.how)
            row.setToolTip(look.how)
            row.chosen.connect(lambda answer, name=look.name: self.looked.emit(name, answer))
            self.rows[look.name] = row
            self._questions.append(words)
            self._grid.addWidget(words, place, 0)
            self._grid.addWidget(row, place, 1)
