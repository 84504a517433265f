"""Spans hold whatever signs a listing has, and hostile signs don't reorder what is shown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtGui import QTextDocument

from ui.spans import Places, shown


@pytest.mark.property
@given(st.text(alphabet=st.characters(exclude_categories=("Cs",)), max_size=60))
def test_places_are_each_others_inverse_and_count_as_utf16(text):
    places = Places(text)
    for at in range(len(text) + 1):
        there = places.to_qt(at)
        assert there == len(text[:at].encode("utf-16-le")) // 2
        assert places.to_text(there) == at


def test_a_shown_text_keeps_its_length_and_stands_as_it_is(qapp):
    text = "1/2\u202eHP\r\n208\u2029V\x00 \U0001f525 <b>no</b>\ufdd0"
    document = QTextDocument()
    document.setPlainText(shown(text))
    assert len(shown(text)) == len(text)
    assert document.characterCount() - 1 == len(text.encode("utf-16-le")) // 2
    assert "\u202e" not in shown(text)
