"""Laws of reading: nothing raises, every span holds its words, the work grows with the text and no faster."""

import sys
from collections.abc import Callable
from types import FrameType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from matcher.reading import read_listing, read_plate
from matcher.record import Record

pytestmark = pytest.mark.property

WORDS = st.sampled_from(
    [
        "1/2",
        "HP",
        "115",
        "208-230",
        "V",
        "A",
        "RPM",
        "1075",
        "shaft",
        "in.",
        "mm",
        "$",
        "+",
        "/",
        "-",
        ",",
        ".",
        ";",
        "(",
        ")",
        "?",
        "not",
        "no",
        "CW",
        "CCW",
        "lead",
        "end",
        "module",
        "replaces",
        "maybe",
        "ECM",
        "new",
        "used",
        "returns",
        "days",
        "%",
        "x",
        '"',
        "'",
        "program",
        "MOD",
        "GS-7520-B",
        "\n",
        "5",
        "5/8",
        "½",
        "<br>",
        "&frac12;",
        "1O75",
        "€",
        "or",
        "and",
    ]
)
TEXTS = st.one_of(
    st.text(max_size=200),
    st.lists(WORDS, max_size=60).map(" ".join),
    st.lists(WORDS, max_size=60).map("".join),
)


def spans_hold(record: Record) -> None:
    texts = {"title": record.title, "text": record.text}
    marks = [*record.where.values(), *(mark for conflict in record.conflicts for mark in conflict.marks)]
    for mark in marks:
        assert texts[mark.source][slice(*mark.span)] == mark.said


@settings(max_examples=150, deadline=None)
@given(TEXTS, TEXTS)
def test_any_listing_is_read(text: str, title: str) -> None:
    spans_hold(read_listing(text, title))


@settings(max_examples=100, deadline=None)
@given(TEXTS)
def test_any_plate_is_read(text: str) -> None:
    spans_hold(read_plate(text))


@settings(max_examples=50, deadline=None)
@given(TEXTS)
def test_contradicted_fields_are_no_facts(text: str) -> None:
    record = read_listing(text)
    assert not record.contradicted & record.facts.said().keys()


def work(read: Callable[[str], Record], text: str) -> int:
    """Count the lines of code that a reading runs, whatever the machine."""
    lines = 0

    def count(_frame: FrameType, event: str, _arg: object) -> object:
        nonlocal lines
        lines += event == "line"
        return count

    before = sys.gettrace()
    sys.settrace(count)
    try:
        read(text)
    finally:
        sys.settrace(before)
    return lines


ADVERSARIES = {
    "fractions": "1/1/1/1",
    "digits": "1234567890",
    "blanks": " " * 50,
    "quotes": "\"'",
    "brackets": "([{<",
    "tags": "<b><",
    "entities": "&#12;&",
    "slashes": "/-",
    "numbers": "1075 ",
    "labels": "HP V A RPM ",
    "lengths": "5 5/8 in. x ",
    "turns": "CW facing ",
    "sums": "$5 + ",
    "codes": "AB-1-",
    "names": "Gullstead ",
    "points": "no. in. ...",
    "doubts": "maybe 1/2? ",
    "apart": "listed separately ",
    "shafts": "shaft 1/2 x 5 flat ",
    "misread": "1O",
    "months": "returns 30 days ",
    "speeds": "HI 1075\n",
    "headings": "HP  V  A\n1  2  3\n",
    "letters apart": "H P 1 / 8 ",
    "bars": "| ",
}


@pytest.mark.parametrize("piece", ADVERSARIES.values(), ids=ADVERSARIES)
@pytest.mark.parametrize("read", [read_listing, read_plate])
def test_work_grows_with_the_text(read: Callable[[str], Record], piece: str) -> None:
    read(piece)  # tables are read once, they don't count
    small, large = work(read, piece * 40), work(read, piece * 160)
    assert large <= 4.6 * small + 400
