"""Cutting a text into tokens: what stays together, and that nothing is lost or moved."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from matcher.reading.clean import clean
from matcher.reading.mend import mend_figures
from matcher.reading.scan import _ANY, _PLAIN, scan

CUTS = [
    ("1/2 HP, 208-230V", ["1/2", "HP", ",", "208-230", "V"]),
    ("h.p. w/ cap w/o box", ["h.p.", "w/", "cap", "w/o", "box"]),
    ("AB-7x", ["AB", "-", "7", "x"]),
    ("belly-band", ["belly", "band"]),
    ("- new", ["-", "new"]),
    ("-new", ["-", "new"]),
    (" -new", [" ", "new"]),
    ("5/8' .4995 ...", ["5/8", "'", ".4995", "..."]),
    ("it's größer", ["it's", "größer"]),
    ("", []),
]


@pytest.mark.parametrize(("text", "tokens"), CUTS, ids=[text or "empty" for text, _ in CUTS])
def test_what_stays_together(text: str, tokens: list[str]) -> None:
    assert scan(text).raw == tokens


@pytest.mark.property
@given(st.text(st.sampled_from("aAwWhp019./,-' \t\nOIl|½é"), max_size=60))
def test_tokens_and_gaps_are_the_whole_text(text: str) -> None:
    cut = scan(text)
    whole = "".join(word + gap for word, gap in zip(cut.raw, cut.gaps, strict=True))
    assert whole == mend_figures(clean(text)) or whole == clean(text)
    assert all(whole.startswith(word, start) for word, start in zip(cut.raw, cut.starts, strict=False))


@pytest.mark.property
@given(st.text(st.characters(max_codepoint=127), max_size=60))
def test_plain_texts_are_cut_like_any(text: str) -> None:
    assert _PLAIN.split(text) == _ANY.split(text)


def test_endless_runs_of_figures_are_left_as_they_are() -> None:
    assert mend_figures("2O8 V") == "208 V"
    assert mend_figures("2O8" * 400 + " V") == "2O8" * 400 + " V"
