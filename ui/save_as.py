"""Asks where to save a file."""

import re
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget


def ask_where(parent: QWidget, name: str, ending: str) -> Path | None:
    """Return where the user wants a file, `None` if nowhere."""
    safe = re.sub(r"[^\w -]+", " ", name).strip()[:80] or "samespin"
    path, _kind = QFileDialog.getSaveFileName(
        parent, parent.tr("Save as"), f"{safe}.{ending}", f"{ending.upper()} (*.{ending})"
    )
    return Path(path) if path else None
