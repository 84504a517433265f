"""Listings as a table: every fact in its column, and no cell runs in a spreadsheet."""

import csv

import pytest

from matcher.motor import Offer
from matcher.record import Record
from matcher.spreadsheet import COLUMNS, safe_cell, table_lines


@pytest.mark.parametrize(
    "cell",
    ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uff1d1", "=cmd|' /C calc'!A0"],
)
def test_formula_cells_are_neutralised(cell: str) -> None:
    """The leading characters of OWASP, "CSV Injection"."""
    assert safe_cell(cell) == f"'{cell}"


@pytest.mark.parametrize("cell", ["", "1/2 HP", "a=b", "50", '"', "x\r\ny", "'quoted"])
def test_other_cells_stay_as_they_are(cell: str) -> None:
    assert safe_cell(cell) == cell


def test_a_row_holds_every_fact_in_its_column() -> None:
    facts = Offer(brand="=Orsholm", amps=(8.6, 4.3), plug_pins=(5, 16), leads=True, price=20, volts="115")
    head, row = csv.reader(table_lines([Record("lot.csv#1", facts, title='Motor, 5"\nas is')]))
    assert head == list(COLUMNS)
    assert {name: cell for name, cell in zip(head, row, strict=True) if cell} == {
        "id": "lot.csv#1",
        "title": 'Motor, 5" as is',
        "brand": "'=Orsholm",
        "volts": "115",
        "amps": "8.6, 4.3",
        "plug_pins": "5, 16",
        "leads": "yes",
        "price": "20.0",
    }
