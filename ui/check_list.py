"""The check list of a delivery: a row for each fact of this job, the doubtful ones first."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from matcher.rest import Rest
from ui.check_row import BOX, EDIT, FACT, LISTED, OLD, WIDTHS, CheckRow
from ui.line import Soft
from ui.theme import GRID
from ui.units import Units


class CheckList(QWidget):
    """Rows keep their place while one types; they are made anew only when the facts to measure change."""

    measured = Signal(str, str)

    def __init__(self, units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._units = units
        self.rows: dict[str, CheckRow] = {}
        self._body = QWidget()
        self._down = QVBoxLayout(self._body)
        self._down.setContentsMargins(0, 0, GRID, GRID)
        self._down.setSpacing(0)
        self._down.addStretch(1)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(self._body)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(0)
        down.addLayout(self._head())
        down.addWidget(area, 1)
        self.setMinimumWidth((sum(WIDTHS.values()) + len(WIDTHS) + 9) * GRID)

    def _head(self) -> QHBoxLayout:
        across = QHBoxLayout()
        across.setContentsMargins(0, 0, 0, GRID // 2)
        across.setSpacing(GRID)
        words = {
            FACT: self.tr("Fact (bold: must match)"),
            LISTED: self.tr("The listing says"),
            OLD: self.tr("Old motor"),
            BOX: self.tr("As listed"),
            EDIT: self.tr("or measured"),
        }
        for column, text in words.items():
            label = Soft(text)
            label.setFixedWidth(WIDTHS[column] * GRID + (4 * GRID if column == BOX else 0))
            across.addWidget(label, 0, Qt.AlignmentFlag.AlignBottom)
        across.addStretch(1)
        return across

    def show_rest(self, rest: Rest) -> None:
        """Show the list as it stands."""
        items = rest.standing.items if rest.standing else ()
        names = [item.field for item in items]
        if names != list(self.rows):
            self._make_rows(names)
        for item in items:
            self.rows[item.field].show_item(item, rest)

    def _make_rows(self, names: list[str]) -> None:
        for row in self.rows.values():
            self._down.removeWidget(row)
            row.deleteLater()
        self.rows = {}
        for place, name in enumerate(names):
            row = CheckRow(name, self._units)
            row.measured.connect(self.measured)
            self.rows[name] = row
            self._down.insertWidget(place, row)
