"""The tables of words on trial: every row means something, none says two things at once."""

import re

import pytest

from matcher.motor import Offer
from matcher.reading.brand import ordinary
from matcher.reading.listing import _LABELS, _WORDS
from matcher.reading.quantities import READERS
from matcher.reading.vocabulary import TABLES, Entries
from matcher.reading.word_rows import phrases
from matcher.tables import rows

SILENT = [
    "unit",
    "after",
    "before",
    "none",
    "subject",
    "aspect",
    "fill",
    "by",
    "num",
    "mute",
    "not",
    "no",
    "absent",
    "withholds",
    "supplied",
    "unsure",
    "apart",
    "asks",
    "takeback",
    "corrects",
    "here",
    "affirms",
    "measured",
    "dualvolts",
    "vfd",
    "origin",
    "look",
    "opposite",
    "end",
    "view",
    "motor",
    "appliance",
    "plug",
    "module_label",
    "rotlabel",
    "fill0",
    "encl",
    "brglabel",
    "protlabel",
    "money",
    "price",
    "ship",
    "shipped",
    "was",
    "notprice",
    "wants",
    "buys",
    "local",
    "spends",
    "goods",
    "onplate",
    "nosplit",
]
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
ROWS = [(table, row) for table in TABLES for row in rows(f"reading/words/{table}")]


def test_kinds_are_known() -> None:
    known = {*SILENT, *_LABELS, *_WORDS}
    assert {row["kind"] for _, row in ROWS} - known == set()


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
