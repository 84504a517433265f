"""No bytes of any kind make a page, a table, a text or JSON lines raise; marks always hold."""

import io
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from matcher.reading.page import read_page
from matcher.reading.problem import Problem
from matcher.reading.sources import records
from matcher.reading.split import split_listings
from matcher.reading.table import read_table
from matcher.record import Record

pytestmark = pytest.mark.property

WORDS = st.sampled_from(
    ["1/2 HP", "115", "208-230 V", "$55", "CWLE", "Motor", "HP", "Price", "Shaft mm", "id", "Notes", "7.5/370", "no", "é½", "\0",
     "Reviews", "Total", "12,50 €", "1.234", "\ufeff", "﷽", "\ud800", "1e999", "-", "?"]
)  # fmt: skip
TAGS = st.sampled_from(
    ["<div>", "</div>", "<p>", "<table><tr><td>", "</table>", "<dl><dt>", "<dd>", "<h1>", "</h1>", "<h2>", "<s>", "<sup>", "</sup>",
     "<li class=card>", "<ul>", "</ul>", "<select><option selected>", "<label><input type=radio>", "<article>", "<b>", "</b>",
     "<script type=application/ld+json>", "</script>", '{"@type":"Product","offers":', "[", "{", "}", "]", '"price":', ":", ",",
     "<div itemscope itemtype=Product>", "<span itemprop=price>", "<style>.a{display:none}</style>", "<!--", "-->", "&#0;", "&amp"]
)  # fmt: skip
SIGNS = st.sampled_from([",", ";", "\t", '"', '""', "\n", "\r", "\r\n", " ", "|"])


def _holds(found: list[Record]) -> None:
    for record in found:
        assert set(record.where) == set(record.facts.said())
        for mark in record.where.values():
            words = record.title if mark.source == "title" else record.text
            assert words[slice(*mark.span)] == mark.said


@given(st.binary(max_size=300))
@settings(max_examples=60, deadline=None)
def test_pages_of_any_bytes(data: bytes) -> None:
    _holds(read_page(data, "x"))


@given(st.lists(st.one_of(TAGS, WORDS), max_size=60).map(" ".join))
@settings(max_examples=150, deadline=None)
def test_pages_of_any_markup(page: str) -> None:
    _holds(read_page(page, "x"))


@given(st.lists(st.one_of(SIGNS, WORDS), max_size=80).map("".join))
@settings(max_examples=150, deadline=None)
def test_tables_of_any_cells(text: str) -> None:
    problems: list[Problem] = []
    _holds(list(read_table(io.StringIO(text), "t", problems.append)))
    assert all("\n" not in str(problem) for problem in problems)


@given(st.lists(st.one_of(SIGNS, WORDS), max_size=80).map("".join))
@settings(max_examples=100, deadline=None)
def test_pieces_of_a_text_are_parts_of_it_in_order(text: str) -> None:
    edges = [edge for span in split_listings(text) for edge in span]
    assert edges == sorted(edges)
    assert all(0 <= edge <= len(text) for edge in edges)


@given(
    st.one_of(
        st.binary(max_size=200),
        st.lists(st.one_of(SIGNS, WORDS, TAGS), max_size=40).map(
            lambda words: "".join(words).encode("utf-8", "replace")
        ),
    ),
    st.sampled_from([".txt", ".html", ".csv", ".tsv", ".jsonl", ".json", ".dat"]),
    st.booleans(),
)
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_files_of_any_bytes(tmp_path: Path, data: bytes, ending: str, plate: bool) -> None:
    path = tmp_path / f"x{ending}"
    path.write_bytes(data)
    _holds(list(records([path], plate=plate, on_problem=lambda _: None)))
