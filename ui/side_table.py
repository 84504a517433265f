"""The comparison as a table with the old motor fixed at the left: two views over one model."""

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHBoxLayout, QHeaderView, QScrollBar, QTableView, QWidget

from ui.candidate_header import MOST_REASON, CandidateHeader
from ui.models.side import OLD, Side
from ui.row_header import RowHeader
from ui.side_delegate import SideDelegate
from ui.theme import GRID

LABEL_WIDTH, OLD_WIDTH, CANDIDATE_WIDTH = 14 * GRID, 23 * GRID, 25 * GRID
WIDEST_CANDIDATE = 44 * GRID
"""A few candidates share the width, so that their reasons stand whole; a wider line reads badly."""
LEAST_HEIGHT = 42 * GRID
"""The heads and some rows; a page with less room scrolls."""
MANY = 60
"""Columns from which every row keeps one line, so that laying out stays instant."""


class _Blank(QScrollBar):
    """Takes a scroll bar's room and shows none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setEnabled(False)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the ground alone."""
        QPainter(self).fillRect(self.rect(), self.palette().window())


class SideTable(QWidget):
    """Left the row labels and the old motor, right the candidates, scrolled together."""

    chosen = Signal(QModelIndex)

    def __init__(self, side: Side, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.side = side
        self.old, self.new = QTableView(), QTableView()
        self._heads: list[CandidateHeader] = []
        for view in (self.old, self.new):
            self._prepare(view)
        self.old.setAccessibleName(self.tr("Old motor"))
        self.new.setAccessibleName(self.tr("Candidates side by side"))
        self.old.setVerticalHeader(RowHeader(self.side, self.old))
        self._fix_rows(self.old)
        self.old.verticalHeader().setFixedWidth(LABEL_WIDTH)
        self.old.verticalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.old.setFixedWidth(LABEL_WIDTH + OLD_WIDTH)
        self.old.setColumnWidth(OLD, OLD_WIDTH)
        self.old.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.old.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        # It keeps the rows of both halves level; there is nothing to scroll, so nothing is painted.
        self.old.setHorizontalScrollBar(_Blank())
        self.old.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self.new.verticalHeader().hide()
        self.new.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(0)
        across.addWidget(self.old)
        across.addWidget(self.new, 1)
        self.old.verticalScrollBar().valueChanged.connect(self.new.verticalScrollBar().setValue)
        self.new.verticalScrollBar().valueChanged.connect(self.old.verticalScrollBar().setValue)
        self.new.selectionModel().currentChanged.connect(lambda index, _before: self.chosen.emit(index))
        side.modelReset.connect(self._split)
        self.setMinimumHeight(LEAST_HEIGHT)
        self.setFocusProxy(self.new)

    def _prepare(self, view: QTableView) -> None:
        view.setModel(self.side)
        head = CandidateHeader(self.side, view)
        view.setHorizontalHeader(head)
        self._heads.append(head)
        view.setItemDelegate(SideDelegate(view))
        view.setShowGrid(False)
        view.setWordWrap(False)
        view.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        view.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        view.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        view.setTabKeyNavigation(False)
        self._fix_rows(view)
        view.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)

    def _fix_rows(self, view: QTableView) -> None:
        rows = view.verticalHeader()
        rows.setDefaultSectionSize(self.fontMetrics().height() + GRID)
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)

    def _split(self) -> None:
        """Show the old motor at the left alone, the candidates at the right alone."""
        for column in range(self.side.columnCount()):
            self.old.setColumnHidden(column, column != OLD)
            self.new.setColumnHidden(column, column == OLD)
        self.old.setColumnWidth(OLD, OLD_WIDTH)
        self._share()
        if self.side.columnCount() <= MANY:
            self._make_room()

    def _share(self) -> None:
        """Give the candidates the width that there is, and their heads the height that their reasons need."""
        count = max(1, len(self.side.candidates))
        width = max(CANDIDATE_WIDTH, min(WIDEST_CANDIDATE, self.new.viewport().width() // count))
        for column in range(self.side.columnCount()):
            self.new.setColumnWidth(column, width)
        lines = self._heads[0].lines_for(width, self.height() // 2) if count <= MANY else MOST_REASON
        for head in self._heads:
            head.show_lines(lines)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the new room."""
        super().resizeEvent(event)
        self._share()

    def _make_room(self) -> None:
        """Give two lines to every row that holds longer words than fit one."""
        metrics = self.fontMetrics()
        one, two = metrics.height() + GRID, 2 * metrics.height() + GRID
        for row in range(self.side.rowCount()):
            # Most cells of a row say the same, and measuring is what takes the time.
            wide = max(metrics.horizontalAdvance(words) for words in set(self.side.row_words(row)))
            high = two if wide > OLD_WIDTH - 4 * GRID else one
            for view in (self.old, self.new):
                view.setRowHeight(row, high)

    def choose(self, row: int, column: int) -> None:
        """Choose a cell."""
        self.new.setCurrentIndex(self.side.index(row, column))

    def current(self) -> QModelIndex:
        """Return the chosen cell."""
        return self.new.currentIndex()
