"""Letters that stand apart: what is drawn together, and that its spans hold in the original."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from matcher.reading import read_plate
from matcher.reading.letter_spaced import drawn_together


@pytest.mark.parametrize(
    ("text", "drawn"),
    [
        pytest.param("H P  1 / 8", "HP  1/8", id="a label and its fraction"),
        pytest.param("R P M 1 0 7 5", "RPM 1075", id="a label keeps its distance"),
        pytest.param("H Z 6 0 P H 1", "HZ 60 PH 1", id="labels in a row"),
        pytest.param("H P 1 3 / 4", "HP 1 3/4", id="a whole and a fraction"),
        pytest.param("A R D W E L M", "ARDWELM", id="a name"),
        pytest.param("HP 1/2  A 2 . 1", "HP 1/2  A 2.1", id="only a figure"),
        pytest.param("V A W\n1 2 3", None, id="labels of one letter are no word"),
        pytest.param("HP 1/2 V 115", None, id="nothing stands apart"),
        pytest.param("CL B  SF 1", None, id="single letters among words"),
    ],
)
def test_drawn(text: str, drawn: str | None) -> None:
    found = drawn_together(text)
    assert (found.text if found else None) == drawn


@given(st.text(alphabet="HPRMVZ 10/5.-\nq", max_size=60))
def test_spans_hold(text: str) -> None:
    drawn = drawn_together(text)
    if drawn is not None:
        assert [text[place] for place in drawn.places] == list(drawn.text)
    record = read_plate(text)
    for mark in record.where.values():
        assert text[slice(*mark.span)] == mark.said
    assert record.text == text
