"""The pages one behind the other, in a window of any size: a page that needs more room scrolls."""

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QStackedWidget, QStyle, QWidget

EXTENT = QStyle.PixelMetric.PM_ScrollBarExtent


class Stack(QStackedWidget):
    """Asks for the room of the page in sight alone; a wide page doesn't widen the others."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.currentChanged.connect(lambda _place: self.updateGeometry())

    def minimumSizeHint(self) -> QSize:
        """Return what the page in sight needs at least."""
        page = self.currentWidget()
        return page.minimumSizeHint() if page is not None else QSize(0, 0)

    def least_height(self, wide: int) -> int:
        """Return the height that the page in sight needs at least when it is so wide."""
        page = self.currentWidget()
        laid_out = page.layout() if page is not None else None
        least = self.minimumSizeHint().height()
        if laid_out is None or not laid_out.hasHeightForWidth():
            return least
        return max(least, laid_out.minimumHeightForWidth(wide))


class Roomy(QScrollArea):
    """Scrolls what doesn't fit, instead of keeping the window from getting small.

    Qt's own fitting asks for the preferred height of the tallest page, and would scroll every one.
    """

    def __init__(self, stack: Stack, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._stack = stack
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(stack)
        stack.installEventFilter(self)
        stack.currentChanged.connect(lambda _place: self._fit())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the pages to the window."""
        super().resizeEvent(event)
        self._fit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Fit them again once a page needs more or less room."""
        if event.type() == QEvent.Type.LayoutRequest:
            self._fit()
        return super().eventFilter(watched, event)

    def _fit(self) -> None:
        room, bar = (
            self.maximumViewportSize(),
            self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent),
        )
        least = self._stack.minimumSizeHint().width()
        wide = max(least, room.width())
        across = bar if least > room.width() else 0
        if self._stack.least_height(wide) > room.height() - across:
            wide = max(least, room.width() - bar)
            across = bar if least > room.width() - bar else 0
        high = max(self._stack.least_height(wide), room.height() - across)
        self._stack.resize(wide, high)
