"""The engine opens no network connection: proved in a process where every way out is shut."""

import subprocess
import sys
from pathlib import Path

import pytest

GUARD = Path(__file__).parents[1] / "no_network.py"

ENGINE = """
import sys
from pathlib import Path
from matcher.job import Job, Listing
from matcher.settings import Settings
from matcher.store import Store
from matcher.verdict import judge
folder = Path(sys.argv[1])
page = '<html><img src="http://192.0.2.1/x.png"><script src="https://192.0.2.1/x.js"></script></html>'
with Store.open(folder / "samespin.db") as store:
    job = Job(plate_text="1/2 HP 208-230V 1075 RPM").with_listing(Listing(text=page + " 1/2 HP").read_again())
    version = store.save(job).version
    store.export_job(job, folder / "job.json")
    store.import_job(folder / "job.json")
    store.back_up()
    for candidate in job.candidates():
        judge(job.wanted(), candidate, Settings.shipped())
"""


def _guarded(tmp_path: Path, code: str) -> subprocess.CompletedProcess[str]:
    script = tmp_path / "script.py"
    script.write_text(code, encoding="utf-8")
    return subprocess.run(
        [sys.executable, str(GUARD), str(script), str(tmp_path)], capture_output=True, text=True, check=False
    )


def test_the_engine_needs_no_network(tmp_path: Path) -> None:
    done = _guarded(tmp_path, ENGINE)
    assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.parametrize(
    "code",
    [
        "import socket; socket.create_connection(('192.0.2.1', 80), 0.1)",
        "import socket\ntry: socket.getaddrinfo('example.invalid', 80)\nexcept Exception: pass",
        "import urllib.request\ntry: urllib.request.urlopen('http://192.0.2.1/', timeout=0.1)\nexcept BaseException: pass",
        "import socket\ntry: socket.socket(socket.AF_INET, socket.SOCK_DGRAM)\nexcept BaseException: pass",
    ],
    ids=["connect", "look up a name", "fetch a page", "datagram"],
)
def test_the_guard_catches_every_try(tmp_path: Path, code: str) -> None:
    done = _guarded(tmp_path, code)
    assert done.returncode != 0
    assert "tried the network" in done.stderr
