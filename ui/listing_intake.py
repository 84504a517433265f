"""Takes in what people paste, open or drop: text and files become listings, pictures are kept."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QMimeData, QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget

from matcher.store.job_file import is_job_file
from ui.busy_bar import BusyBar
from ui.desk import Desk
from ui.intake import PICTURES, from_files, from_text
from ui.spans import shown
from ui.work import Task


class ListingIntake(QObject):
    """Reads on workers; what came of it arrives by signal."""

    came = Signal(object)
    """Listings came in (`Intake`)."""
    job_file = Signal(object)
    """Among the files is a whole job (`Path`)."""
    kept = Signal(str, object)
    """Pictures were kept: the id of their listing, and a tuple of `Attachment`."""
    trouble = Signal(str)
    """One line about what went wrong; empty when a new try begins."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk, self._parent = desk, parent
        self.bar = BusyBar(parent)
        """Tells how far the reading is; the page gives it a place."""

    def paste(self) -> None:
        """Take the clipboard's text as one listing or several."""
        text = QGuiApplication.clipboard().text()
        if text.strip():
            self.take_text(text)
        else:
            self.trouble.emit(self.tr("There is no text on the clipboard; copy a listing first."))

    def choose_files(self, listing_id: str) -> None:
        """Let the user choose files; pictures among them belong to a listing."""
        paths, _kind = QFileDialog.getOpenFileNames(self._parent, self.tr("Open listings"))
        if paths:
            self.take_files([Path(path) for path in paths], listing_id)

    def take_mime(self, data: QMimeData, listing_id: str) -> None:
        """Take what was dropped."""
        paths = [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
        if paths:
            self.take_files(paths, listing_id)
        elif data.hasText():
            self.take_text(data.text())

    def take_text(self, text: str) -> None:
        """Read pasted text."""
        task = self._desk.work.run_ticking(from_text, text, self.tr("pasted"))
        self._take(task, self.tr("reading what was pasted"))

    def take_files(self, paths: Sequence[Path], listing_id: str) -> None:
        """Read files; pictures are kept for a listing, which must be chosen then."""
        jobs = [path for path in paths if is_job_file(path)]
        pictures = [path for path in paths if path.suffix.lower() in PICTURES]
        texts = [path for path in paths if path not in pictures and path not in jobs]
        for path in jobs:
            self.job_file.emit(path)
        if texts:
            more = self.tr(" and {} more").format(len(texts) - 1) if len(texts) > 1 else ""
            words = self.tr("reading {}").format(shown(texts[0].name) + more)
            self._take(self._desk.work.run_ticking(from_files, texts), words)
        if pictures and not listing_id:
            self.trouble.emit(self.tr("Choose the listing that the pictures belong to, then drop them."))
        elif pictures:
            task = self._desk.shelf.attach(pictures)
            task.done.connect(lambda kept: self.kept.emit(listing_id, kept))
            task.failed.connect(lambda fault: self.trouble.emit(str(fault)))

    def _take(self, task: Task, words: str) -> None:
        self.trouble.emit("")
        self.bar.watch(task, words)
        task.done.connect(self.came)
        task.failed.connect(lambda fault: self.trouble.emit(str(fault)))
