"""The command on bad days: full disks, poor terminals, ends that are closed, a user who has had enough."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

OLD = Path(__file__).parents[3] / "data" / "demo" / "old.toml"
pytestmark = pytest.mark.skipif(os.name != "posix", reason="signals and devices of POSIX")


def start(*words: str, cwd: Path, **how: object) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-m", "matcher.command", *words]
    given = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, "stdin": subprocess.DEVNULL} | how
    return subprocess.Popen(command, cwd=cwd, **given)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "höf.csv").write_text("title,hp,price\nBräckfen,½,$20\n", encoding="utf-8")
    return tmp_path


def test_a_terminal_of_few_letters_gets_marks_instead(folder):
    poor = os.environ | {"LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    run = start("read", "höf.csv", cwd=folder, env=poor)
    out, err = run.communicate()
    assert (run.returncode, err) == (0, b"")
    assert b"f.csv" in out
    assert out.isascii()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("words", [("read", "höf.csv"), ("read", "höf.csv", "--json"), ("--help",)])
def test_a_full_disk_is_one_line(folder, words):
    with Path("/dev/full").open("wb") as full:
        run = start(*words, cwd=folder, stdout=full)
        _, err = run.communicate()
    assert (run.returncode, err) == (
        1,
        b"samespin: the output: it can't be written (no space left on device)\n",
    )


@pytest.mark.parametrize(
    "words",
    [("read", "höf.csv"), ("read", "höf.csv", "--json"), ("rank", "--old", str(OLD), "höf.csv"), ("--help",)],
)
def test_a_reader_that_goes_away_ends_it_quietly(folder, words):
    end, start_of_pipe = os.pipe()
    os.close(end)
    with os.fdopen(start_of_pipe, "wb") as pipe:
        run = start(*words, cwd=folder, stdout=pipe)
        _, err = run.communicate()
    assert (run.returncode, err) == (0, b"")


def test_a_closed_standard_input_is_one_line(folder):
    command = f'exec "{sys.executable}" -m matcher.command read - <&-'
    run = subprocess.run(["sh", "-c", command], cwd=folder, capture_output=True, check=False)
    assert (run.returncode, run.stderr) == (1, b"samespin: -: it can't be read (standard input is closed)\n")


def test_a_user_who_has_had_enough_sees_one_word(folder):
    with (folder / "big.csv").open("w", encoding="utf-8") as out:
        out.write("title,hp,volts,price\n" + "motor,1/2,115,$20\n" * 200_000)
    run = start("rank", "--old", str(OLD), "big.csv", "--json", cwd=folder, start_new_session=True)
    time.sleep(1.5)
    run.send_signal(signal.SIGINT)
    _, err = run.communicate()
    assert (run.returncode, err.strip()) == (1, b"samespin: stopped")
