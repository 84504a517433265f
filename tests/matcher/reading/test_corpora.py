"""The blind corpora's development part: precision, recall and contradictions may not fall below these floors.

The third of each whose ids 3 divides is scored by hand (`score.py --held-out`). Nothing is mended by looking at
`*_last`; texts of the other files have all served to mend the reader, so theirs are no blind figures.
"""

from pathlib import Path

import pytest

from matcher.reading import read_listing, read_plate
from tests.matcher.reading.score import Score, load, score

CORPORA = Path(__file__).parents[2] / "reading_corpus"
LISTINGS = sorted(CORPORA.glob("listings*.jsonl"))
PLATES = sorted(CORPORA.glob("plates*.jsonl"))
FILES = [*LISTINGS, *PLATES]


@pytest.fixture(scope="module")
def total() -> Score:
    return score(load(FILES))


def test_corpora_are_there() -> None:
    assert len(LISTINGS) >= 3
    assert len(PLATES) >= 2


def test_precision(total: Score) -> None:
    assert total.precision() >= 0.99


def test_recall(total: Score) -> None:
    assert total.recall() >= 0.965


def test_conflicts_are_found(total: Score) -> None:
    assert total.conflicts_found >= 0.9 * total.conflicts_due


@pytest.mark.parametrize("name", ["volts", "hertz", "phase", "power_hp", "turn", "shaft_diameter_in"])
def test_hard_facts_are_right(total: Score, name: str) -> None:
    assert total.precision(name) >= 0.985


def test_spans_hold_the_words() -> None:
    for key in load(FILES):
        record = read_plate(key["text"]) if key["plate"] else read_listing(key["text"], key.get("title", ""))
        texts = {"title": key.get("title", ""), "text": key["text"]}
        assert record.where.keys() == record.facts.said().keys(), key["id"]
        for field, mark in record.where.items():
            assert texts[mark.source][slice(*mark.span)] == mark.said != "", (key["id"], field)
        names = record.facts.brand, record.facts.part_number, record.facts.program_number
        for name, field in zip(names, ("brand", "part_number", "program_number"), strict=True):
            if name:
                letters = _together(record.where[field].said)  # a name may stand letter by letter
                assert _together(name) in letters, (key["id"], field)


def _together(words: str) -> str:
    return "".join(words.split())
