"""What the plain tables have in common: rows, named columns, at most one column that can be typed into."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

Index = QModelIndex | QPersistentModelIndex


class RowTable(QAbstractTableModel):
    """A table over `rows`; a model says its columns, what a cell shows, and which column is typed into."""

    EDITABLE: int | None = None
    """The column whose cells can be typed into."""
    NUMBERS: tuple[int, ...] = ()
    """The columns of figures, whose names stand over them at the right."""
    rows: list[Any]

    def headings(self) -> tuple[str, ...]:
        """Return the columns' names."""
        raise NotImplementedError

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of columns."""
        return 0 if parent.isValid() else len(self.headings())

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's name."""
        if role == Qt.ItemDataRole.DisplayRole and orientation == Qt.Orientation.Horizontal:
            return self.headings()[section]
        if role == Qt.ItemDataRole.TextAlignmentRole and section in self.NUMBERS:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Tell which cells can be typed into."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return usual | Qt.ItemFlag.ItemIsEditable if index.column() == self.EDITABLE else usual
