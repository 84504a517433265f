"""How to find or measure the chosen field: one sentence and a sketch."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from matcher.cautions import cautions_for
from ui.caution import Caution
from ui.fields import fields
from ui.line import Line, Soft, Strong
from ui.sketch import Sketch
from ui.theme import GRID


class HowTo(QWidget):
    """Follows the keyboard from field to field."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sketch, self._name, self._how, self._source = Sketch(), Strong(), Line(), Soft()
        self.caution = Caution(cautions_for("measure"))
        words = QVBoxLayout()
        words.setSpacing(GRID // 2)
        for line in (self._name, self._how, self.caution, self._source):
            line.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
            words.addWidget(line)
        words.addStretch(1)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.addWidget(self._sketch)
        across.addLayout(words, 1)
        self.show_field("part_number")

    def show_field(self, name: str) -> None:
        """Explain one field."""
        field = fields()[name]
        self._sketch.show_field(name)
        self._name.setText(field.label)
        self._how.setText(field.how)
        self._source.setText(field.source)
        self.caution.setHidden(field.group != "measure")
