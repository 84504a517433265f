import csv
import json
from pathlib import Path

import pytest

from matcher.command import main


def _run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    with pytest.raises(SystemExit) as end:
        main(["read", *words])
    out, err = capsys.readouterr()
    return int(end.value.code or 0), out, err


def test_json_has_the_shape_of_the_contract(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "a.jsonl"
    path.write_text(
        '{"id": "a", "title": "Motor 115 V CWLE", "text": "1/2 HP. Turns CCW from the lead end."}\n'
    )
    status, out, err = _run(capsys, "--json", str(path))
    assert (status, err) == (0, "")
    assert json.loads(out) == {
        "id": "a",
        "facts": {"power_hp": 0.5, "volts": "115"},
        "where": {
            "power_hp": {"from": "text", "span": [0, 6], "said": "1/2 HP"},
            "volts": {"from": "title", "span": [6, 11], "said": "115 V"},
        },
        "conflicts": [
            {"field": "turn", "values": ["cw", "ccw"], "said": ["CWLE", "CCW from the lead end"]},
        ],
    }


def test_a_broken_row_is_named_and_the_others_done(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "t.csv"
    path.write_text("hp,volts\n1/2,115\n1/3,230,9\n3/4,460\n")
    status, out, err = _run(capsys, "--json", str(path), str(tmp_path / "gone.txt"))
    assert status == 1
    assert [json.loads(line)["id"] for line in out.splitlines()] == ["t.csv#1", "t.csv#3"]
    assert [line.split(":")[1].strip() for line in err.splitlines()] == [
        "t.csv, line 3",
        str(tmp_path / "gone.txt"),
    ]


def test_the_table_shows_facts_words_and_contradictions(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "a.txt"
    path.write_text("Motor [bold]1/2 HP[/bold], 60 Hz, CWLE. Turns CCWLE.")
    status, out, _ = _run(capsys, str(path))
    assert status == 0
    assert "power_hp" in out
    assert "turn ?" in out
    assert "contradicts itself" in out


def test_wrong_usage_is_status_two(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(capsys)[0] == 2
    assert _run(capsys, "--nonsense", "x")[0] == 2
    assert _run(capsys, "--json", "--csv", "x")[0] == 2


def test_a_table_for_a_spreadsheet(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "t.csv"
    path.write_text("hp,volts\n1/2,115\n3/4,460\n")
    status, out, err = _run(capsys, "--csv", str(path))
    rows = list(csv.DictReader(out.splitlines()))
    assert (status, err) == (0, "")
    assert [(row["id"], row["power_hp"], row["volts"]) for row in rows] == [
        ("t.csv#1", "0.5", "115"),
        ("t.csv#2", "0.75", "460"),
    ]
