"""Reads the tables under `data/`, each once: tab-separated text with a head of `#` lines.

A fault in a table names the file, the line (or the row's key), and what to write there instead.
"""

from collections.abc import Callable, Iterable, Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import TypeVar

from matcher.errors import TableFault

Value = TypeVar("Value")


class Row(dict[str, str]):
    """One row: text by column, not to be changed."""

    __slots__ = ("place",)

    def __init__(self, cells: Iterable[tuple[str, str]], place: str) -> None:
        super().__init__(cells)
        self.place = place
        """File and line, as a message names them."""


_PACKAGE = Path(__file__).resolve().parent


@cache
def data_folder() -> Path:
    """Return the folder of tables: inside the package when installed, beside it in a checkout."""
    inside = _PACKAGE / "data"
    return inside if inside.is_dir() else _PACKAGE.parent / "data"


@cache
def rows(name: str) -> tuple[Row, ...]:
    """Return the rows of `data/<name>.tsv`.

    Raises `TableFault` when the file is missing or a row has too few or too many cells.
    """
    return parse(_text(name), Path(f"{name}.tsv").name)


def _text(name: str) -> str:
    path = data_folder() / f"{name}.tsv"
    try:
        return path.read_text(encoding="utf-8")
    except OSError as error:
        raise TableFault(f"{path.name}: can't be read ({error.strerror}); install Samespin again") from error


def parse(text: str, name: str) -> tuple[Row, ...]:
    """Split the text of one table into rows; raises `TableFault` naming the line that is wrong."""
    columns: tuple[str, ...] = ()
    found: list[Row] = []
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.startswith("#"):
            continue
        place = f"{name}, line {number}"
        cells = tuple(cell.strip() for cell in line.split("\t"))
        if not columns:
            columns = cells
            continue
        if len(cells) != len(columns):
            raise TableFault(f"{place}: {len(cells)} cells, the head has {len(columns)}")
        found.append(Row(zip(columns, cells, strict=True), place))
    return tuple(found)


def head(name: str) -> tuple[str, ...]:
    """Return the `#` lines of `data/<name>.tsv`: what it is, its units, its source."""
    return tuple(line[1:].strip() for line in _text(name).splitlines() if line.startswith("#"))


def number(row: Row, column: str, *, empty: float | None = None) -> float:
    """Return a cell as a number, in the unit that the table's head gives; `empty` for a cell left empty.

    Raises `TableFault` when it isn't one.
    """
    text = row.get(column)
    if text == "" and empty is not None:
        return empty
    try:
        return float(text or "")
    except ValueError as error:
        raise TableFault(f"{row.place}: {column} must be a number, not {text!r}") from error


def complete(found: Mapping[object, Value], keys: Iterable[object], name: str) -> Mapping[object, Value]:
    """Return a table as it is; raises `TableFault` when it has no row for one of the keys."""
    for key in keys:
        if key not in found:
            raise TableFault(f"{name}.tsv: no row for {key}; add one")
    return found


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
