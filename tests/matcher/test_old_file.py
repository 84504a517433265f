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


def test_every_fault_of_a_file_is_told_at_once(tmp_path: Path) -> None:
    text = '[motor]\npower_hp = "big"\nshaft_diam = 0.5\nphase = 7\n[site]\nsupply_volt = 230'
    with pytest.raises(BadValue) as caught:
        load_wanted(_written(tmp_path, "o.toml", text))
    told = str(caught.value)
    assert told.startswith("o.toml: power_hp: 'big' can't be right")
    assert [name for name in ("power_hp", "'shaft_diam'", "phase", "'supply_volt'") if name not in told] == []
    assert "\n" not in told


def test_of_very_many_faults_the_first_are_told(tmp_path: Path) -> None:
    text = "[motor]\n" + "\n".join(f"made_up_{place} = 1" for place in range(9))
    with pytest.raises(UnknownField, match="made_up_5.*; and more like these") as caught:
        load_wanted(_written(tmp_path, "o.toml", text))
    assert "made_up_6" not in str(caught.value)
