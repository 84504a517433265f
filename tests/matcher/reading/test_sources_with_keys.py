"""Saved pages and tables of invented shops against keys that were written before they were read.

Beside each file stands `<file>.json`: its records (id, facts, conflicts, and `either` where two answers
are right; null among them means that leaving it out is right too) and, for tables, its broken lines.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from matcher.reading.problem import Problem
from matcher.reading.sources import records
from matcher.record import Record

HERE = Path(__file__).parent
KEYS = sorted([*(HERE / "pages").glob("*.json"), *(HERE / "tables").glob("*.json")])


def _close(one: Any, two: Any) -> bool:
    if isinstance(one, bool) or isinstance(two, bool):
        return one is two
    if isinstance(one, (int, float)) and isinstance(two, (int, float)):
        return abs(one - two) <= max(0.002, 0.005 * abs(two))
    if isinstance(one, list) and isinstance(two, list):
        return len(one) == len(two) and all(map(_close, one, two))
    return bool(one == two)


def _faults(record: Record, key: dict[str, Any]) -> list[str]:
    """Say what differs from the key, a line for each field."""
    facts, wanted, either = record.facts.said(), key["facts"], key.get("either", {})
    faults = []
    for field in sorted({*facts, *wanted}):
        said = facts.get(field)
        right = either.get(field, [wanted.get(field)])
        if not any(_close(said, value) if value is not None else said is None for value in right):
            faults.append(f"{field}: {said!r} instead of {right!r}")
    found = sorted(conflict.field for conflict in record.conflicts)
    if found != sorted(key["conflicts"]):
        faults.append(f"conflicts: {found} instead of {sorted(key['conflicts'])}")
    return faults


def _read(path: Path) -> tuple[list[Record], list[Problem]]:
    problems: list[Problem] = []
    return list(records([path], on_problem=problems.append)), problems


@pytest.mark.parametrize("key", KEYS, ids=lambda path: path.stem)
def test_reads_what_the_key_says(key: Path) -> None:
    wanted = json.loads(key.read_text(encoding="utf-8"))
    broken = [] if isinstance(wanted, list) else wanted["problems"]
    wanted = wanted if isinstance(wanted, list) else wanted["records"]
    found, problems = _read(key.with_suffix(""))
    assert [record.id for record in found] == [record["id"] for record in wanted]
    assert [problem.where for problem in problems if not problem.is_note] == broken
    faults = {record.id: _faults(record, want) for record, want in zip(found, wanted, strict=True)}
    assert {name: lines for name, lines in faults.items() if lines} == {}


@pytest.mark.parametrize("key", KEYS, ids=lambda path: path.stem)
def test_every_mark_points_at_its_words(key: Path) -> None:
    for record in _read(key.with_suffix(""))[0]:
        marks = [*record.where.values(), *(mark for each in record.conflicts for mark in each.marks)]
        assert record.where or record.conflicts
        assert set(record.where) == set(record.facts.said())
        for mark in marks:
            words = record.title if mark.source == "title" else record.text
            assert words[slice(*mark.span)] == mark.said != ""


def test_there_are_enough_of_them() -> None:
    assert len([key for key in KEYS if key.parent.name == "pages"]) >= 12
    assert len([key for key in KEYS if key.parent.name == "tables"]) >= 12
