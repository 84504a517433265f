"""Readings become words: what a meter showed, held against the limits of `data/triage_limits.tsv`."""

from collections.abc import Sequence
from functools import cache

from matcher import tables
from matcher.entry import number
from matcher.errors import BadValue
from matcher.limit import at_most
from matcher.motor import Motor
from matcher.triage.bench import BenchTest

SKIPPED = "skip"
"""The answer of somebody who can't or won't do a test now; every test takes it."""


@cache
def limits() -> dict[str, float]:
    """Return every limit by its name."""
    return {row["name"]: tables.number(row, "limit") for row in tables.rows("triage_limits")}


def numbers_in(test: BenchTest, text: str) -> list[float]:
    """Return the readings in an answer such as `2.1 2.0 2.1`; `OL` (over the meter's range) is infinite.

    Raises BadValue when it isn't as many plain numbers as the test takes, or when one is negative.
    """
    words = text.replace(";", " ").split()
    try:
        numbers = [float("inf") if word.upper() in ("OL", "O.L", "OPEN") else number(word) for word in words]
    except BadValue:
        numbers = []
    if len(numbers) != test.numbers or any(not number >= 0 for number in numbers):
        takes = "a reading" if test.numbers == 1 else f"{test.numbers} readings with blanks between,"
        raise BadValue(
            f"{test.name}: {text!r:.60} isn't {takes} in {test.unit}, such as 2.1, or OL for over the range"
        )
    return numbers


def word_for(test: BenchTest, answer: str, motor: Motor, tolerance: float | None = None) -> str:
    """Return the word that stands in the table of rules for an answer; `skip` stays `skip`.

    `tolerance` is the share that the capacitor prints (0.05 for 5 %). Raises BadValue for an answer that
    the test doesn't know.
    """
    if answer == SKIPPED:
        return SKIPPED
    if test.choices:
        if answer not in test.choices:
            raise BadValue(
                f"{test.name}: {answer!r:.60} is no answer; choose {', '.join(test.choices)} or {SKIPPED}"
            )
        return answer
    numbers = numbers_in(test, answer)
    if test.name == "windings_ohm":
        return windings_word(numbers)
    if test.name == "shell_kohm":
        return "clear" if numbers[0] > limits()["shell"] else "leaking"
    return capacitor_word(numbers[0], motor.capacitor_uf, tolerance)


def windings_word(ohms: Sequence[float]) -> str:
    """Return `equal`, `unequal` or `open` for the three winding pairs."""
    if max(ohms) > limits()["winding_open"]:
        return "open"
    mean = sum(ohms) / len(ohms)
    return "equal" if at_most(max(ohms) - min(ohms), limits()["winding_spread"] * mean) else "unequal"


def capacitor_word(read_uf: float, printed_uf: float | None, tolerance: float | None) -> str:
    """Return `within`, `out`, or `unsure` when what the capacitor prints isn't known."""
    if printed_uf is None:
        return "unsure"
    share = limits()["capacitor_tolerance"] if tolerance is None else tolerance
    return "within" if at_most(abs(read_uf - printed_uf), share * printed_uf) else "out"
