"""Corrections and contradictions: where the text counts, what stays a conflict, what never was one."""

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


@pytest.mark.parametrize(
    ("text", "fields"),
    [
        ("1/2 HP motor, comes with two capacitors, one 5uF and one 7.5uF", []),
        ("1/3 HP motor and a box of 5 mfd and 10 mfd capacitors", []),
        ("1/3 HP motor. Cap 5 mfd. The plate says 7.5 mfd", ["capacitor_uf"]),
    ],
)
def test_two_capacitors_in_one_breath_contradict_nothing(text: str, fields: list[str]) -> None:
    record = read_listing(text)
    assert record.facts.capacitor_uf is None
    assert [conflict.field for conflict in record.conflicts] == fields
