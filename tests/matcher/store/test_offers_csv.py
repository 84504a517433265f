"""Offers as a table: no cell runs in a spreadsheet, and all of it comes back."""

from pathlib import Path

import pytest

from matcher.errors import UnreadableInput
from matcher.motor import Offer
from matcher.reading.problem import Problem
from matcher.record import Record
from matcher.store.offers_csv import (
    COLUMNS,
    dump_offers,
    parse_offers,
    plain_cell,
    read_offers,
    safe_cell,
    write_offers,
)


@pytest.mark.parametrize(
    "cell",
    [
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        "\uff1d1",
        "'quoted",
        "''",
        "=cmd|' /C calc'!A0",
    ],
)
def test_formula_cells_are_neutralised(cell: str) -> None:
    """The leading characters of OWASP, "CSV Injection"."""
    assert safe_cell(cell) == f"'{cell}"
    assert plain_cell(safe_cell(cell)) == cell


@pytest.mark.parametrize("cell", ["", "1/2 HP", "a=b", "50", '"', "x\r\ny"])
def test_other_cells_stay_as_they_are(cell: str) -> None:
    assert safe_cell(cell) == plain_cell(cell) == cell


def test_a_table_comes_back_as_it_was(tmp_path: Path) -> None:
    facts = Offer(
        brand="=Orsholm", amps=(8.6, 4.3), mounting=("studs", "band"), leads=True, price=0.1 + 0.2, phase=1
    )
    records = [Record("@1", facts, title='-5" wheel', text="+\0\r\n\u202e'"), Record("2", text="\ufeffBOM")]
    write_offers(tmp_path / "lot.csv", records)
    problems: list[Problem] = []
    assert list(read_offers(tmp_path / "lot.csv", problems.append)) == records
    assert problems == []


def test_a_bad_row_costs_no_other() -> None:
    good = dump_offers([Record("1"), Record("2", Offer(price=5))])
    head, first, second, _ = good.split("\r\n")
    bad_rows = [second.replace('"5.0"', f'"{price}"') for price in ("xxx", "'-5", "1e308", "NaN")]
    text = "\r\n".join((head, first, '"short"', *bad_rows, second))
    problems: list[Problem] = []
    assert [record.id for record in parse_offers(text, "lot.csv", problems.append)] == ["1", "2"]
    assert [problem.where for problem in problems] == [f"lot.csv line {n}" for n in (3, 4, 5, 6, 7)]
    assert all("\n" not in str(problem) for problem in problems)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"a,b\n1,2\n",
        b"\xff\xfe\x00x",
        b'"unclosed',
        b"PK\x03\x04\x00\xff",
        (",".join(COLUMNS) + ",id").encode(),
    ],
    ids=["empty", "other table", "other encoding", "unclosed", "archive", "column twice"],
)
def test_what_is_no_table_of_ours_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "x.csv").write_bytes(content)
    with pytest.raises(UnreadableInput, match=r"x\.csv: no(t a)? table of offers"):
        list(read_offers(tmp_path / "x.csv", [].append))
