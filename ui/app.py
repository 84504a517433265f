"""Makes the application and its window; the engine is loaded once the frame is on the screen."""

import importlib
import sys
import threading
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication

if TYPE_CHECKING:
    from ui.window import Window

ENGINE = (
    "matcher.job",
    "matcher.money.questions",
    "matcher.reading",
    "matcher.store",
    "matcher.missing",
    "ui.bench",
)
"""The engine that the pages need, and the pages themselves; together about a second of loading."""


def application(argv: list[str]) -> QApplication:
    """Return the one application, made and dressed if there is none yet."""
    made = QApplication.instance()
    if not isinstance(made, QApplication):
        made = QApplication(argv)
    made.setApplicationName("samespin")
    made.setApplicationDisplayName("Samespin")
    made.setStyle("Fusion")
    from ui.theme import text_pt  # late: the grid is cut for the application's text

    font = QFont(made.font())
    font.setPointSizeF(text_pt())
    made.setFont(font)
    return made


def main(argv: list[str], demo: Path | None = None, store: Path | None = None) -> int:
    """Open the window, on the example job if `demo` names its folder; return the exit status."""
    made = application(argv)
    window = open_window(demo, store)
    sys.excepthook = lambda *fault: _tell(window, *fault)
    return made.exec()


def open_window(demo: Path | None = None, store: Path | None = None) -> "Window":
    """Show the frame, and put the pages in after its first paint."""
    from ui.window import Window  # late, as the theme

    window = Window()
    window.wear()
    QApplication.styleHints().colorSchemeChanged.connect(window.wear)
    window.resize(1366, 768)
    window.painted.connect(lambda: _load_engine(window))
    window.loaded.connect(lambda: furnish(window, demo, store), Qt.ConnectionType.QueuedConnection)
    window.show()
    return window


def _load_engine(window: "Window") -> None:
    """Load the engine on a thread, so that the frame answers meanwhile, then tell the window."""

    def load() -> None:
        for name in ENGINE:
            importlib.import_module(name)
        window.loaded.emit()

    thread = threading.Thread(target=load, name="engine")
    window.closing.connect(thread.join)
    thread.start()


def furnish(window: "Window", demo: Path | None = None, store: Path | None = None) -> None:
    """Load the engine and put the pages into the window."""
    from ui.bench import Bench  # late: brings the engine

    bench = Bench(window, store)
    window.bench = bench
    if demo is not None:
        bench.open_demo(demo)
    bench.plate.setFocus()


def picture(demo: Path, to: Path) -> None:
    """Paint the window with the example job into a PNG, without a display."""
    import os

    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application(["samespin"])
    from ui.portrait import portray  # late, as the theme

    portray(demo, to)


def _tell(
    window: "Window", kind: type[BaseException], fault: BaseException, trace: TracebackType | None
) -> None:
    """Show a fault of ours as one line; the details go to standard error, never into the window."""
    sys.__excepthook__(kind, fault, trace)
    line = f"{kind.__name__}: {fault}".splitlines()[0][:300]
    window.tell(window.tr("The program itself stumbled ({}); your work is saved.").format(line))
