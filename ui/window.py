"""The window's frame: the job's name and switcher, the rail, the pages, one line for messages.

It knows nothing of the engine, so that it is on the screen before the engine is loaded.
"""

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QMainWindow, QVBoxLayout, QWidget

from ui.line import Soft
from ui.rail import Rail
from ui.stack import Roomy, Stack
from ui.theme import GRID, palette, sheet_rules, system_colours

RAIL_WIDTH = 25 * GRID
SMALLEST = (78 * GRID, 44 * GRID)
"""A laptop's screen of 1366 x 768 at 200 %, less the system's bars."""


class Window(QMainWindow):
    """Six stages and what lies beside them; the pages are put in once the engine is there."""

    painted = Signal()
    """The frame is on the screen for the first time."""
    loaded = Signal()
    """The engine is there, the pages can be made."""
    closing = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle("Samespin")
        self._was_painted = False
        self.rail = Rail(self.stage_names())
        self.pages = Stack()
        self.top = QWidget()
        QVBoxLayout(self.top).setContentsMargins(0, 0, 0, 0)
        self.foot = QWidget()
        """Holds the notices about the saved jobs."""
        QVBoxLayout(self.foot).setContentsMargins(0, 0, 0, 0)
        self.bench: Any = None
        """What works behind the window once the engine is loaded (`ui.bench.Bench`)."""
        self.message = Soft()
        self.message.setAccessibleName(self.tr("Messages"))
        self._lay_out()
        self.setMinimumSize(*SMALLEST)
        self.rail.chosen.connect(self.pages.setCurrentIndex)

    def stage_names(self) -> list[str]:
        """Return the names of the stages, and last the shop's stock that serves every job."""
        return [
            self.tr("Old motor"),
            self.tr("Listings"),
            self.tr("Side by side"),
            self.tr("Money"),
            self.tr("Arrival"),
            self.tr("Swap and proof"),
            self.tr("Stock and lots"),
        ]

    def _lay_out(self) -> None:
        left = QWidget()
        left.setFixedWidth(RAIL_WIDTH)
        side = QVBoxLayout(left)
        side.setContentsMargins(GRID, GRID, GRID, GRID)
        side.setSpacing(GRID)
        side.addWidget(self.top)
        side.addWidget(self.rail, 1)
        body = QWidget()
        across = QHBoxLayout(body)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(0)
        across.addWidget(left)
        across.addWidget(Roomy(self.pages), 1)
        whole = QWidget()
        down = QVBoxLayout(whole)
        down.setContentsMargins(0, 0, GRID, GRID // 2)
        down.setSpacing(0)
        down.addWidget(body, 1)
        self.foot.setContentsMargins(RAIL_WIDTH + 2 * GRID, 0, 0, 0)
        down.addWidget(self.foot)
        self.message.setContentsMargins(RAIL_WIDTH + 2 * GRID, 0, 0, 0)
        down.addWidget(self.message)
        self.setCentralWidget(whole)

    def go_to(self, stage: int) -> None:
        """Go to a stage and put the keyboard there."""
        self.rail.setCurrentRow(stage)
        enter = getattr(self.pages.currentWidget(), "enter", None)
        if enter is not None:
            enter(Qt.FocusReason.ShortcutFocusReason)

    def tell(self, line: str) -> None:
        """Show one line at the foot of the window."""
        self.message.setText(line)

    def wear(self) -> None:
        """Take on the system's light or dark."""
        from PySide6.QtWidgets import QApplication

        colours = system_colours()
        application = QApplication.instance()
        rules = sheet_rules(colours)
        if isinstance(application, QApplication) and application.styleSheet() != rules:
            application.setPalette(palette(colours))
            application.setStyleSheet(rules)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Tell once that the frame stands."""
        super().paintEvent(event)
        if not self._was_painted:
            self._was_painted = True
            self.painted.emit()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Give the session the chance to save; stay open once when it can't."""
        if self.bench is not None and not self.bench.may_close():
            event.ignore()
            return
        self.closing.emit()
        super().closeEvent(event)
