"""The project's own promises about its code, checked like everything else."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "LICENSE",
    "matcher",
    "ui",
    "data",
    "tests",
    "packaging",
}


def run(*words: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", *words], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_lint() -> None:
    run("ruff", "check", ".")


def test_format() -> None:
    run("ruff", "format", "--check", ".")


def test_types() -> None:
    run("mypy")


def test_import_contracts() -> None:
    program = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports())"
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


def tracked_files() -> list[Path]:
    done = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip("not a git checkout")
    return [Path(line) for line in done.stdout.splitlines()]


def test_top_level_holds_what_was_agreed() -> None:
    assert {file.parts[0] for file in tracked_files() if not file.parts[0].startswith(".")} <= TOP_LEVEL


def test_files_stay_small() -> None:
    sizes = {
        file: (ROOT / file).read_text(encoding="utf-8").count("\n") for file in tracked_files() if code(file)
    }
    assert {str(file): size for file, size in sizes.items() if size > 300} == {}


def code(file: Path) -> bool:
    return file.suffix == ".py" and file.parts[0] in ("matcher", "ui") and (ROOT / file).exists()
