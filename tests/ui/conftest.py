"""Real windows on the offscreen platform; a test fails on any Qt warning and on threads left behind."""

import os

os.environ["QT_QPA_PLATFORM"] = "offscreen"
os.environ.setdefault("QT_ENABLE_HIGHDPI_SCALING", "1")

import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from ui.app import application, furnish
from ui.bench import Bench
from ui.window import Window

HERE = Path(__file__).parent


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Let the offscreen platform's own remark about size hints pass; every other warning fails."""
    for item in items:
        if HERE in item.path.parents:
            item.add_marker(pytest.mark.qt_log_ignore("propagateSizeHints", extend=True))


@pytest.fixture(scope="session")
def qapp() -> QApplication:
    """The application as the program makes it."""
    return application(["samespin"])


@pytest.fixture(autouse=True)
def no_threads_left() -> Iterator[None]:
    """Fail when a test leaves a thread behind."""
    before = set(threading.enumerate())
    yield
    left = [thread.name for thread in threading.enumerate() if thread not in before and thread.is_alive()]
    assert not left


Opened = Callable[..., Bench]


@pytest.fixture
def open_bench(qtbot, tmp_path: Path) -> Iterator[Opened]:
    """Opens windows on a store in the test's own folder, and closes them."""
    windows: list[Window] = []

    def opened(store: Path | None = None, demo: Path | None = None) -> Bench:
        window = Window()
        window.wear()
        window.resize(1366, 768)
        windows.append(window)
        qtbot.addWidget(window)
        window.show()
        window.activateWindow()
        furnish(window, demo, store or tmp_path / "jobs.db")
        bench: Bench = window.bench
        qtbot.waitUntil(window.isActiveWindow)
        qtbot.waitUntil(lambda: not bench.work.is_busy, timeout=60_000)
        return bench

    yield opened
    for window in windows:
        if not window.close():  # it stays open once when something could not be saved
            window.close()


@pytest.fixture
def bench(open_bench: Opened) -> Bench:
    """One window on an empty store."""
    return open_bench()


@pytest.fixture
def settle(qtbot) -> Callable[[Bench], None]:
    """Waits until the answers belong to the job as it stands and nothing is under way."""

    def wait(bench: Bench) -> None:
        qtbot.waitUntil(lambda: bench.session.is_settled and not bench.work.is_busy, timeout=60_000)

    return wait
