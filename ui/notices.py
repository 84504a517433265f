"""Lines about the saved jobs that stay at the foot of the window until they are answered or put away."""

from collections.abc import Callable, Mapping

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from ui.line import Trouble
from ui.spans import shown
from ui.theme import GRID

MOST = 3
"""Lines shown at once; an older one gives way."""


class Notices(QWidget):
    """Holds the lines, each with the buttons that answer it; hidden while there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.tr("Notices"))
        self._down = QVBoxLayout(self)
        self._down.setContentsMargins(0, 0, 0, 0)
        self._down.setSpacing(GRID // 2)
        self._lines: dict[str, QWidget] = {}
        self.hide()

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines shown, oldest first."""
        return tuple(self._lines)

    def add(self, line: str, answers: Mapping[str, Callable[[], object]]) -> None:
        """Show a line with a button for each answer; a button puts the line away."""
        self.remove(line)
        if len(self._lines) >= MOST:
            self.remove(next(iter(self._lines)))
        self._lines[line] = self._row(line, answers)
        self._down.addWidget(self._lines[line])
        self.show()

    def _row(self, line: str, answers: Mapping[str, Callable[[], object]]) -> QWidget:
        row, words = QWidget(), Trouble()
        across = QHBoxLayout(row)
        across.setContentsMargins(0, 0, 0, 0)
        words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        across.addWidget(words, 1)
        words.tell(shown(line))
        for said, act in {**answers, self.tr("Put away"): lambda: None}.items():
            button = QPushButton(shown(said).replace("&", "&&"))
            button.setAccessibleDescription(shown(line))
            button.clicked.connect(lambda _on=False, act=act: self._answer(line, act))
            across.addWidget(button)
        return row

    def _answer(self, line: str, act: Callable[[], object]) -> None:
        self.remove(line)
        act()

    def remove(self, line: str) -> None:
        """Take a line away."""
        row = self._lines.pop(line, None)
        if row is not None:
            self._down.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.setVisible(bool(self._lines))

    def clear(self) -> None:
        """Take all lines away."""
        for line in self.lines:
            self.remove(line)
