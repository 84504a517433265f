"""A dozen kills in the middle of writing; `tests/bench/kill_store.py` does hundreds."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

SCRIPT = Path(__file__).parents[2] / "bench" / "kill_store.py"


@pytest.mark.skipif(not hasattr(os, "fork"), reason="the writers are forked")
def test_every_acknowledged_save_survives_a_kill() -> None:
    done = subprocess.run(
        [sys.executable, str(SCRIPT), "--kills", "12", "--seed", "77"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.stderr == ""
    assert done.stdout.startswith("12 of 12 kills survived")
    assert done.returncode == 0
