"""A table of words as a page, a PDF, a CSV file, or lines for a spreadsheet.

All words are hostile: they are escaped in a page, inserted as plain text in a PDF, and a cell that a
spreadsheet would take for a formula is made harmless.
"""

import csv
import io
from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QMarginsF
from PySide6.QtGui import (
    QFont,
    QGuiApplication,
    QPageLayout,
    QPdfWriter,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextTable,
    QTextTableFormat,
)

from matcher.printed import document, table
from matcher.spreadsheet import safe_cell
from ui.paper_view import page_size

Lines = Sequence[Sequence[str]]
KEPT, ABREAST = 2, 5
SMALL_PT = 7.0
"""Columns that every table of a printed comparison begins with, and how many candidates follow."""


def _flat(cell: str) -> str:
    return safe_cell(" ".join(cell.split()))


def copy_lines(lines: Lines) -> None:
    """Put lines on the clipboard, cells apart by tabs."""
    QGuiApplication.clipboard().setText(tabbed(lines))


def tabbed(lines: Lines) -> str:
    """Return lines as a spreadsheet takes them from the clipboard: cells apart by tabs."""
    return "\n".join("\t".join(_flat(cell) for cell in line) for line in lines)


def save_csv(path: Path, _title: str, lines: Lines) -> None:
    """Write lines as CSV in UTF-8 with a byte-order mark, which spreadsheets need. Raises `OSError`."""
    out = io.StringIO()
    csv.writer(out).writerows([_flat(cell) for cell in line] for line in lines)
    path.write_text(out.getvalue(), encoding="utf-8-sig", newline="")


def bands(lines: Lines) -> list[Lines]:
    """Return a comparison as tables that fit across a sheet: the labels and the old motor stand in each.

    Columns that nothing fills, and rows that are empty in a band, stay: bands are read side by side.
    """
    widest = max((len(line) for line in lines), default=0)
    starts = range(KEPT, max(widest, KEPT + 1), ABREAST)
    return [[[*line[:KEPT], *line[start : start + ABREAST]] for line in lines] for start in starts]


def save_page(path: Path, title: str, lines: Lines) -> None:
    """Write lines as a page that prints. Raises `OSError`."""
    path.write_text(document(title, [table(band) for band in bands(lines)]), encoding="utf-8")


def save_pdf(path: Path, title: str, lines: Lines) -> None:
    """Write lines as a PDF in landscape. Raises `OSError`."""
    path.write_bytes(b"")  # a PDF writer does not tell why it can't; this does
    writer = QPdfWriter(str(path))
    writer.setTitle(title)
    writer.setPageSize(page_size())
    writer.setPageOrientation(QPageLayout.Orientation.Landscape)
    writer.setPageMargins(QMarginsF(12, 12, 12, 12))
    _small_print(title, lines).print_(writer)


def _small_print(title: str, lines: Lines) -> QTextDocument:
    """Return the lines as tables in small letters, each band of candidates on a sheet of its own."""
    made = QTextDocument()
    font = made.defaultFont()
    font.setPointSizeF(SMALL_PT)
    made.setDefaultFont(font)
    cursor = QTextCursor(made)
    cursor.insertText(title)
    strong, ruled = QTextCharFormat(), _ruled()
    strong.setFontWeight(QFont.Weight.Bold)
    for place, band in enumerate(bands(lines)):
        if place:
            cursor.movePosition(QTextCursor.MoveOperation.End)
            cursor.insertBlock(_next_sheet())
        grid: QTextTable = cursor.insertTable(len(band), max(len(line) for line in band), ruled)
        for row, line in enumerate(band):
            for column, cell in enumerate(line):
                into = grid.cellAt(row, column).firstCursorPosition()
                into.insertText(cell, strong if not row or not column else QTextCharFormat())
    return made


def _ruled() -> QTextTableFormat:
    ruled = QTextTableFormat()
    ruled.setBorder(0.5)
    ruled.setBorderStyle(QTextTableFormat.BorderStyle.BorderStyle_Solid)
    ruled.setBorderCollapse(True)
    ruled.setCellPadding(2)
    ruled.setHeaderRowCount(1)
    return ruled


def _next_sheet() -> QTextBlockFormat:
    form = QTextBlockFormat()
    form.setPageBreakPolicy(QTextBlockFormat.PageBreakFlag.PageBreak_AlwaysBefore)
    return form
