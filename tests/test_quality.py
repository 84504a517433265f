"""The project's own promises about its code, checked like everything else."""

import ast
import re
import statistics
import subprocess
import sys
from collections.abc import Iterator
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


Function = ast.FunctionDef | ast.AsyncFunctionDef


@pytest.fixture(scope="module")
def trees() -> dict[str, ast.Module]:
    """Return the syntax of every file of the program."""
    return {
        file.as_posix(): ast.parse((ROOT / file).read_text(encoding="utf-8"))
        for file in tracked_files()
        if code(file)
    }


def lines_of(function: Function) -> int:
    """Count the lines of a function's body, its docstring left out."""
    first, *rest = function.body
    said = isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant)
    body = rest if said else [first]
    return (body[-1].end_lineno or 0) - body[0].lineno + 1 if body else 0


def test_functions_stay_short(trees: dict[str, ast.Module]) -> None:
    lengths = {
        f"{file}:{node.lineno}": lines_of(node)
        for file, tree in trees.items()
        for node in ast.walk(tree)
        if isinstance(node, Function)
    }
    assert {place: length for place, length in lengths.items() if length > 50} == {}
    assert statistics.median(lengths.values()) < 10


SQL = re.compile(
    r"\s*(SELECT .* FROM|INSERT( OR \w+)? INTO|UPDATE \w+ SET|DELETE FROM|CREATE (TABLE|INDEX)|PRAGMA) ",
    re.DOTALL,
)


def test_only_the_store_writes_sql(trees: dict[str, ast.Module]) -> None:
    places = [
        f"{file}:{node.lineno}"
        for file, tree in trees.items()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and SQL.match(node.value)
    ]
    assert any(place.startswith("matcher/store/") for place in places)
    assert [place for place in places if not place.startswith("matcher/store/")] == []


def test_no_name_of_a_module_is_bound_twice(trees: dict[str, ast.Module]) -> None:
    for file, tree in trees.items():
        names = list(bound(tree))
        assert {name for name in names if names.count(name) > 1} == set(), file


def bound(tree: ast.Module) -> Iterator[str]:
    """Yield the names that a module defines at its top, as often as it does so."""
    for node in tree.body:
        if isinstance(node, Function | ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.Assign):
            yield from (target.id for target in node.targets if isinstance(target, ast.Name))
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            yield node.target.id


def code(file: Path) -> bool:
    return file.suffix == ".py" and file.parts[0] in ("matcher", "ui") and (ROOT / file).exists()
