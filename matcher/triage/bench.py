"""The bench tests of `data/triage_tests.tsv`, in the order that settles most with least effort and risk."""

from dataclasses import dataclass
from functools import cache
from typing import Literal

from matcher.judging.presume import is_electronic
from matcher.motor import Motor
from matcher.tables import Row, number, rows

Kind = Literal["ac", "ecm"]


@dataclass(frozen=True, slots=True)
class BenchTest:
    """One test: what to ask, how to do it, and the words or numbers that answer it."""

    name: str
    kind: str
    """`any`, `ac` or `ecm`."""
    live: bool
    """Done under voltage: only by somebody qualified to measure there."""
    minutes: int
    choices: tuple[str, ...]
    """Words to choose from; empty when the answer is measured."""
    numbers: int
    """How many readings the answer holds; 0 when it is a word."""
    unit: str
    question: str
    how: str
    source: str


@cache
def bench_tests() -> tuple[BenchTest, ...]:
    """Return every test in the order of its table."""
    return tuple(_test(row) for row in rows("triage_tests"))


def _test(row: Row) -> BenchTest:
    measured = row["answers"].isdigit()
    return BenchTest(
        name=row["name"],
        kind=row["for"],
        live=row["stage"] == "live",
        minutes=int(number(row, "minutes")),
        choices=() if measured else tuple(row["answers"].split()),
        numbers=int(number(row, "answers")) if measured else 0,
        unit=row["unit"],
        question=row["question"],
        how=row["how"],
        source=row["source"],
    )


def kind_of(motor: Motor) -> Kind:
    """Return which tests a motor takes: those with a module, and all others."""
    return "ecm" if is_electronic(motor) else "ac"


def bench_for(motor: Motor) -> tuple[BenchTest, ...]:
    """Return the tests that this motor takes, in order; a motor without capacitor isn't asked for one."""
    kind = kind_of(motor)
    without_capacitor = motor.motor_type in ("shaded_pole", "split_phase", "polyphase")
    return tuple(
        test
        for test in bench_tests()
        if test.kind in ("any", kind) and not (test.name == "capacitor_uf" and without_capacitor)
    )
