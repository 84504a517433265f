"""Rows of the word tables that stand for many phrases."""

import pytest

from matcher.reading.word_rows import phrases


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("no returns", ["no returns"]),
        ("[i|we] pay", ["i pay", "we pay"]),
        ("pay [|the] freight", ["pay freight", "pay the freight"]),
        ("[last|only] one [left|]", ["last one left", "last one", "only one left", "only one"]),
    ],
)
def test_every_choice_is_one_phrase(row: str, said: list[str]) -> None:
    assert [" ".join(words) for words in phrases(row)] == said
