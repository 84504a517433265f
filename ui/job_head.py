"""Above the rail: the open job's name, and the switcher that finds any saved job."""

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from matcher.job import Job
from matcher.store import JobLine
from ui.desk import Desk
from ui.line import Soft, Trouble
from ui.rest_worker import RestWorker
from ui.spans import shown
from ui.theme import GRID
from ui.wrapped import lines_of

PAUSE_MS = 120
ID = Qt.ItemDataRole.UserRole
PLATE_SHOWN = 48
"""Signs of a plate in the list of jobs: its maker and number stand first on most."""
HIGHEST = 26 * GRID
"""Of the list of jobs; with few of them it leaves the room to the rail."""


class JobHead(QWidget):
    """Names the job, finds others, starts new ones."""

    new_job = Signal()
    went_on = Signal()
    """A job was found and opened; the keyboard is wanted elsewhere."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.name, self.seek, self.found = QLineEdit(), QLineEdit(), QListWidget()
        self._trouble, self._saved_ones = Trouble(), Soft(self.tr("Saved jobs"))
        self._is_offered = False
        """Whether the list stands there unasked: it goes when a new job is begun."""
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.name.setPlaceholderText(self.tr("name of this job"))
        self.name.setAccessibleName(self.tr("Name of this job"))
        self.seek.setPlaceholderText(self.tr("find a job"))
        self.seek.setAccessibleName(self.tr("Find a saved job by number, place or note"))
        self.seek.setToolTip(self.tr("Find a saved job by number, place or note (Ctrl+K)"))
        self.found.setAccessibleName(self.tr("Jobs found"))
        self.found.setFixedHeight(HIGHEST)
        self.found.setWordWrap(True)
        self.found.hide()
        self._saved_ones.hide()
        self.new = QPushButton(self.tr("&New"))
        self.new.setToolTip(self.tr("Start a new job (Ctrl+N)"))
        self.file = QPushButton(self.tr("&File"))
        self.file.setToolTip(self.tr("Backups, a copy elsewhere, a job as a file"))
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(GRID // 2)
        down.addWidget(self.name)
        down.addWidget(self.seek)
        down.addWidget(self._saved_ones)
        down.addWidget(self.found)
        across = QHBoxLayout()
        across.addWidget(self.new, 1)
        across.addWidget(self.file, 1)
        down.addLayout(across)
        down.addWidget(self._trouble)

    def _connect(self) -> None:
        self.name.textEdited.connect(self._rename)
        self._desk.session.changed.connect(self._show_job)
        self._desk.session.trouble.connect(self._trouble.tell)
        self._desk.session.saved.connect(lambda _saved: self._trouble.tell(""))
        self.seek.textEdited.connect(lambda _text: self._pause.start())
        self._pause.timeout.connect(self.search)
        self.seek.installEventFilter(self)
        self.found.installEventFilter(self)
        self.found.itemClicked.connect(self._choose)
        self.found.itemActivated.connect(self._choose)
        self.new.clicked.connect(self.new_job)
        window = self.window()
        QShortcut(QKeySequence("Ctrl+K"), window, self.start_search)
        QShortcut(QKeySequence.StandardKey.New, window, self.new_job.emit)

    def start_search(self) -> None:
        """Show the jobs changed last and wait for words."""
        self.seek.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.search()

    def offer_saved(self) -> None:
        """Show the jobs changed last, where there are any, until the new one is begun."""
        task = self._desk.shelf.search("")
        task.done.connect(self._offer)

    def _offer(self, lines: tuple[JobLine, ...]) -> None:
        if lines and self._desk.session.is_blank and self.found.isHidden():
            self._show_found(lines)
            self.found.setCurrentRow(-1)  # nothing is chosen by itself
            self._is_offered = True

    def search(self) -> None:
        """Look for what is typed."""
        self._is_offered = False
        task = self._desk.shelf.search(self.seek.text())
        task.done.connect(self._show_found)
        task.failed.connect(lambda fault: self._trouble.tell(str(fault)))

    def _show_found(self, lines: tuple[JobLine, ...]) -> None:
        self.found.clear()
        for line in lines:
            plate = shown(line.plate)
            first = line.name or ("" if plate else self.tr("no name"))
            short = plate if len(plate) <= PLATE_SHOWN else f"{plate[:PLATE_SHOWN].rstrip()}…"
            item = QListWidgetItem(shown(" · ".join(filter(None, (first, line.place, short)))), self.found)
            item.setData(ID, line.id)
        if not lines:
            nothing = QListWidgetItem(self.tr("No saved job matches."), self.found)
            nothing.setFlags(Qt.ItemFlag.NoItemFlags)
        self.found.setCurrentRow(0)
        self.found.show()
        self._fit()
        self._saved_ones.setVisible(bool(lines) and not self.seek.text().strip())
        self._ask_dues([line.id for line in lines if line.delivered])

    def _fit(self) -> None:
        """Make the list as high as its lines, as far as the rail can spare it."""
        metrics, wide = self.found.fontMetrics(), self.width() - 2 * GRID
        line, high = metrics.height(), 0
        for row in range(self.found.count()):
            if high < HIGHEST:
                high += line * lines_of(self.found.item(row).text(), self.found.font(), wide, 9)
        self.found.setFixedHeight(min(HIGHEST, high + line))

    def _ask_dues(self, ids: list[str]) -> None:
        """Put the deadline before each job whose return window runs, once it is worked out."""
        if ids:
            task = self._desk.shelf.dues(ids, RestWorker.of(self._desk.session).day())
            task.done.connect(self._show_dues)

    def _show_dues(self, dues: dict[str, str]) -> None:
        for row in range(self.found.count()):
            item = self.found.item(row)
            words = dues.get(item.data(ID), "")
            if words and not item.text().startswith(words):
                item.setText(f"{words} · {item.text()}")
        self._fit()

    def _choose(self, item: QListWidgetItem) -> None:
        job_id = item.data(ID)
        if not job_id:
            return
        self.close_search()
        self._desk.session.flush()
        task = self._desk.shelf.load(job_id)
        task.done.connect(lambda held: self._desk.session.open(held.job, held.version))
        task.done.connect(lambda _held: self.went_on.emit())
        task.failed.connect(lambda fault: self._trouble.tell(str(fault)))

    def close_search(self) -> None:
        """Put the search away."""
        self._pause.stop()
        self._is_offered = False
        self.found.hide()
        self._saved_ones.hide()
        self.seek.clear()

    def _rename(self, name: str) -> None:
        session = self._desk.session
        line = session.try_edit(self.tr("naming the job"), lambda job: job.edited(name=name), merge="name")
        self._trouble.tell(line)

    def _show_job(self, job: Job) -> None:
        if self._is_offered and not self._desk.session.is_blank:
            self.close_search()
        if self.name.text() != job.name:
            self.name.setText(job.name)
            self.name.setCursorPosition(0)
            self.name.setToolTip(shown(job.name))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the arrows walk the list while typing; Enter opens, Escape puts away; a click brings it."""
        if watched is self.seek and event.type() == QEvent.Type.MouseButtonPress and self.found.isHidden():
            self.search()
        if (
            event.type() == QEvent.Type.KeyPress
            and isinstance(event, QKeyEvent)
            and not self.found.isHidden()
        ):
            return self._key(watched, event) or super().eventFilter(watched, event)
        return super().eventFilter(watched, event)

    def _key(self, watched: QObject, event: QKeyEvent) -> bool:
        step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()), 0)
        if event.key() == Qt.Key.Key_Escape:
            self.close_search()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.found.currentItem():
            self._choose(self.found.currentItem())
        elif step and watched is self.seek:
            self.found.setCurrentRow(max(0, min(self.found.count() - 1, self.found.currentRow() + step)))
        else:
            return False
        return True
