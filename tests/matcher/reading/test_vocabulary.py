"""The tables of words on trial: every row means something, none says two things at once."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import matcher.reading
from matcher.motor import Offer
from matcher.reading.brand import ordinary
from matcher.reading.listing import _LABELS, _WORDS
from matcher.reading.quantities import READERS
from matcher.reading.vocabulary import TABLES, Entries
from matcher.reading.word_rows import phrases
from matcher.tables import rows

KINDS = {row["kind"] for row in rows("reading/kinds")}
UNITS = {
    *READERS,
    "in",
    "mm",
    "cm",
    "m",
    "ft",
    "c",
    "f",
    "pct",
    "day",
    "week",
    "month",
    "year",
    "pin",
    "flat",
    "vdc",
}
READING = Path(matcher.reading.__file__).parent
ROWS = [(table, row) for table in TABLES for row in rows(f"reading/words/{table}")]


def test_every_kind_is_explained_and_used() -> None:
    assert {row["kind"] for _, row in ROWS} == KINDS
    assert {*_LABELS, *_WORDS} <= KINDS


def test_the_reader_asks_for_known_kinds_alone() -> None:
    asked = {kind for file in READING.glob("*.py") for kind in asked_for(ast.parse(file.read_text("utf-8")))}
    assert len(asked) > len(KINDS) / 2
    assert asked - KINDS == set()


def asked_for(tree: ast.AST) -> Iterator[str]:
    """Yield each kind in `items.has(i, kind)`, `items.said(i, kind)` and `kind in items.roles[i]`."""
    for node in ast.walk(tree):
        match node:
            case ast.Call(
                func=ast.Attribute(attr="has" | "said"),
                args=[_, ast.Constant(value=str(kind))],
            ):
                yield kind
            case ast.Compare(left=ast.Constant(value=str(kind)), ops=[ast.In()], comparators=[where]):
                if "roles" in (rows_of := ast.unparse(where)) and "get(" not in rows_of:
                    yield kind


def test_units_are_known() -> None:
    units = {row["value"] for _, row in ROWS if row["kind"] in ("unit", "after", "before")}
    assert units - UNITS == set()


def test_facts_are_of_the_contract() -> None:
    for _, row in ROWS:
        if row["kind"] in ("fact", "weak"):
            field, _, value = row["value"].partition("=")
            said: object = {"true": True, "false": False}.get(value, int(value) if value.isdigit() else value)
            Offer.model_validate({field: tuple(value.split(",")) if field == "mounting" else said})


def test_no_phrase_says_two_things_of_one_kind() -> None:
    said: dict[tuple[tuple[str, ...], str], str] = {}
    twice = []
    for _, row in ROWS:
        for words in phrases(row["words"]):
            key = tuple(words), row["kind"]
            if said.setdefault(key, row["value"]) != row["value"]:
                twice.append((words, row["kind"], said[key], row["value"]))
    assert twice == []


@pytest.mark.parametrize("table", TABLES)
def test_every_row_has_words_and_a_source(table: str) -> None:
    assert all(row["words"] and row["source"] for row in rows(f"reading/words/{table}"))


def test_ordinary_words_are_words() -> None:
    assert all(re.fullmatch(r"[^\W\d_]+(?:'[a-z]+)?", word) for word in ordinary())


def test_strange_words_are_forgotten_and_known_ones_never(monkeypatch: pytest.MonkeyPatch) -> None:
    known = Entries()
    monkeypatch.setattr(Entries, "LIMIT", len(known) + 5)
    for number in range(50):
        known[f"strange{number}"]
        assert known["hp"].roles
    assert len(known) <= Entries.LIMIT + 1
