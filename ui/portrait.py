"""Paints the whole window into a picture, for places without a display."""

from pathlib import Path

from PySide6.QtCore import QDeadlineTimer
from PySide6.QtWidgets import QApplication

from ui.app import furnish
from ui.window import Window

PATIENCE_MS = 60_000


def portray(demo: Path, to: Path) -> None:
    """Open the example job, wait for its answers, and save a picture of the comparison."""
    from ui.bench import SIDE_BY_SIDE

    window = Window()
    window.wear()
    window.resize(1366, 768)
    window.show()
    furnish(window, demo, Path(":memory:"))
    settle(window)
    window.go_to(SIDE_BY_SIDE)
    QApplication.processEvents()
    window.grab().save(str(to))
    window.close()


def settle(window: Window) -> None:
    """Let the window work until the answers belong to the job as it stands."""
    patience = QDeadlineTimer(PATIENCE_MS)
    session = window.bench.session
    while not patience.hasExpired():
        QApplication.processEvents()
        if session.job.listings and session.is_settled:
            return
