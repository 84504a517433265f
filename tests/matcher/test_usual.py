"""Usual figures: kept as a file that `--settings` takes too, judged on both ways."""

from pathlib import Path

import pytest

from matcher.errors import BadValue, UnknownField, UnreadableInput, UnwritableOutput
from matcher.settings import Settings
from matcher.usual import keep_usual, load_usual, usual_path

CHANGES = {"weights": {"power": 25.0}, "swap_costs": {"capacitor": 9}, "wise_parts": True}


def test_they_come_back_as_they_were_and_serve_the_command(tmp_path: Path) -> None:
    path = usual_path(tmp_path / "new" / "jobs.db")
    keep_usual(path, CHANGES)
    assert load_usual(path) == CHANGES
    assert Settings.load(path) == Settings.shipped().with_changes(CHANGES)


def test_without_a_file_the_shipped_ones_count_and_without_changes_the_file_goes(tmp_path: Path) -> None:
    path = tmp_path / "figures.toml"
    assert load_usual(path) == {}
    keep_usual(path, CHANGES)
    keep_usual(path, {"weights": {}})
    assert not path.exists()


@pytest.mark.parametrize(
    ("changes", "error"),
    [({"weights": {"power": -1}}, BadValue), ({"weights": {"colour": 1}}, UnknownField)],
    ids=["below 0", "no such name"],
)
def test_what_cannot_be_is_not_kept(
    tmp_path: Path, changes: dict[str, object], error: type[Exception]
) -> None:
    with pytest.raises(error):
        keep_usual(tmp_path / "figures.toml", changes)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("text", "error"), [("[weights", UnreadableInput), ("[weights]\npower = -3\n", BadValue)]
)
def test_a_file_that_cannot_be_read_names_itself(tmp_path: Path, text: str, error: type[Exception]) -> None:
    path = tmp_path / "figures.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(error, match=r"figures\.toml"):
        load_usual(path)


def test_a_folder_that_refuses_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(UnwritableOutput, match="not kept"):
        keep_usual(tmp_path / "file" / "figures.toml", CHANGES)
