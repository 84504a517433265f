"""What every page needs: the open job, the worker, the unit of length, the saved jobs."""

from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from ui.clerk import Clerk
from ui.session import Session
from ui.shelf import Shelf
from ui.theme import GRID
from ui.units import Units
from ui.usual import Usual
from ui.work import Work


@dataclass(frozen=True)
class Desk:
    """Handed to each page when it is made."""

    work: Work
    session: Session
    units: Units
    shelf: Shelf
    clerk: Clerk
    usual: Usual


class Page(QWidget):
    """A page of the window; `state` is its line in the rail."""

    state = Signal(str)
    go = Signal(int)
    """Asks the window to show another stage."""
    example = Signal()
    """Asks for the example job."""
    job_file = Signal(object)
    """Asks to take in a job's file (`Path`)."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self._takes_keyboard: QWidget = self

    def starts_at(self, widget: QWidget) -> None:
        """Say where the keyboard goes when the page is opened.

        No focus proxy: with one, Tab would never reach what stands before the widget.
        """
        self._takes_keyboard = widget

    def enter(self, reason: Qt.FocusReason) -> None:
        """Take the keyboard."""
        self._takes_keyboard.setFocus(reason)

    def column(self) -> QVBoxLayout:
        """Return the page's own column, which is filled from its heading down."""
        down = QVBoxLayout(self)
        down.setContentsMargins(2 * GRID, GRID, GRID, 0)
        return down
