"""Paints the whole window into a picture, for places without a display."""

import tempfile
from pathlib import Path

from PySide6.QtCore import QDeadlineTimer, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from matcher.errors import UnwritableOutput
from ui.app import furnish
from ui.window import Window

PATIENCE_MS = 60_000


def portray(demo: Path, to: Path) -> None:
    """Open the example job, wait for its answers, and save a picture of the comparison.

    :raises UnwritableOutput: where the picture can't be written.
    """
    from ui.bench import SIDE_BY_SIDE

    # The platform without a screen remarks on size hints; that is no news to anybody.
    before = qInstallMessageHandler(lambda *_remark: None)
    window = Window()
    window.wear()
    window.resize(1366, 768)
    window.show()
    with tempfile.TemporaryDirectory() as folder:
        furnish(window, demo, Path(folder) / "demo.db")
        settle(window)
        window.go_to(SIDE_BY_SIDE)
        QApplication.processEvents()
        is_kept = window.grab().save(str(to), "PNG")
        window.close()
    qInstallMessageHandler(before)
    if not is_kept:
        raise UnwritableOutput(f"{to}: the picture can't be written there. Choose another place.")


def settle(window: Window) -> None:
    """Let the window work until the answers belong to the job as it stands."""
    patience = QDeadlineTimer(PATIENCE_MS)
    session = window.bench.session
    while not patience.hasExpired():
        QApplication.processEvents()
        if session.job.listings and session.is_settled:
            return
