"""The window reads on several threads from the first moment on: none of them may spoil the others' words."""

import subprocess
import sys
from pathlib import Path

FIRST_READS_AT_ONCE = """
import threading, time
from matcher.reading import read_listing, vocabulary

rows = vocabulary.rows
def slow_rows(name):
    time.sleep(0.01)  # every thread is inside while the words are put together
    return rows(name)
vocabulary.rows = slow_rows

def turn():
    return read_listing("Blower motor 1/2 HP 115V CCWLE PSC belly band").facts.turn
found = []
threads = [threading.Thread(target=lambda: found.append(turn())) for _ in range(4)]
for thread in threads:
    thread.start()
for thread in threads:
    thread.join()
print([*found, turn()])
"""


def test_first_reads_at_once_understand_every_word() -> None:
    run = subprocess.run(
        [sys.executable, "-c", FIRST_READS_AT_ONCE],
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        check=True,
    )
    assert run.stdout.strip() == str(["ccw"] * 5)
