"""The three tables of what can stand in for what: mounting, drive, and the electronic module."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import product
from typing import get_args

from matcher import tables
from matcher.finding import Outcome
from matcher.motor import Mounting


@dataclass(frozen=True, slots=True)
class Cell:
    """One cell of a table. `outcome` is a word of `Outcome`, or one that names a further rule."""

    outcome: str
    loss: float = 0.0
    needs: tuple[str, ...] = ()
    poor: bool = False
    moves: bool = False
    """The old module moves over, so makes and rated volts must match."""


@dataclass(frozen=True, slots=True)
class Held:
    """One cell of the mounting table."""

    outcome: Outcome
    loss: float
    needs: tuple[str, ...]


def held(old: str, new: str) -> Held:
    """Return the cell for how the old one was held and the new one can be."""
    return _mounting()[old, new]


def driven(old: str, new: str) -> Cell:
    """Return the cell for two kinds of motor: line, ecm_torque, ecm_airflow, ecm, polyphase."""
    return _drive()[old, new]


def moved(comes: str, numbers: str, health: str, motor_health: str) -> Cell:
    """Return the cell for what comes with the offer, whether programs are equal, and what is healthy."""
    return _module()[comes, numbers, health, motor_health]


@cache
def _mounting() -> Mapping[object, Held]:
    def cell(row: tables.Row) -> Held:
        needs = () if row["needs"] == "-" else (row["needs"],)
        return Held(Outcome(row["outcome"]), tables.number(row, "loss"), needs)

    found = tables.mapping("mounting", lambda row: (row["old"], row["new"]), cell)
    kinds = get_args(Mounting)
    return tables.complete(found, product(kinds, kinds), "mounting")


_DRIVES = ("line", "ecm_torque", "ecm_airflow", "ecm", "polyphase")


@cache
def _drive() -> Mapping[object, Cell]:
    found = tables.mapping(
        "drive",
        lambda row: (row["old"], row["new"]),
        lambda row: Cell(row["outcome"], tables.number(row, "loss")),
    )
    return tables.complete(found, product(_DRIVES, _DRIVES), "drive")


_VALUES = {
    "comes": ("with", "without", "module_only", "not_said"),
    "numbers": ("equal", "differ", "not_said"),
    "health": ("good", "unknown", "bad"),
    "motor_health": ("good", "unknown", "bad"),
}


@cache
def _module() -> Mapping[object, Cell]:
    found = tables.frozen(_module_cells(), "module")
    return tables.complete(found, product(*_VALUES.values()), "module")


def _module_cells() -> Iterator[tuple[object, Cell]]:
    for row in tables.rows("module"):
        cell = Cell(
            row["outcome"],
            tables.number(row, "loss"),
            poor=row["poor"] == "yes",
            moves=row["moves"] == "yes",
        )
        keys = [values if row[name] == "any" else (row[name],) for name, values in _VALUES.items()]
        for key in product(*keys):
            yield key, cell


@cache
def torque_place(motor_type: str) -> int | None:
    """Return a line-voltage motor's place in falling starting torque; None for other kinds."""
    return _torque().get(motor_type)


@cache
def _torque() -> Mapping[object, int]:
    def place(row: tables.Row) -> int:
        return int(tables.number(row, "place"))

    return tables.mapping("starting_torque", lambda row: row["motor_type"], place)
