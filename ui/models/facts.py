"""The facts of one listing as a table: what, value, where from, the words; conflicts first."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt, Signal

from matcher.record import Conflict, Mark, Record
from ui.fields import fields, label
from ui.models.row_table import Index, RowTable
from ui.spans import shown
from ui.units import Units
from ui.words import origin_word

ORIGIN = Qt.ItemDataRole.UserRole + 1
IS_CONFLICT = Qt.ItemDataRole.UserRole + 2
FACT, VALUE, WORDS = range(3)


class Facts(RowTable):
    """Every field that the listing says, then every other field, empty, so that it can be filled in."""

    EDITABLE = VALUE

    entered = Signal(str, str)
    """Field and the text that the user gave it."""

    def __init__(self, units: Units) -> None:
        super().__init__()
        self._units = units
        self._record = Record("")
        self.rows: list[str] = []
        self._conflicts: dict[str, Conflict] = {}
        units.changed.connect(self._all_changed)

    def show_record(self, record: Record) -> None:
        """Show another record, or the same with other facts."""
        conflicts = {one.field: one for one in record.conflicts}
        said = [name for name in fields() if name in record.facts.said()]
        rest = [name for name in _offered() if name not in conflicts and name not in said]
        rows = [*conflicts, *said, *rest]
        if rows == self.rows:
            self._record, self._conflicts = record, conflicts
            self._all_changed()
            return
        self.beginResetModel()
        self.rows, self._record, self._conflicts = rows, record, conflicts
        self.endResetModel()

    def _all_changed(self) -> None:
        if self.rows:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self.rows) - 1, WORDS))

    def row_of(self, field: str) -> int:
        """Return the row of a field, -1 if it has none."""
        return self.rows.index(field) if field in self.rows else -1

    def headings(self) -> tuple[str, ...]:
        """Return the columns' names."""
        return (self.tr("Fact"), self.tr("Value"), self.tr("Words behind it"))

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        if not index.isValid():
            return None
        field = self.rows[index.row()]
        give = self._roles().get(role)
        return give(field, index.column()) if give else None

    def _roles(self) -> dict[int, Callable[[str, int], Any]]:
        return {
            Qt.ItemDataRole.DisplayRole: self._shown,
            Qt.ItemDataRole.EditRole: self._bare,
            Qt.ItemDataRole.ToolTipRole: self._tip,
            ORIGIN: self._origin,
            IS_CONFLICT: lambda field, _column: field in self._conflicts,
        }

    def _shown(self, field: str, column: int) -> str:
        if column == FACT:
            return label(field)
        if column == VALUE:
            return self._value(field)
        return self._words(field)

    def _value(self, field: str) -> str:
        conflict = self._conflicts.get(field)
        if conflict:
            return self.tr("which counts?")
        return self._units.of(field, self._record.facts)

    def _words(self, field: str) -> str:
        conflict = self._conflicts.get(field)
        if conflict:
            return shown("  |  ".join(conflict.said))
        mark = self._record.where.get(field)
        if mark is None:
            return ""
        said = shown(mark.said)
        return said if mark.origin == "read" else f"{origin_word(mark.origin)} {said}".rstrip()

    def _bare(self, field: str, column: int) -> str:
        value = getattr(self._record.facts, field, None)
        return self._units.bare(field, value) if column == VALUE else self._shown(field, column)

    def _tip(self, field: str, _column: int) -> str:
        return fields()[field].how

    def _origin(self, field: str, column: int) -> str:
        mark: Mark | None = self._record.where.get(field)
        return mark.origin.value if mark and column == VALUE else ""

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Pass a correction on; the table follows once the job has changed."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        field = self.rows[index.row()]
        if str(value) != self._bare(field, VALUE):
            self.entered.emit(field, str(value))
        return True


def _offered() -> list[str]:
    return [one.name for one in fields().values() if one.group != "place"]
