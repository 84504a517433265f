"""A seller who corrects the title: the text counts; boxes and plates that disagree still contradict."""

import pytest

from matcher.reading import read_listing


@pytest.mark.parametrize(
    ("title", "text", "field", "value"),
    [
        ("1750 rpm motor", "Sorry typo in the title, it's 1075 rpm. 1/3 hp", "rpm", (1075,)),
        ("Blower motor 1/2 hp", "Title is wrong, tag says 1/3 hp 115 v", "power_hp", 0.3333),
        ("1/2 HP blower motor", "can't change the title: motor is 3/4 hp 115v", "power_hp", 0.75),
        ("Motor 1/2 hp", "1/3 hp. I know, the title says 1/2 hp, I can't fix the title", "power_hp", 0.3333),
        ("230 V motor", "This is not 230 V, it runs on 115 V", "volts", "115"),
    ],
)
def test_text_counts_where_it_corrects_the_title(title: str, text: str, field: str, value: object) -> None:
    record = read_listing(text, title)
    assert getattr(record.facts, field) == value
    assert record.conflicts == ()


@pytest.mark.parametrize(
    ("title", "text"),
    [
        ("Motor 1/3 hp", "Tag: HP 1/2, V 115"),
        ("Motor 1/3 hp", "Sorry for the pictures. Rating 1/2 HP."),
        ("", "Box says 1/2 HP, plate says 1/3 HP"),
    ],
)
def test_contradiction_without_a_correction_stays(title: str, text: str) -> None:
    assert [conflict.field for conflict in read_listing(text, title).conflicts] == ["power_hp"]
