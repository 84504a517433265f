import io
import sys
from pathlib import Path

import pytest

from matcher.reading import sources
from matcher.reading.decoding import decoded, text_lines
from matcher.reading.problem import Problem
from matcher.reading.sources import records
from matcher.record import Record


def _read(path: Path, *, plate: bool = False) -> tuple[list[Record], list[str]]:
    problems: list[Problem] = []
    found = list(records([path], plate=plate, on_problem=problems.append))
    assert all("\n" not in str(problem) for problem in problems)
    return found, [problem.why for problem in problems]


@pytest.mark.parametrize(
    ("name", "data", "why"),
    [
        ("empty.csv", b"", "it is empty"),
        ("blank.txt", b"\xef\xbb\xbf \r\n ", "it is empty"),
        ("sheet.csv", b"PK\x03\x04\x14\x00\x06\x00", "zip archive or spreadsheet; save it as CSV"),
        ("plate.txt", b"\x89PNG\r\n\x1a\n\x00\x00", "a picture"),
        ("scan.txt", b"%PDF-1.7\n", "a PDF"),
        ("noise.html", bytes(range(256)) * 4, "binary data"),
        ("figures.txt", b"1234 5678 " * 400, "no word"),
        ("figures.html", b"<html><body>1234 5678 9", "nothing for sale"),
        ("figures.csv", b"1,2,3\n4,5,6\n", "no line names its columns"),
        (
            "archive.html",
            b"From: x\nMIME-Version: 1.0\nContent-Type: multipart/related\n\n<html>",
            "web archive",
        ),
    ],
)
def test_a_source_that_gives_nothing_says_why(tmp_path: Path, name: str, data: bytes, why: str) -> None:
    (tmp_path / name).write_bytes(data)
    found, problems = _read(tmp_path / name)
    assert found == []
    assert len(problems) == 1
    assert why in problems[0]


@pytest.mark.parametrize("name", ["missing.txt", "."])
def test_what_cannot_be_opened_is_named(tmp_path: Path, name: str) -> None:
    found, problems = _read(tmp_path / name)
    assert found == []
    assert "can't be read" in problems[0]


def test_a_text_too_large_is_refused_unread(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sources, "LARGEST_TEXT", 1000)
    (tmp_path / "big.txt").write_text("motor 1/2 HP " * 100)
    found, problems = _read(tmp_path / "big.txt")
    assert (found, len(problems)) == ([], 1)
    assert "larger than any text" in problems[0]


def test_json_lines_good_and_broken(tmp_path: Path) -> None:
    path = tmp_path / "n.jsonl"
    path.write_text(
        '{"id": "a", "title": "Motor", "text": "1/2 HP"}\n\n'
        '{"text": "1/3 HP"}\n'
        "no json\n"
        '{"id": "b", "facts": {"volts": "1I5"}}\n'
        '{"id": "c", "facts": {"shaft_diamter_in": 0.5}}\n'
        '{"id": "d", "facts": {"volts": 115, "amps": [1, 2]}, "conflicts": [{"field": "turn"}]}\n'
        '{"id": "e"}\n[1]\n'
    )
    problems: list[Problem] = []
    found = list(records([path], on_problem=problems.append))
    assert [record.id for record in found] == ["a", "n.jsonl#2", "d"]
    assert found[2].facts.said() == {"volts": "115", "amps": [2.0, 1.0]}
    assert found[2].contradicted == {"turn"}
    assert [problem.where for problem in problems] == [f"n.jsonl, line {line}" for line in (4, 5, 6, 8, 9)]
    assert "write volts as" in problems[1].why
    assert "did you mean 'shaft_diameter_in'?" in problems[2].why


def test_what_read_prints_can_be_read_again(tmp_path: Path) -> None:
    from matcher.command.read import as_json

    line = '{"id": "a", "title": "Motor CW", "text": "1/2 HP, 115 V. 60 Hz 50 Hz."}'
    (tmp_path / "a.jsonl").write_text(line)
    [record] = _read(tmp_path / "a.jsonl")[0]
    import json

    again = as_json(record) | {"title": record.title, "text": record.text}
    (tmp_path / "b.jsonl").write_text(json.dumps(again))
    [second] = _read(tmp_path / "b.jsonl")[0]
    assert as_json(second) == as_json(record)


@pytest.mark.parametrize(
    ("name", "text", "facts"),
    [
        ("a.json", '[{"id": "x",\n "text": "1/2 HP"}]', {"power_hp": 0.5}),
        ("a.txt", "<!doctype html><html><body><h1>Motor 1/2 HP</h1></body></html>", {"power_hp": 0.5}),
        (
            "a.txt",
            "model,hp,volts\nGS-11,1/2,115\n",
            {"part_number": "GS-11", "power_hp": 0.5, "volts": "115"},
        ),
        ("a.csv", "hp\tvolts\n1/2\t115\n", {"power_hp": 0.5, "volts": "115"}),
        ("a.dat", '{"text": "1/2 HP"}\n', {"power_hp": 0.5}),
        ("a.md", "Motor, 1/2 HP", {"power_hp": 0.5}),
    ],
)
def test_what_a_file_holds_is_told_by_its_content(
    tmp_path: Path, name: str, text: str, facts: dict[str, object]
) -> None:
    (tmp_path / name).write_text(text)
    [record] = _read(tmp_path / name)[0]
    assert record.facts.said() == facts


def test_several_listings_of_a_text_are_numbered_and_one_keeps_its_place(tmp_path: Path) -> None:
    (tmp_path / "t.txt").write_bytes(b"motor 1/2 HP $5\r\n-----\r\nmotor 1/3 HP $6\r\n")
    (tmp_path / "one.txt").write_bytes(b"\r\n motor 1/2 HP\r\n")
    assert [record.id for record in _read(tmp_path / "t.txt")[0]] == ["t.txt#1", "t.txt#2"]
    [record] = _read(tmp_path / "one.txt")[0]
    assert record.id == "one.txt"
    assert "\r\n motor 1/2 HP\r\n"[slice(*record.where["power_hp"].span)] == "1/2 HP"


def test_plates_are_read_as_plates(tmp_path: Path) -> None:
    (tmp_path / "p.txt").write_text("GULLSTEAD\nMOD GS-9\nHP 1/2 V 2O8-230")
    [record] = _read(tmp_path / "p.txt", plate=True)[0]
    assert record.facts.said() == {
        "brand": "GULLSTEAD",
        "part_number": "GS-9",
        "power_hp": 0.5,
        "volts": "208-230",
    }


def test_standard_input_is_read_like_a_file(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"hp,volts,price\n1/2,115,5\n1/3,230,6\n")))
    found = list(records(["-"], on_problem=lambda _: None))
    assert [record.id for record in found] == ["-#1", "-#2"]


@pytest.mark.parametrize(
    "data",
    [
        "Größe ½ µF".encode(),
        b"\xef\xbb\xbf" + "Größe ½ µF".encode(),
        "Größe ½ µF".encode("utf-16"),
        "Größe ½ µF of a motor".encode("utf-16-le"),
        "Größe ½ µF of a motor".encode("utf-16-be"),
        "Größe ½ µF".encode("cp1252"),
        '<meta charset="iso-8859-1">Größe ½ µF'.encode("latin-1"),
    ],
    ids=["utf-8", "marked", "utf-16", "le unmarked", "be unmarked", "windows", "declared"],
)
def test_encodings_are_told_apart(data: bytes) -> None:
    assert "Größe ½ µF" in decoded(data)
    assert "Größe ½ µF" in "".join(text_lines(io.BytesIO(data)))


def test_lines_end_in_any_way_and_one_odd_line_spoils_no_other() -> None:
    data = "µ1\r\nµ2\nµ3\r".encode() + "µ4".encode("cp1252")
    assert list(text_lines(io.BytesIO(data))) == ["µ1", "µ2", "µ3", "µ4"]


def test_what_a_record_calls_contradicted_is_not_known(tmp_path: Path) -> None:
    path = tmp_path / "pile.jsonl"
    path.write_text(
        '{"id": "a", "facts": {"turn": "cw", "volts": "115"}, "conflicts": ["turn"]}\n', encoding="utf-8"
    )
    (record,) = records([path], on_problem=lambda problem: pytest.fail(problem.why))
    assert record.facts.said() == {"volts": "115"}
    assert record.contradicted == {"turn"}
