"""The wheel, installed outside the checkout, finds its tables and its example (data files get lost there)."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent.parent


def call(*words: str, cwd: Path, **env: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        words, cwd=cwd, env={**os.environ, **env}, capture_output=True, text=True, check=False, timeout=240
    )


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the wheel and unpack it where the checkout can't be seen."""
    place = tmp_path_factory.mktemp("wheel")
    built = call(
        sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "-w", str(place), str(ROOT), cwd=place
    )
    assert built.returncode == 0, built.stderr
    site = place / "site"
    with zipfile.ZipFile(next(place.glob("samespin-*.whl"))) as wheel:
        wheel.extractall(site)
    return site


def samespin(site: Path, *words: str) -> subprocess.CompletedProcess[str]:
    # The unpacked wheel comes before the editable checkout on the path; -P keeps the folder out of it.
    program = (
        f"import sys; sys.path.insert(0, {str(site)!r}); import matcher.command as command; "
        f"assert command.__file__.startswith({str(site)!r}); command.main()"
    )
    return call(sys.executable, "-P", "-c", program, *words, cwd=site, QT_QPA_PLATFORM="offscreen")


def test_the_wheel_holds_tables_and_example(installed: Path) -> None:
    assert (installed / "matcher" / "data" / "weights.tsv").is_file()
    assert (installed / "matcher" / "data" / "demo" / "old.toml").is_file()


def test_the_demo_runs_from_the_wheel(installed: Path) -> None:
    done = samespin(installed, "demo", "--json")
    assert done.returncode in (0, 1), done.stderr
    assert '"verdict"' in done.stdout


def test_help_lists_every_command(installed: Path) -> None:
    done = samespin(installed, "--help")
    assert done.returncode == 0
    for name in ("read", "rank", "triage", "arrival", "sheet", "airflow", "demo", "window"):
        assert f"\n  {name} " in done.stdout
