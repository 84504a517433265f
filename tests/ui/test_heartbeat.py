"""How long the window is ever blocked while 50,000 offers are read, ranked, scrolled, filtered, sorted.

A benchmark: left out of the ordinary run, as anything that measures time; run it by
`pytest tests/ui/test_heartbeat.py --benchmark-only -s`. Goal: no block over 50 ms on an idle machine.
"""

import random
import time
from pathlib import Path

from PySide6.QtCore import QObject, Qt, QTimer

from ui.bench import STOCK

OFFERS = 50_000
PLATE = "1/2 HP 208-230V 60HZ 1PH 1075 RPM 3.4A CCWLE PSC belly band shaft 1/2 x 5 5.6 in dia"


class Heartbeat(QObject):
    """Beats every 5 ms and keeps the longest pause of each part of the story, in milliseconds."""

    def __init__(self) -> None:
        super().__init__()
        self.part, self.longest, self._last = "", {}, time.perf_counter()
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._beat)
        self._timer.start(5)

    def _beat(self) -> None:
        now = time.perf_counter()
        pause = (now - self._last) * 1000
        self.longest[self.part] = max(self.longest.get(self.part, 0.0), pause)
        self._last = now


def make_table(path: Path) -> None:
    draw = random.Random(4)
    with path.open("w", encoding="utf-8") as out:
        out.write("title,model,hp,volts,phase,hz,rpm,rotation,shaft diameter,mounting,price,condition\n")
        for number in range(OFFERS):
            cells = (
                "fan motor",
                f"QX-{draw.randint(1000, 9999)}-{number % 7}",
                draw.choice(("1/2", "1/3", "3/4")),
                draw.choice(("208-230", "115", "460")),
                draw.choice((1, 1, 3)),
                60,
                draw.choice((1075, 825, 1625)),
                draw.choice(("CWLE", "CCWLE", "CW", "")),
                draw.choice(("1/2", "5/8")),
                draw.choice(("belly band", "stud", "")),
                draw.randint(20, 200),
                draw.choice(("used", "new", "tested")),
            )
            out.write(",".join(map(str, cells)) + "\n")


def test_50000_offers_never_stop_the_window(benchmark, bench, settle, qtbot, tmp_path):
    make_table(tmp_path / "lot.csv")
    page = bench.pages[STOCK]
    bench.session.edit("plate", bench.session.job.edited(plate_text=PLATE))
    settle(bench)
    bench.window.go_to(STOCK)
    qtbot.waitUntil(lambda: page._task is None, timeout=60_000)
    heart = Heartbeat()
    bar = page.table.verticalScrollBar()

    def part(name: str) -> None:
        heart.part = name

    def scrolled(times: int) -> None:
        for at in range(times):
            bar.setValue((at * 997) % max(1, bar.maximum()))
            qtbot.wait(5)

    def story() -> None:
        part("read")
        page.open_files([tmp_path / "lot.csv"])
        qtbot.waitUntil(lambda: page.model.total == OFFERS, timeout=300_000)
        part("scroll while ranking")
        while page._task is not None:
            scrolled(4)
        part("filter")
        for words in ("q", "qx", "qx-1", "ask", "fits qx-2", ""):
            page.seek.setText(words)
            qtbot.wait(30)
        part("sort")
        for column in (2, 3, 4, 0):
            page.sort_by(column)
            qtbot.waitUntil(lambda: page._task is None, timeout=60_000)
        part("scroll")
        scrolled(100)

    benchmark.pedantic(story, rounds=1)
    benchmark.extra_info.update(heart.longest)
    print({name: f"{pause:.0f} ms" for name, pause in heart.longest.items()})
    assert page.model.rows[0].verdict == "fits"
