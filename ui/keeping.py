"""The File menu: a copy elsewhere, backups and their way back, a job handed on as one file or taken in."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QFileDialog, QMenu, QPushButton

from matcher.store import Generation, Held
from ui.desk import Desk
from ui.notices import Notices
from ui.save_as import ask_where
from ui.spans import shown
from ui.work import Task

SHOWN_BACKUPS = 15


class Keeping(QObject):
    """Does what keeps the jobs safe; says in one line what came of it."""

    told = Signal(str)
    """One line for the foot of the window."""

    def __init__(self, desk: Desk, notices: Notices, button: QPushButton) -> None:
        super().__init__(button)
        self._desk, self._notices = desk, notices
        self._under = button
        self.menu = QMenu(button)
        self.generations = self.menu.addMenu(self.tr("&Restore a backup"))
        self._fill()
        button.setMenu(self.menu)
        desk.session.saving.trouble.connect(self._offer_elsewhere)
        desk.session.saved.connect(lambda _saved: self._went_well())
        self._trouble = ""
        task = desk.shelf.start()
        task.done.connect(lambda _store: self.tell_notices())
        task.failed.connect(lambda fault: self._offer_elsewhere(str(fault)))

    def _fill(self) -> None:
        add = self.menu.addAction
        self.menu.removeAction(self.generations.menuAction())
        elsewhere = add(self.tr("&Save elsewhere…"), self.ask_elsewhere)
        elsewhere.setShortcut(QKeySequence("Ctrl+Shift+S"))
        add(self.tr("&Back up now"), self.back_up)
        self.menu.addMenu(self.generations)
        self.menu.addSeparator()
        add(self.tr("&Export this job…"), self.ask_export)
        add(self.tr("&Import a job…"), self.ask_import)
        self._under.addAction(elsewhere)
        self.generations.aboutToShow.connect(self.list_backups)
        self.generations.addAction(self.tr("Looking for backups…")).setEnabled(False)

    # --- troubles and notices

    def _offer_elsewhere(self, line: str) -> None:
        """Show why jobs can't be saved, with the ways out, until a save succeeds."""
        self._notices.remove(self._trouble)
        self._trouble = line
        ways = {
            self.tr("Try again"): self._desk.session.save_now,
            self.tr("Save elsewhere…"): self.ask_elsewhere,
        }
        self._notices.add(line, ways)

    def _went_well(self) -> None:
        self._notices.remove(self._trouble)
        self.tell_notices()

    def tell_notices(self) -> None:
        """Show what the store has to say: damage set aside, a file that may not be written."""
        waiting = self._desk.shelf.notices
        while waiting:
            line = waiting.popleft()
            self._notices.add(line, {self.tr("Save elsewhere…"): self.ask_elsewhere})

    # --- a copy elsewhere

    def ask_elsewhere(self) -> None:
        """Let the user choose where a copy of all jobs goes."""
        path = ask_where(self._under, "samespin", "db")
        if path is not None:
            self.save_elsewhere(path)

    def save_elsewhere(self, path: Path) -> None:
        """Go on in a copy of the saved jobs at another place, the open job as it is now."""
        session = self._desk.session
        jobs = () if session.is_blank else (session.job,)
        task = self._desk.shelf.save_elsewhere(path, jobs)
        task.done.connect(lambda held: self._moved(path, held))
        self._tell_failure(task)

    def _moved(self, path: Path, held: tuple[Held, ...]) -> None:
        self._notices.clear()
        self._desk.clerk.move(path)
        for one in held:
            self._desk.session.moved(one.job, one.version)
        self.told.emit(self.tr("All jobs are now kept in {}").format(shown(str(path))))
        self.tell_notices()

    # --- backups

    def back_up(self) -> None:
        """Make a backup now."""
        task = self._desk.shelf.back_up()
        task.done.connect(lambda made: self.told.emit(self.tr("Backed up: {}").format(_when(made))))
        self._tell_failure(task)

    def list_backups(self) -> None:
        """Fill the menu of backups, newest first."""
        task = self._desk.shelf.backups()
        task.done.connect(self._show_backups)
        self._tell_failure(task)

    def _show_backups(self, found: tuple[Generation, ...]) -> None:
        self.generations.clear()
        for one in found[::-1][:SHOWN_BACKUPS]:
            self.generations.addAction(_when(one), partial(self.restore, one))
        if not found:
            self.generations.addAction(self.tr("No backup yet")).setEnabled(False)

    def restore(self, generation: Generation) -> None:
        """Put a backup in the place of everything; what is there now becomes a backup first."""
        self._desk.session.flush()
        task = self._desk.shelf.restore(generation)
        task.done.connect(lambda before: self._restored(generation, before))
        self._tell_failure(task)

    def _restored(self, generation: Generation, before: Generation | None) -> None:
        from matcher.job import Job

        session = self._desk.session
        job_id = session.job.id
        session.saving.opened(session.job, 0)  # what was open belongs to the state before
        session.open(Job())
        task = self._desk.shelf.load(job_id)
        task.done.connect(lambda held: session.open(held.job, held.version))
        kept = _when(before) if before is not None else ""
        line = self.tr("Restored the backup of {}; what was there before is the backup of {}.")
        self.told.emit(line.format(_when(generation), kept))

    # --- one job as a file

    def ask_export(self) -> None:
        """Let the user choose where the open job goes as a file."""
        path = ask_where(self._under, self._desk.session.job.name or "job", "json")
        if path is not None:
            self.export(path)

    def export(self, path: Path) -> None:
        """Write the open job with its pictures to one file."""
        task = self._desk.shelf.export(self._desk.session.job, path)
        task.done.connect(lambda _none: self.told.emit(self.tr("Exported to {}").format(shown(str(path)))))
        self._tell_failure(task)

    def ask_import(self) -> None:
        """Let the user choose a job's file."""
        path, _kind = QFileDialog.getOpenFileName(
            self._under, self.tr("Import a job"), "", self.tr("Jobs (*.json)")
        )
        if path:
            self.take_in(Path(path))

    def take_in(self, path: Path) -> None:
        """Take a job's file in and open it."""
        session = self._desk.session
        task = self._desk.shelf.take_in(path)
        task.done.connect(lambda held: session.open(held.job, held.version))
        task.done.connect(lambda _held: self.told.emit(self.tr("Imported {}").format(shown(path.name))))
        self._tell_failure(task)

    def _tell_failure(self, task: Task) -> None:
        task.failed.connect(lambda fault: self._notices.add(str(fault), {}))


def _when(one: Generation) -> str:
    """Return when a backup was made, in the user's own time."""
    return f"{one.made.astimezone():%Y-%m-%d %H:%M:%S}"
