"""Below the figures: keep them for new jobs, take the usual ones, go back to the shipped ones."""

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from matcher.job import Job
from ui.desk import Desk
from ui.line import Soft, Trouble


class UsualBar(QWidget):
    """Three buttons and a line that says which figures this job counts with."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.keep = QPushButton(self.tr("&Keep for new jobs"))
        self.take = QPushButton(self.tr("My &usual ones"))
        self.reset = QPushButton(self.tr("&Shipped ones"))
        self.keep.setToolTip(self.tr("Every new job starts with these figures"))
        self.take.setToolTip(self.tr("Count in this job with the figures kept for new jobs"))
        self.reset.setToolTip(self.tr("Count in this job with the figures that the program brings"))
        self.says, self.trouble = Soft(), Trouble()
        across = QHBoxLayout()
        for button in (self.keep, self.take, self.reset):
            across.addWidget(button)
        across.addStretch(1)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.addWidget(self.says)
        down.addWidget(self.trouble)
        down.addLayout(across)
        self.keep.clicked.connect(lambda: desk.usual.keep(desk.session.job.settings_changes))
        taking = self.tr("taking the usual figures")
        self.take.clicked.connect(lambda: self._change(taking, desk.usual.changes))
        self.reset.clicked.connect(lambda: self._change(self.tr("taking the shipped figures"), {}))
        desk.session.changed.connect(self._show)
        desk.usual.came.connect(self._came)
        desk.usual.trouble.connect(self.trouble.tell)

    def _change(self, words: str, changes: dict[str, object]) -> None:
        line = self._desk.session.try_edit(words, lambda job: job.edited(settings_changes=dict(changes)))
        self.trouble.tell(line)

    def _came(self) -> None:
        self.trouble.tell("")
        self._show(self._desk.session.job)

    def _show(self, job: Job) -> None:
        own = {group: figures for group, figures in job.settings_changes.items() if figures}
        usual = self._desk.usual.changes
        self.keep.setEnabled(own != usual)
        self.take.setEnabled(own != usual and bool(usual))
        self.reset.setEnabled(bool(own))
        if not own:
            self.says.setText(self.tr("This job counts with the shipped figures."))
        elif own == usual:
            self.says.setText(self.tr("This job counts with your usual figures."))
        else:
            self.says.setText(self.tr("This job counts with figures of its own."))
