"""Words leave as plain words: no markup runs in a page, no formula in a spreadsheet."""

import csv

from PySide6.QtGui import QGuiApplication

from ui.export import ABREAST, bands, copy_lines, save_csv, save_page, save_pdf

LINES = [["", "Old motor", "=1+1"], ["Rotation", "cw", "<script>alert(1)</script>"], ["Price", "", "-5\t6"]]


def test_a_copied_table_has_no_formulas_and_one_line_a_row(qapp):
    copy_lines(LINES)
    copied = [line.split("\t") for line in QGuiApplication.clipboard().text().split("\n")]
    assert copied == [["", "Old motor", "'=1+1"], ["Rotation", "cw", LINES[1][2]], ["Price", "", "'-5 6"]]


def test_csv_comes_back_the_same_but_harmless(tmp_path):
    save_csv(tmp_path / "a.csv", "t", LINES)
    with (tmp_path / "a.csv").open(encoding="utf-8-sig", newline="") as file:
        assert next(iter(csv.reader(file))) == ["", "Old motor", "'=1+1"]


def test_a_page_escapes_and_a_pdf_is_one(qapp, tmp_path):
    save_page(tmp_path / "a.html", "<t>", LINES)
    page = (tmp_path / "a.html").read_text(encoding="utf-8")
    assert "<script>" not in page
    assert "&lt;script&gt;" in page
    save_pdf(tmp_path / "a.pdf", "t", LINES)
    assert (tmp_path / "a.pdf").read_bytes().startswith(b"%PDF")


def test_a_printed_comparison_goes_across_in_bands_with_the_old_motor_in_each():
    lines = [["", "Old motor", *map(str, range(2 * ABREAST + 1))], ["Rotation", "cw", *"abcdefghijk"]]
    split = bands(lines)
    assert [line[0] for line in split] == [
        ["", "Old motor", "0", "1", "2", "3", "4"],
        ["", "Old motor", "5", "6", "7", "8", "9"],
        ["", "Old motor", "10"],
    ]
    assert [line[1][2:] for line in split] == [list("abcde"), list("fghij"), ["k"]]
    assert bands([["", "Old motor"]]) == [[["", "Old motor"]]]


def test_a_comparison_of_many_is_a_page_of_several_tables(tmp_path):
    save_page(tmp_path / "a.html", "t", [["", "Old motor", *"abcdefg"]] * 3)
    assert (tmp_path / "a.html").read_text(encoding="utf-8").count("<table") == 2
