"""The verdict as listed beside the verdict as measured, with its reason and the advice."""

from PySide6.QtWidgets import QGridLayout, QWidget

from matcher.arrival.standing import Standing
from matcher.verdict import Judgement
from ui.line import Line, Soft, Strong
from ui.marks import VerdictMark
from ui.range_bar import RangeBar
from ui.theme import GRID


class VerdictChange(QWidget):
    """Two marks with their range bars, and what follows."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.before, self.after = VerdictMark(), VerdictMark()
        self._bars = (RangeBar(), RangeBar())
        self.reason, self.advice, self.why = Line(), Strong(), Line()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GRID)
        rows = ((self.tr("As listed"), self.before), (self.tr("As measured"), self.after))
        self._labels: list[Soft] = []
        for row, (words, mark) in enumerate(rows):
            label = Soft(words)
            label.setWordWrap(False)
            self._labels.append(label)
            grid.addWidget(label, row, 0)
            grid.addWidget(mark, row, 1)
            grid.addWidget(self._bars[row], row, 2)
        grid.addWidget(self.reason, 2, 0, 1, 3)
        grid.addWidget(self.advice, 3, 0, 1, 3)
        grid.addWidget(self.why, 4, 0, 1, 3)
        grid.setColumnStretch(2, 1)

    def show_standing(self, standing: Standing) -> None:
        """Show how the delivery stands."""
        self._show(0, self.before, standing.before)
        self._show(1, self.after, standing.after)
        for part in (self._labels[1], self.after, self._bars[1]):
            part.setVisible(bool(standing.values))  # nothing is said as measured before it is
        self.reason.setText(standing.after.reason)
        self.advice.setVisible(not standing.is_decided)
        self.advice.setText(f"{standing.advice.says}.")
        why = [line for line in standing.advice.why if line != standing.after.reason]
        self.why.setText("" if standing.is_decided else "\n".join(why))

    def _show(self, row: int, mark: VerdictMark, judged: Judgement) -> None:
        mark.show_verdict(judged.verdict, judged.minds)
        self._bars[row].show_range(judged.score_low, judged.score, judged.score_high)
