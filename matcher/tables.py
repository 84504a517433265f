"""Reads the tables under `data/`, each once: tab-separated text with a head of `#` lines.

A fault in a table names the file, the line and what to write there instead.
"""

from collections.abc import Callable, Iterable, Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import TypeVar

from matcher.errors import TableFault

Row = Mapping[str, str]
Value = TypeVar("Value")

_PACKAGE = Path(__file__).resolve().parent


@cache
def data_folder() -> Path:
    """Return the folder of tables: inside the package when installed, beside it in a checkout."""
    inside = _PACKAGE / "data"
    return inside if inside.is_dir() else _PACKAGE.parent / "data"


@cache
def rows(name: str) -> tuple[Row, ...]:
    """Return the rows of `data/<name>.tsv`, each a mapping from column to text.

    Raises `TableFault` when the file is missing or a row has too few or too many cells.
    """
    path = data_folder() / f"{name}.tsv"
    try:
        text = path.read_text(encoding="utf-8")
    except OSError as error:
        raise TableFault(f"{path.name}: can't be read ({error.strerror}); install Samespin again") from error
    return parse(text, path.name)


def parse(text: str, name: str) -> tuple[Row, ...]:
    """Split the text of one table into rows; raises `TableFault` naming the line that is wrong."""
    columns: tuple[str, ...] = ()
    found: list[Row] = []
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.startswith("#"):
            continue
        cells = tuple(cell.strip() for cell in line.split("\t"))
        if not columns:
            columns = cells
            continue
        if len(cells) != len(columns):
            raise TableFault(f"{name}, line {number}: {len(cells)} cells, the head has {len(columns)}")
        found.append(MappingProxyType(dict(zip(columns, cells, strict=True))))
    return tuple(found)


def head(name: str) -> tuple[str, ...]:
    """Return the `#` lines of `data/<name>.tsv`: what it is, its units, its source."""
    text = (data_folder() / f"{name}.tsv").read_text(encoding="utf-8")
    return tuple(line[1:].strip() for line in text.splitlines() if line.startswith("#"))


def number(row: Row, column: str, name: str) -> float:
    """Return a cell as a number; raises `TableFault` when it isn't one."""
    try:
        return float(row[column])
    except (KeyError, ValueError) as error:
        raise TableFault(f"{name}.tsv: {column} must be a number, not {row.get(column)!r}") from error


def mapping(name: str, key: Callable[[Row], object], value: Callable[[Row], Value]) -> Mapping[object, Value]:
    """Return a table as a frozen mapping; raises `TableFault` when two rows have one key."""
    return frozen(((key(row), value(row)) for row in rows(name)), name)


def frozen(items: Iterable[tuple[object, Value]], name: str) -> Mapping[object, Value]:
    """Return the items as a frozen mapping; raises `TableFault` when one key comes twice."""
    found: dict[object, Value] = {}
    for key, value in items:
        if key in found:
            raise TableFault(f"{name}.tsv: {key} stands there twice; keep one of the rows")
        found[key] = value
    return MappingProxyType(found)
