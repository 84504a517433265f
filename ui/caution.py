"""What to be careful of, where work can hurt: plain lines behind a bar, each with its sign."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from ui.line import Line
from ui.theme import GRID, current_colours


class Caution(Line):
    """Stays in sight while the page is; the text around it may scroll."""

    def __init__(self, lines: tuple[str, ...] = (), parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setContentsMargins(GRID + 4, GRID // 2, GRID, GRID // 2)
        self.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.show_lines(lines)

    def show_lines(self, lines: tuple[str, ...]) -> None:
        """Show cautions, one a line."""
        text = "\n".join(f"! {line}" for line in lines)
        if text != self.text():
            self.setText(text)
            self.setAccessibleName(self.tr("Caution: {}").format(text))
        if (
            self.parentWidget() is not None or not lines
        ):  # shown before it has a place it would flash as a window
            self.setVisible(bool(lines))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the bar at the left, in ink, so that it counts in grey as well."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.fillRect(0, 0, 4, self.height(), QColor(current_colours().wont_fit))
