"""Weights, priors and costs: the shipped figures with the job's own changes, each of them editable."""

from typing import Any, NamedTuple

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication

from matcher.settings import Settings
from ui.models.row_table import Index, RowTable
from ui.theme import bold

NAME, FIGURE, SHIPPED = range(3)
GROUPS = ("weights", "priors", "condition_chances", "swap_costs")


class Figure(NamedTuple):
    """One figure of the settings."""

    group: str
    name: str
    now: float
    shipped: float


class Figures(RowTable):
    """One row a figure."""

    EDITABLE = FIGURE
    NUMBERS = (FIGURE, SHIPPED)

    entered = Signal(str, str, str)
    """Group, name and the text that the user gave it."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[Figure] = []

    def show_settings(self, now: Settings) -> None:
        """Show the figures in use beside the shipped ones."""
        shipped = Settings.shipped()
        rows = [
            Figure(group, name, figure, getattr(shipped, group)[name])
            for group in GROUPS
            for name, figure in getattr(now, group).items()
        ]
        if len(rows) != len(self.rows):
            self.beginResetModel()
            self.rows = rows
            self.endResetModel()
            return
        self.rows = rows
        self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, SHIPPED))

    def headings(self) -> tuple[str, ...]:
        """Return the columns' names."""
        return (self.tr("Figure"), self.tr("Now"), self.tr("Shipped"))

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            name = f"{self._group(row.group)}: {_plain(row.name)}"
            return (name, f"{row.now:g}", f"{row.shipped:g}")[index.column()]
        if role == Qt.ItemDataRole.FontRole and index.column() != SHIPPED and row.now != row.shipped:
            return bold(QApplication.font())
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() != NAME:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None

    def _group(self, group: str) -> str:
        return {
            "weights": self.tr("weight of"),
            "priors": self.tr("chance that it matches"),
            "condition_chances": self.tr("chance that it works"),
            "swap_costs": self.tr("price of"),
        }[group]

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Pass a change on; the table follows once the job has changed."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        row = self.rows[index.row()]
        if str(value).strip() != f"{row.now:g}":
            self.entered.emit(row.group, row.name, str(value))
        return True


def _plain(name: str) -> str:
    return name.replace("_", " ")
