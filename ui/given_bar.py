"""What the text does not say: seen in its pictures, or answered by the seller, in one gesture each."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QCompleter, QGridLayout, QHBoxLayout, QLineEdit, QPushButton, QWidget

from matcher.entry import choices
from matcher.record import Origin
from ui.fields import fields
from ui.line import Line, Trouble
from ui.still_box import StillBox
from ui.theme import GRID
from ui.words import choice_word

ABOVE = 2
"""Boxes in the first row of what pictures show, the longest words; three stand below."""


class FieldBox(StillBox):
    """Chooses a field by name; typing finds it."""

    def __init__(self, groups: tuple[str, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)
        for one in fields().values():
            if one.group in groups:
                self.addItem(one.label, one.name)
        completer = QCompleter(self.model(), self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        self.setCompleter(completer)

    def field(self) -> str:
        """Return the chosen field's name."""
        at = self.findText(self.currentText(), Qt.MatchFlag.MatchFixedString)
        return str(self.itemData(at if at >= 0 else self.currentIndex()))


class GivenBar(QWidget):
    """One row of what pictures show, one row for the seller's answer and for selected words."""

    given = Signal(str, str, object)
    """Field, the text of its value, `Origin`."""
    words_are = Signal(str)
    """The selected words say this field."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.trouble = Trouble()
        self._answer, self._answered = QLineEdit(), FieldBox(("plate", "measure", "offer"))
        self._words_field = FieldBox(("plate", "measure", "offer"))
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GRID)
        for row, (words, layout) in enumerate(
            (
                (self.tr("Selected words are"), self._words_row()),
                (self.tr("In a picture"), self._seen_row()),
                (self.tr("Seller says"), self._answer_row()),
            )
        ):
            grid.addWidget(Line(words, wrap=False), row, 0)
            grid.addLayout(layout, row, 1)
        grid.addWidget(self.trouble, 3, 0, 1, 2)
        grid.setColumnStretch(1, 1)

    def _words_row(self) -> QHBoxLayout:
        across = QHBoxLayout()
        self._words_field.setAccessibleName(self.tr("Which fact the selected words are"))
        across.addWidget(self._words_field, 1)
        button = QPushButton(self.tr("Take them"))
        button.clicked.connect(lambda: self.words_are.emit(self._words_field.field()))
        across.addWidget(button)
        return across

    def _seen_row(self) -> QGridLayout:
        """Two rows, so that each word stands whole in a narrow window too."""
        grid = QGridLayout()
        grid.setSpacing(GRID // 2)
        for place, (field, words) in enumerate(
            (
                ("mounting", self.tr("held by")),
                ("turn", self.tr("turn")),
                ("shaft_flats", self.tr("flats")),
                ("shaft_keyed", self.tr("keyway")),
                ("shaft_ends", self.tr("ends")),
            )
        ):
            row, wide = (0, 3) if place < ABOVE else (1, 2)
            column = wide * (place - (ABOVE if row else 0))
            grid.addWidget(self._seen_box(field, words), row, column, 1, wide)
        for column in range(6):
            grid.setColumnStretch(column, 1)
        return grid

    def _seen_box(self, field: str, words: str) -> StillBox:
        box = StillBox()
        box.setAccessibleName(self.tr("Seen in a picture: {}").format(fields()[field].label))
        box.setPlaceholderText(words)
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        box.setMinimumContentsLength(1)
        box.setMinimumWidth(9 * GRID)
        box.view().setMinimumWidth(18 * GRID)
        for value in choices(field) or (True, False):
            text = {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value)
            box.addItem(choice_word(field, value), text)
        box.setCurrentIndex(-1)
        box.activated.connect(lambda at: self._saw(box, field, at))
        return box

    def _saw(self, box: QComboBox, field: str, at: int) -> None:
        self.given.emit(field, box.itemData(at), Origin.SEEN)
        box.setCurrentIndex(-1)

    def _answer_row(self) -> QHBoxLayout:
        across = QHBoxLayout()
        self._answered.setAccessibleName(self.tr("Which fact the seller answered"))
        self._answer.setAccessibleName(self.tr("The seller's answer"))
        self._answer.setPlaceholderText(self.tr("the answer, then Enter"))
        self._answer.returnPressed.connect(self._answer_given)
        across.addWidget(self._answered)
        across.addWidget(self._answer, 1)
        return across

    def choose(self, field: str) -> None:
        """Choose a field in both boxes, as when its row in the facts was clicked."""
        for box in (self._answered, self._words_field):
            box.setCurrentIndex(box.findData(field))

    def _answer_given(self) -> None:
        self.given.emit(self._answered.field(), self._answer.text(), Origin.ANSWERED)

    def tell(self, line: str) -> None:
        """Show why the last gesture could not be taken; with nothing to tell, the answer is cleared."""
        self.trouble.tell(line)
        if not line:
            self._answer.clear()
