"""Weights, priors and costs: the shipped figures with the job's own changes, each of them editable."""

from typing import Any, NamedTuple

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal

from matcher.settings import Settings

Index = QModelIndex | QPersistentModelIndex
NAME, FIGURE, SHIPPED = range(3)
GROUPS = ("weights", "priors", "condition_chances", "swap_costs")


class Figure(NamedTuple):
    """One figure of the settings."""

    group: str
    name: str
    now: float
    shipped: float


class Figures(QAbstractTableModel):
    """One row a figure."""

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

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of figures."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of columns."""
        return 0 if parent.isValid() else 3

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return the columns' names."""
        if role == Qt.ItemDataRole.DisplayRole and orientation == Qt.Orientation.Horizontal:
            return (self.tr("Figure"), self.tr("Now"), self.tr("Shipped"))[section]
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """The figure in use can be changed."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return usual | Qt.ItemFlag.ItemIsEditable if index.column() == FIGURE else usual

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            changed = f"{row.shipped:g}" if row.now != row.shipped else ""
            return (f"{self._group(row.group)}: {_plain(row.name)}", f"{row.now:g}", changed)[index.column()]
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
