from pathlib import Path

import pytest

from matcher.errors import BadValue, SamespinError, UnknownField, UnreadableInput
from matcher.old_file import load_wanted

BAD: list[tuple[str, str, type[SamespinError], str]] = [
    ("o.toml", "[motor]\nshaft_diamter_in = 0.5", UnknownField, "did you mean 'shaft_diameter_in'?"),
    ("o.toml", '[motor]\nvolts = "1I5"', BadValue, "volts: '1I5' can't be right: write volts as \"115\""),
    ("o.toml", "[motor]\npower_hp = -1", BadValue, "power_hp: -1"),
    ("o.toml", "[motor]\nsupply_volts = 208", UnknownField, "put it under 'site'"),
    ("o.toml", "[motor]\nprice = 20", UnknownField, "a fact of an offer"),
    ("o.toml", "power_hp = 1", UnknownField, "put it under 'motor'"),
    ("o.toml", "[moter]\npower_hp = 1", UnknownField, "did you mean 'motor'?"),
    ("o.toml", "[site]\nsupply_volts = 208", UnreadableInput, "no fact of the old motor"),
    ("o.toml", "motor = 3", UnreadableInput, "must hold facts"),
    ("o.toml", "[motor", UnreadableInput, "no TOML"),
    ("o.json", '{"motor": {', UnreadableInput, "line 1: it is no JSON"),
    ("o.json", '{"motor": ' + "[" * 9000, UnreadableInput, "o.json"),
    ("o.json", "", UnreadableInput, "it is empty"),
    ("o.toml", "PK\x03\x04", UnreadableInput, "zip archive"),
    ("o.txt", "hello there", UnreadableInput, "no fact of a motor"),
]


def _written(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("o.toml", '[motor]\nvolts = 115\nmounting = ["band"]\n[site]\nsupply_volts = 120'),
        ("o.json", '{"motor": {"volts": "115", "mounting": ["band"]}, "site": {"supply_volts": 120}}'),
        ("o.txt", '{"motor": {"volts": "115", "mounting": ["band"]}, "site": {"supply_volts": 120}}'),
        ("o.toml", '\ufeff[motor]\r\nvolts = "115"\r\nmounting = ["band"]\r\n[site]\r\nsupply_volts = 120'),
    ],
    ids=["toml", "json", "json in a text file", "marked, with CRLF"],
)
def test_motor_and_site_are_read(tmp_path: Path, name: str, text: str) -> None:
    wanted = load_wanted(_written(tmp_path, name, text))
    assert wanted.motor.said() == {"volts": "115", "mounting": ["band"]}
    assert wanted.site.said() == {"supply_volts": 120.0}
    assert wanted.id == name


def test_a_text_is_a_plate_and_keeps_what_contradicts_itself(tmp_path: Path) -> None:
    wanted = load_wanted(_written(tmp_path, "p.txt", "HP 1/2 V 115\nROT CWLE\nROT CCWLE"))
    assert wanted.motor.said() == {"power_hp": 0.5, "volts": "115"}
    assert wanted.contradicted == {"turn"}


@pytest.mark.parametrize(
    ("name", "text", "error", "words"), BAD, ids=[f"{row[0]} {row[1][:24]!r}" for row in BAD]
)
def test_what_is_wrong_is_told_in_one_line(
    tmp_path: Path, name: str, text: str, error: type[SamespinError], words: str
) -> None:
    with pytest.raises(error) as caught:
        load_wanted(_written(tmp_path, name, text))
    assert words in str(caught.value)
    assert str(caught.value).startswith(name)
    assert "\n" not in str(caught.value)


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(UnreadableInput, match="can't be read"):
        load_wanted(tmp_path / "gone.toml")


def test_what_the_file_calls_contradicted_is_not_known(tmp_path: Path) -> None:
    path = tmp_path / "old.json"
    path.write_text(
        '{"motor": {"turn": "cw", "volts": "115"}, "conflicts": ["turn", {"field": "rpm"}]}', encoding="utf-8"
    )
    wanted = load_wanted(path)
    assert (wanted.motor.turn, wanted.motor.volts) == (None, "115")
    assert wanted.contradicted == {"turn", "rpm"}
