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
    QGuiApplication,
    QPageLayout,
    QPageSize,
    QPdfWriter,
    QTextCursor,
    QTextDocument,
    QTextTable,
)

from matcher.printed import document, table
from matcher.spreadsheet import safe_cell

Lines = Sequence[Sequence[str]]


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


def save_page(path: Path, title: str, lines: Lines) -> None:
    """Write lines as a page that prints. Raises `OSError`."""
    path.write_text(document(title, [table(lines)]), encoding="utf-8")


def save_pdf(path: Path, title: str, lines: Lines) -> None:
    """Write lines as a PDF in landscape. Raises `OSError`."""
    path.write_bytes(b"")  # a PDF writer does not tell why it can't; this does
    writer = QPdfWriter(str(path))
    writer.setTitle(title)
    writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    writer.setPageOrientation(QPageLayout.Orientation.Landscape)
    writer.setPageMargins(QMarginsF(12, 12, 12, 12))
    _small_print(title, lines).print_(writer)


def _small_print(title: str, lines: Lines) -> QTextDocument:
    """Return the lines in letters so small that a dozen candidates stand beside each other."""
    made = QTextDocument()
    font = made.defaultFont()
    font.setPointSizeF(7.0)
    made.setDefaultFont(font)
    cursor = QTextCursor(made)
    cursor.insertText(title)
    grid: QTextTable = cursor.insertTable(len(lines), max(len(line) for line in lines))
    for row, line in enumerate(lines):
        for column, cell in enumerate(line):
            grid.cellAt(row, column).firstCursorPosition().insertText(cell)
    return made
