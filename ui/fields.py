"""The names of the facts and how a person finds each, from `data/fields.tsv`."""

from functools import cache
from typing import NamedTuple

from matcher import tables


class Field(NamedTuple):
    """One fact as a form shows it."""

    name: str
    label: str
    unit: str
    group: str
    how: str
    source: str


@cache
def fields() -> dict[str, Field]:
    """Return every field by its name, in the order that a form shows them."""
    return {row["field"]: Field(*row.values()) for row in tables.rows("fields")}


def label(name: str) -> str:
    """Return the name of a field in words."""
    known = fields().get(name)
    return known.label if known else name.replace("_", " ")


def line_about(name: str, fault: str) -> str:
    """Return why a field can't be so, under its name as people know it; empty for nothing."""
    return f"{label(name)}: {fault.removeprefix(f'{name}: ')}" if fault else ""


def group(name: str) -> list[Field]:
    """Return the fields of one group, in the form's order."""
    return [one for one in fields().values() if one.group == name]
