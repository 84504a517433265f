"""Two panes side by side, the left one with more room; in a narrow window one above the other."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSplitter, QWidget

from ui.theme import GRID

LEAST = 24 * GRID
"""The least height of a pane that stands above or below another."""

SHARES = (3, 2)


class Halves(QSplitter):
    """Neither pane can be closed; it asks for the wider pane's width alone, and turns to keep to that."""

    def __init__(self, left: QWidget, right: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.addWidget(left)
        self.addWidget(right)
        for place, share in enumerate(SHARES):
            self.setStretchFactor(place, share)
        self.setChildrenCollapsible(False)

    def _least(self) -> list[QSize]:
        panes = (self.widget(place) for place in range(self.count()))
        return [pane.minimumSizeHint().expandedTo(pane.minimumSize()) for pane in panes if pane]

    @property
    def abreast(self) -> int:
        """The width that the panes need side by side."""
        return sum(size.width() for size in self._least()) + self.handleWidth()

    def minimumSizeHint(self) -> QSize:
        """Return the width of the wider pane, and the height that goes with how they stand."""
        sizes = self._least()
        heights = [size.height() for size in sizes]
        if self.orientation() == Qt.Orientation.Vertical:
            high = sum(max(LEAST, height) for height in heights) + self.handleWidth()
        else:
            high = max(heights, default=0)
        return QSize(max((size.width() for size in sizes), default=0), high)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand the panes as the width allows."""
        super().resizeEvent(event)
        fits = self.width() >= self.abreast
        stands = Qt.Orientation.Horizontal if fits else Qt.Orientation.Vertical
        if stands != self.orientation():
            self.setOrientation(stands)
            self._share()
            self.updateGeometry()

    def _share(self) -> None:
        room = self.width() if self.orientation() == Qt.Orientation.Horizontal else self.height()
        self.setSizes([share * room // sum(SHARES) for share in SHARES])
