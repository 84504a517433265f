"""The results of a proof run: whether each is right, and the sentence that says so."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QGridLayout, QWidget

from matcher.airflow.result import Outcome, Result
from ui.line import Line
from ui.theme import GRID, bold, current_colours

SIGNS: dict[Outcome, str] = {"good": "=", "watch": "!", "bad": "×", "note": ""}
INKS: dict[Outcome, str] = {"good": "fits", "watch": "poor", "bad": "wont_fit", "note": "ink"}


class ResultList(QWidget):
    """One line a result: sign, word, sentence; the rule's source on demand."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._lines: list[tuple[Line, Line]] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(GRID)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(1, 1)

    def show_results(self, results: tuple[Result, ...]) -> None:
        """Show results; lines that aren't needed are put away."""
        while len(self._lines) < len(results):
            self._add_line()
        for place, (verdict, says) in enumerate(self._lines):
            verdict.setVisible(place < len(results))
            says.setVisible(place < len(results))
            if place < len(results):
                self._fill(verdict, says, results[place])

    def _add_line(self) -> None:
        verdict, says = Line("", wrap=False), Line()
        verdict.setFixedWidth(13 * GRID)
        verdict.setAlignment(Qt.AlignmentFlag.AlignTop)
        row = len(self._lines)
        self._grid.addWidget(verdict, row, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(says, row, 1)
        self._lines.append((verdict, says))

    def _fill(self, verdict: Line, says: Line, result: Result) -> None:
        words = self.tr(result.is_right) if result.is_right else self.tr("measured")
        verdict.setText(f"{SIGNS[result.outcome]} {words}".strip())
        verdict.setFont(bold(self.font()) if result.outcome != "note" else self.font())
        tint = verdict.palette()
        tint.setColor(QPalette.ColorRole.WindowText, getattr(current_colours(), INKS[result.outcome]))
        verdict.setPalette(tint)
        says.setText(result.says)
        says.setToolTip(self.tr("Rests on: {}").format(result.source))
