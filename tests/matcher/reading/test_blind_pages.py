"""Saved pages and tables whose keys an expert wrote before anything read them.

Each stands under `tests/reading_corpus/`; `NAME.key.json` beside it holds its records in order (an `id`
may be a list where two answers are right), how many broken rows are to be named, and the exit status.
Every third file, by name, is held out: those before `z41` served no mend, of the later ones some did.

Run as a script for the figures: `python -m tests.matcher.reading.test_blind_pages [--errors]`.
"""

import json
import sys
from collections.abc import Iterator
from functools import cache
from itertools import zip_longest
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from matcher.command.read import command
from matcher.reading.problem import Problem
from matcher.reading.sources import records
from matcher.reading.table import read_table
from matcher.record import Record
from tests.matcher.reading.score import Score, _score_one, report

CORPUS = Path(__file__).parents[2] / "reading_corpus"
KINDS = ("pages", "tables")
NOTHING = Record("(no such record)")
NONE_DUE = {"id": "(none due)", "facts": {}}


def files(kind: str, held_out: bool) -> list[Path]:
    keys = sorted((CORPUS / kind).glob("*.key.json"))
    return [path for n, path in enumerate(keys, 1) if (n % 3 == 0) == held_out]


def source(key_file: Path) -> Path:
    return key_file.with_name(key_file.name.removesuffix(".key.json"))


@cache
def figures(kind: str, held_out: bool) -> tuple[Score, list[str]]:
    """Return the score of one part, and what went wrong with ids, broken rows and numbers of records."""
    total, faults = Score(), []
    for path in files(kind, held_out):
        key = json.loads(path.read_text(encoding="utf-8"))
        problems: list[Any] = []
        found = list(records([source(path)], on_problem=problems.append))
        if len(found) != len(key["records"]):
            faults.append(f"{path.name}: {len(found)} records, due {len(key['records'])}")
        problems = [problem for problem in problems if not problem.is_note]
        if len(problems) != key["problems"]:
            faults.append(f"{path.name}: {len(problems)} problems, due {key['problems']}: {problems}")
        pairs = [(due or NONE_DUE, record or NOTHING) for due, record in zip_longest(key["records"], found)]
        for due, record in pairs:
            ids = due["id"] if isinstance(due["id"], list) else [due["id"]]
            if record.id not in ids:
                faults.append(f"{path.name}: id {record.id!r}, due {ids}")
            _score_one(total, due | {"id": f"{path.name} {ids[0]}"}, record)
    return total, faults


@pytest.mark.parametrize("held_out", [False, True], ids=["seen", "held-out"])
@pytest.mark.parametrize("kind", KINDS)
def test_every_record_is_found_and_nothing_else_is(kind: str, held_out: bool) -> None:
    _, faults = figures(kind, held_out)
    assert faults == []


@pytest.mark.parametrize(
    ("kind", "held_out", "precision", "recall"),
    [
        ("pages", False, 0.99, 0.98),
        ("pages", True, 0.985, 0.96),
        ("tables", False, 0.99, 0.98),
        ("tables", True, 0.99, 0.96),
    ],
)
def test_values_are_those_of_the_key(kind: str, held_out: bool, precision: float, recall: float) -> None:
    total, _ = figures(kind, held_out)
    assert total.precision() >= precision, total.errors
    assert total.recall() >= recall, total.errors
    assert total.conflicts_found == total.conflicts_due, total.errors
    assert total.conflicts_false == 0, total.errors


def run(*paths: Path) -> Result:
    return CliRunner().invoke(command, [*map(str, paths), "--json"], catch_exceptions=False)


@pytest.mark.parametrize("kind", KINDS)
def test_the_command_names_each_broken_row_and_does_the_others(kind: str) -> None:
    for path in sorted((CORPUS / kind).glob("*.key.json")):
        key = json.loads(path.read_text(encoding="utf-8"))
        result = run(source(path))
        assert result.exit_code == key["exit"], path.name
        assert len(result.stdout.splitlines()) == len(key["records"]), path.name
        named = [line for line in result.stderr.splitlines() if "not understood: " not in line]
        assert len(named) == key["problems"], path.name
        assert all(source(path).name in line and "line" in line for line in named), named


def _lines(count: int, taken: list[int]) -> Iterator[str]:
    yield "Brand,Model,HP,Volts,Price"
    for number in range(2, count + 2):
        taken.append(number)
        more = ",x" if number % 1000 == 0 else ""
        yield f"Drovemark,DM-{number},1/{number % 8 + 1},115,${number % 90 + 10}.00{more}"


def test_a_long_table_is_read_row_by_row_and_its_broken_rows_are_named() -> None:
    problems: list[Problem] = []
    taken: list[int] = []
    rows = read_table(_lines(60_000, taken), "long.csv", problems.append)
    first = next(rows)
    assert (first.id, first.facts.part_number) == ("long.csv#1", "DM-2")
    assert len(taken) < 1_000, "the table must not be gathered before its first row is told"
    last, count = first, 1
    for record in rows:
        last, count = record, count + 1
    assert (last.id, last.facts.part_number, count) == ("long.csv#60000", "DM-60001", 59_940)
    assert [problem.where for problem in problems] == [
        f"long.csv, line {line}" for line in range(1_000, 60_001, 1_000)
    ]


def main() -> None:
    for kind in KINDS:
        for held_out in (False, True):
            total, faults = figures(kind, held_out)
            sys.stdout.write(
                f"\n== {kind}, {'held out' if held_out else 'seen'}: {len(files(kind, held_out))} files\n"
            )
            if "--errors" in sys.argv and (not held_out or "--all" in sys.argv):
                sys.stdout.write("\n".join(faults + total.errors) + "\n")
            sys.stdout.write(
                f"{len(faults)} faults of records\n" + "\n".join(report(total).splitlines()[-2:]) + "\n"
            )


if __name__ == "__main__":
    main()
