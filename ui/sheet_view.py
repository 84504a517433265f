"""The swap sheet: what to write down at the left, the sheet as it prints at the right."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from matcher.rest import Rest
from matcher.sheet import Line as Step
from matcher.sheet import as_html
from ui.entry_row import Typed
from ui.line import Line, Soft, Strong
from ui.paper_view import PaperView
from ui.spans import shown
from ui.theme import GRID

BLANKS_WIDTH = 42 * GRID


class SheetView(QWidget):
    """Notes typed here stand on the sheet at once."""

    noted = Signal(str, str)
    """Name of a step and what is written down beside it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.edits: dict[str, Typed] = {}
        self.paper = PaperView(self.tr("Swap sheet"))
        self.empty = Line()
        self._body = QWidget()
        self._down = QVBoxLayout(self._body)
        self._down.setContentsMargins(0, 0, GRID, GRID)
        self._down.addWidget(Strong(self.tr("What to write down")))
        self._down.addStretch(1)
        self._words: list[QWidget] = []
        self._steps: list[tuple[str, str]] = []
        self._area = QScrollArea()
        self._area.setWidgetResizable(True)
        self._area.setWidget(self._body)
        self._area.setFixedWidth(BLANKS_WIDTH)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, GRID, 0, 0)
        down.addWidget(self.empty)
        across = QHBoxLayout()
        across.setSpacing(2 * GRID)
        across.addWidget(self._area)
        across.addWidget(self.paper, 1)
        down.addLayout(across, 1)

    def show_rest(self, rest: Rest) -> None:
        """Show the sheet of this job."""
        sheet = rest.sheet
        self.empty.setVisible(sheet is None)
        self.empty.setText(
            self.tr(
                "The sheet is written from the facts of the motor that was bought: choose it under Arrival."
            )
            if rest.bought is None
            else self.tr("What was bought is no motor, so there is no sheet for it.")
        )
        self._area.setVisible(sheet is not None)
        self.paper.setVisible(sheet is not None)
        if sheet is None:
            return
        steps = [(line.name, line.text) for line in sheet.blanks]
        if steps != self._steps:  # other steps, or other words beside one
            self._steps = steps
            self._make(sheet.blanks)
        for line in sheet.blanks:
            self.edits[line.name].show_text(line.note)
        head = " · ".join(filter(None, (rest.job.name, rest.job.place)))
        self.paper.show_page(as_html(sheet, job=head), shown(sheet.title))

    def _make(self, blanks: tuple[Step, ...]) -> None:
        for widget in (*self.edits.values(), *self._words):
            self._down.removeWidget(widget)
            widget.deleteLater()
        self.edits, self._words = {}, []
        for line in blanks:
            words, edit = Soft(line.text), Typed()
            edit.setAccessibleName(line.text)
            edit.setPlaceholderText(line.blank if any(map(str.isalpha, line.blank)) else "")
            edit.typed.connect(lambda text, name=line.name: self.noted.emit(name, text))
            self.edits[line.name] = edit
            self._words.append(words)
            for widget in (words, edit):
                self._down.insertWidget(self._down.count() - 1, widget)
