"""Work runs off the window's thread; what came of it arrives on it; nothing is left behind."""

import threading

import pytest
from PySide6.QtCore import QThread

from matcher.errors import BadValue
from ui.work import Work


@pytest.fixture
def work(qapp):
    made = Work()
    yield made
    made.close()


def test_an_answer_arrives_on_the_windows_thread(qtbot, work):
    seen = []
    task = work.run(lambda a, b: (threading.current_thread(), a + b), 2, 3)
    task.done.connect(lambda answer: seen.append((answer, QThread.currentThread())))
    qtbot.waitUntil(lambda: bool(seen))
    (worker, total), thread = seen[0]
    assert (worker is not threading.main_thread(), total, thread) == (True, 5, work.thread())


def test_a_fault_arrives_as_itself(qtbot, work):
    def fail():
        raise BadValue("write it like 1/2")

    task = work.run(fail)
    with qtbot.waitSignal(task.failed) as caught:
        pass
    assert str(caught.args[0]) == "write it like 1/2"


def test_progress_is_told_and_cancelled_work_says_nothing_more(qtbot, work):
    go, shares, ends = threading.Event(), [], []

    def slow(tick):
        tick(0.25)
        go.wait(5)
        tick(0.5)
        return "too late"

    task = work.run_ticking(slow)
    task.progress.connect(shares.append)
    task.done.connect(ends.append)
    task.failed.connect(ends.append)
    qtbot.waitUntil(lambda: shares == [0.25])
    task.cancel()
    go.set()
    with qtbot.waitSignal(task.ended):
        pass
    assert (shares, ends, work.is_busy) == ([0.25], [], False)


def test_the_store_gets_its_work_in_order_on_one_thread(qtbot, work):
    order = []
    for number in range(20):
        work.store(lambda number=number: order.append((number, threading.current_thread().name)))
    qtbot.waitUntil(lambda: not work.is_busy)
    assert [number for number, _name in order] == list(range(20))
    assert len({name for _number, name in order}) == 1


def test_closing_finishes_what_is_written(qapp):
    work, written = Work(), []
    work.store(written.append, "saved")
    work.close()
    assert written == ["saved"]
