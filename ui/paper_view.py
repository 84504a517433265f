"""A page of the engine's as it will be printed, and its ways out: printer, PDF, page.

The page holds escaped words alone; even so nothing is ever loaded or followed from here.
"""

from pathlib import Path
from typing import Any

from PySide6.QtCore import QLocale, QMarginsF, QSizeF, Qt, QUrl
from PySide6.QtGui import QPagedPaintDevice, QPageLayout, QPageSize, QPalette, QPdfWriter, QTextDocument
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QTextBrowser, QVBoxLayout, QWidget

from ui.line import Trouble
from ui.save_as import ask_where
from ui.theme import GRID, LIGHT

MARGIN_MM = 14
DOTS_PER_INCH = 96


class _Paper(QTextBrowser):
    """Black on white, whatever the window wears: it is a sheet of paper."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setOpenLinks(False)
        rules = f"background: {LIGHT.sheet}; color: {LIGHT.ink}; border: 1px solid {LIGHT.line};"
        self.setStyleSheet(f"QTextBrowser {{ {rules} }}")
        tint = self.palette()
        tint.setColor(QPalette.ColorRole.Base, LIGHT.sheet)
        tint.setColor(QPalette.ColorRole.Text, LIGHT.ink)
        self.setPalette(tint)
        self.document().setDocumentMargin(3 * GRID)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def loadResource(self, _kind: int, _name: QUrl | str) -> Any:
        """Load nothing, from nowhere."""
        return None


def page_size() -> QPageSize:
    """Return the paper that the user's country prints on: Letter, or A4."""
    letter = QLocale.system().measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem
    return QPageSize(QPageSize.PageSizeId.Letter if letter else QPageSize.PageSizeId.A4)


def put_on(device: QPagedPaintDevice, html: str) -> int:
    """Print a page's markup on a device and return how many sheets it takes."""
    document = QTextDocument()
    document.documentLayout().setPaintDevice(device)
    document.setDocumentMargin(0)
    document.setHtml(html)
    document.setPageSize(QSizeF(device.width(), device.height()))
    document.print_(device)
    return document.pageCount()


def save_pdf(path: Path, title: str, html: str) -> int:
    """Write a page's markup as PDF and return how many sheets it takes. Raises `OSError`."""
    path.write_bytes(b"")  # a PDF writer does not tell why it can't; this does
    writer = QPdfWriter(str(path))
    writer.setTitle(title)
    writer.setResolution(DOTS_PER_INCH)
    writer.setPageLayout(_layout())
    return put_on(writer, html)


def _layout() -> QPageLayout:
    margins = QMarginsF(MARGIN_MM, MARGIN_MM, MARGIN_MM, MARGIN_MM)
    return QPageLayout(page_size(), QPageLayout.Orientation.Portrait, margins, QPageLayout.Unit.Millimeter)


class PaperView(QWidget):
    """The preview over its three buttons."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title, self.html = title, ""
        self.paper, self.trouble = _Paper(), Trouble()
        self.paper.setAccessibleName(title)
        self.print_button = QPushButton(self.tr("&Print…"))
        self.pdf_button = QPushButton(self.tr("P&DF…"))
        self.page_button = QPushButton(self.tr("Pa&ge…"))
        self.print_button.clicked.connect(self.print_it)
        self.pdf_button.clicked.connect(lambda: self._save("pdf"))
        self.page_button.clicked.connect(lambda: self._save("html"))
        across = QHBoxLayout()
        for button in (self.print_button, self.pdf_button, self.page_button):
            across.addWidget(button)
        across.addStretch(1)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.addLayout(across)
        down.addWidget(self.trouble)
        down.addWidget(self.paper, 1)

    def show_page(self, html: str, title: str = "") -> None:
        """Show a page, keeping the place where one reads."""
        self.title = title or self.title
        if html == self.html:
            return
        self.html = html
        bar = self.paper.verticalScrollBar()
        place = bar.value()
        self.paper.setHtml(html)
        bar.setValue(min(place, bar.maximum()))
        for button in (self.print_button, self.pdf_button, self.page_button):
            button.setEnabled(bool(html))

    def save_to(self, path: Path) -> None:
        """Write the page where the user wants it; what goes wrong stands above the page."""
        try:
            if path.suffix.lower() == ".pdf":
                save_pdf(path, self.title, self.html)
            else:
                path.write_text(self.html, encoding="utf-8")
        except OSError as fault:
            self.trouble.tell(self.tr("not saved: {}").format(fault.strerror))
            return
        self.trouble.tell("")

    def _save(self, ending: str) -> None:
        path = ask_where(self, self.title, ending)
        if path is not None:
            self.save_to(path)

    def print_it(self) -> None:
        """Ask for a printer and print."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter  # late: few sessions print

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setResolution(DOTS_PER_INCH)
        printer.setPageLayout(_layout())
        if QPrintDialog(printer, self).exec():
            put_on(printer, self.html)
