"""The rows of a lot, filtered and sorted; holds light rows alone, so that it never stalls."""

from collections.abc import Iterable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableView

from matcher.checks import CHECKS
from matcher.finding import Verdict
from ui.lot import LotRow
from ui.models.lot_columns import LANDED, NUMBERS, REASON, columns
from ui.models.row_table import Index, RowTable
from ui.words import VERDICTS, verdict_word

VERDICT = Qt.ItemDataRole.UserRole + 1
ROW = "#"
"""How a row of a file is named in a filter, as in `lot.csv#12`."""
SCORES = Qt.ItemDataRole.UserRole + 2


class LotTable(RowTable):
    """Shows those rows that hold all the words of the filter."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[LotRow] = []
        self._all: list[LotRow] = []
        self._filter: tuple[str, ...] = ()
        self._columns = columns()
        self._sorted = (-1, False)
        self._is_stale = False
        self.ranking: object = object()
        """Another one with each ranking."""
        self._reasons: dict[int, str] = {}
        """Reasons that came after their rows, by place."""

    def call_stale(self, is_stale: bool) -> None:
        """Hide verdicts, scores and reasons while they answer another question than the open job's."""
        if is_stale != self._is_stale:
            self._is_stale = is_stale
            self._show()

    def show_rows(self, rows: list[LotRow]) -> None:
        """Show other rows, in the order given."""
        self._all = rows
        self._show()

    def show_ranked(self, rows: list[LotRow]) -> None:
        """Show rows that were ranked anew; what was known of the ranking before is forgotten."""
        self.ranking, self._reasons = object(), {}
        self.show_rows(rows)

    def learn(self, reasons: dict[int, str]) -> None:
        """Take in reasons that came after their rows."""
        self._reasons |= reasons
        if self.rows:
            last = self.index(len(self.rows) - 1, REASON)
            self.dataChanged.emit(self.index(0, REASON), last, [Qt.ItemDataRole.DisplayRole])

    def drop(self, places: set[int]) -> None:
        """Take rows out, by their places in the lot."""
        self.show_rows([row for row in self._all if row.at not in places])

    def marked(self, table: QTableView) -> list[LotRow]:
        """Return the rows selected in a table, from the top down."""
        chosen = table.selectionModel().selection()
        ranges = sorted((chosen.at(n).top(), chosen.at(n).bottom()) for n in range(chosen.size()))
        return [row for top, bottom in ranges for row in self.shown_rows(top, bottom)]

    def filter(self, text: str) -> None:
        """Keep the rows that hold all these words in verdict, name, number or condition; `#12` is a row."""
        self._filter = tuple(text.casefold().split())
        self._show()

    @property
    def every_row(self) -> list[LotRow]:
        """The rows without the filter, in the order shown."""
        return self._all

    @property
    def total(self) -> int:
        """How many rows there are without the filter."""
        return len(self._all)

    def _as_shown(self, row: LotRow) -> LotRow:
        if not self._is_stale:
            return row if row.reason else row._replace(reason=self._reasons.get(row.at, ""))
        return row._replace(
            verdict="waiting", low=None, score=None, high=None, landed=None, chance=None, reason="", minds=0
        )

    def shown_rows(self, top: int = 0, bottom: int | None = None) -> list[LotRow]:
        """Return the rows from `top` to `bottom` as they are shown, without stale verdicts."""
        rows = self.rows[top:] if bottom is None else self.rows[top : bottom + 1]
        return [self._as_shown(row) for row in rows]

    def without_reason(self, rows: Iterable[LotRow]) -> list[int]:
        """Return the places of ranked rows whose reason isn't known yet."""
        if self._is_stale:
            return []
        return [
            row.at
            for row in rows
            if not row.reason and row.verdict != "waiting" and row.at not in self._reasons
        ]

    def _show(self) -> None:
        self.beginResetModel()
        self.rows = self._kept() if self._filter else self._all
        self.endResetModel()

    def _kept(self) -> list[LotRow]:
        kept = self._all
        for word in self._filter:
            if word.startswith(ROW) and len(word) > 1:
                kept = [row for row in kept if row.source.endswith(word)]
                continue
            says = _saying(word)
            if self._is_stale:
                kept = [row for row in kept if word in row.words or ("waiting", 0) in says]
            else:
                kept = [row for row in kept if word in row.words or (row.verdict, row.minds) in says]
        return kept

    def headings(self) -> tuple[str, ...]:
        """Return the columns' names; an arrow stands at the one that the rows are sorted by."""
        by, turned = self._sorted
        return tuple(
            column.head + ((" ▼" if turned is not column.falls else " ▲") if place == by else "")
            for place, column in enumerate(self._columns)
        )

    def call_sorted(self, column: int, *, turned: bool = False) -> None:
        """Say by which column the rows stand, smallest or best first unless turned."""
        self._sorted = (column, turned)
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(self._columns) - 1)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return the columns' names, those of figures at the right."""
        if role == Qt.ItemDataRole.TextAlignmentRole and section in NUMBERS:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        if role == Qt.ItemDataRole.ToolTipRole and orientation == Qt.Orientation.Horizontal:
            return self._columns[section].hint or None
        return super().headerData(section, orientation, role)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        if not index.isValid():
            return None
        row = self._as_shown(self.rows[index.row()])
        if role == Qt.ItemDataRole.DisplayRole:
            return self._columns[index.column()].says(row)
        if role == Qt.ItemDataRole.ToolTipRole and index.column() == LANDED and row.is_presumed:
            return self.tr("The listing names no shipping cost; a usual one is counted in")
        if role == VERDICT:
            return row.verdict
        if role == SCORES:
            return (row.low, row.score, row.high)
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() in NUMBERS:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None


_VERDICTS: tuple[str | None, ...] = (*VERDICTS, "waiting", None)
_ANSWERS = (*((verdict, 0) for verdict in _VERDICTS), *((Verdict.FITS, n + 1) for n in range(len(CHECKS))))
"""Every verdict with how many things to mind it may have."""


def _saying(word: str) -> set[tuple[str | None, int]]:
    """Return the answers whose words hold a word; a bare number is looked for in the offers alone."""
    if word.isdigit():
        return set()
    return {answer for answer in _ANSWERS if word in verdict_word(*answer).casefold()}
