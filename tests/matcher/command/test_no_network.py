"""No command and no page opens a network connection: each runs in a process where every way out is shut."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[3]
DEMO = ROOT / "data" / "demo"
OLD = str(DEMO / "old.toml")
PILE = [str(DEMO / name) for name in ("pasted.txt", "shelf.csv", "saved_page.html", "notes.jsonl")]


@pytest.mark.parametrize(
    "words",
    [
        pytest.param(["read", "--json", *PILE], id="read"),
        pytest.param(["read", "--plate", str(DEMO / "plate.txt")], id="read a plate"),
        pytest.param(["rank", "--old", OLD, *PILE], id="rank"),
        pytest.param(["triage", "--old", OLD, "grinds=yes"], id="triage"),
        pytest.param(["sheet", "--old", OLD, "--new", PILE[3], "--id", "counter-1"], id="sheet"),
        pytest.param(["airflow", "heat", "--watts", "9600", "--rise", "25"], id="airflow"),
        pytest.param(["demo"], id="demo with the window's picture"),
    ],
)
def test_nothing_leaves(words: list[str], tmp_path: Path) -> None:
    guarded = [sys.executable, str(ROOT / "tests" / "no_network.py"), "-m", "matcher.command", *words]
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "TMPDIR": str(tmp_path)}
    env.pop("DISPLAY", None)
    done = subprocess.run(
        guarded, cwd=ROOT, env=env, capture_output=True, text=True, check=False, timeout=120
    )
    assert done.returncode == 0, done.stderr
