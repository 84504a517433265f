"""A form of entries in groups, scrolled; what was typed stays, right or wrong."""

from collections.abc import Iterable, Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from ui.choice_row import ChoiceRow
from ui.entry_row import LABEL_WIDTH, EntryRow
from ui.line import Line, Strong
from ui.theme import GRID


class EntryForm(QScrollArea):
    """Rows by name."""

    entered = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows: dict[str, EntryRow] = {}
        self.choices: dict[str, ChoiceRow] = {}
        self._holders: dict[str, QWidget] = {}
        body = QWidget()
        self._down = QVBoxLayout(body)
        self._down.setContentsMargins(0, 0, GRID, GRID)
        self._down.setSpacing(2)
        self._down.addStretch(1)
        self.setWidgetResizable(True)
        self.setWidget(body)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def add_heading(self, words: str) -> None:
        """Start a group."""
        label = Strong(words)
        label.setContentsMargins(0, GRID if self._down.count() > 1 else 0, 0, 0)
        self._add(label)

    def add_entry(self, name: str, label: str, unit: str, how: str) -> None:
        """Add a line to type into."""
        row = EntryRow(name, label, unit, how)
        row.entered.connect(self.entered)
        self.rows[name] = row
        self._add(row)

    def add_choice(self, name: str, label: str, words: Iterable[str], how: str) -> None:
        """Add a row of words to choose from."""
        row = ChoiceRow(label, {word: word for word in words})
        row.setToolTip(how)
        row.chosen.connect(lambda text: self.entered.emit(name, text))
        holder = QWidget()
        across = QHBoxLayout(holder)
        across.setContentsMargins(0, 0, 0, 0)
        words_label = Line(label, wrap=False)
        words_label.setFixedWidth(LABEL_WIDTH)
        across.addWidget(words_label)
        across.addWidget(row, 1)
        self.choices[name] = row
        self._holders[name] = holder
        self._add(holder)

    def show_choice(self, name: str, *, visible: bool) -> None:
        """Show a row of choices, or put it away while it doesn't apply."""
        self._holders[name].setVisible(visible)

    def _add(self, widget: QWidget) -> None:
        self._down.insertWidget(self._down.count() - 1, widget)

    def show_entries(self, texts: Mapping[str, str], faults: Mapping[str, str]) -> None:
        """Show what the job holds, and why an entry doesn't count."""
        for name, row in self.rows.items():
            row.show_entry(texts.get(name, ""), faults.get(name, ""))
        for name, choice in self.choices.items():
            choice.show_choice(texts.get(name, ""))
