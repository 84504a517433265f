"""The papers of a finished job: its record, and the substitution note that a customer signs."""

from collections.abc import Callable
from datetime import date

from PySide6.QtWidgets import QVBoxLayout, QWidget

from matcher.dossier import record_page, substitution_note
from matcher.rest import Rest
from ui.choice_row import ChoiceRow
from ui.line import Line
from ui.paper_view import PaperView
from ui.spans import shown
from ui.theme import GRID


class PapersView(QWidget):
    """One of the two papers, as it prints."""

    def __init__(self, clock: Callable[[], date], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._clock = clock
        self._rest: Rest | None = None
        self._which = "record"
        self.choice = ChoiceRow(
            self.tr("Paper:"), {"record": self.tr("Record of the job"), "note": self.tr("Substitution note")}
        )
        self.choice.show_choice(self._which)
        self.choice.chosen.connect(self._choose)
        self.empty = Line("")
        self.paper = PaperView(self.tr("Record"))
        down = QVBoxLayout(self)
        down.setContentsMargins(0, GRID, 0, 0)
        for widget in (self.choice, self.empty, self.paper):
            down.addWidget(widget, 1 if widget is self.paper else 0)
        down.addStretch(0)

    def _choose(self, which: str) -> None:
        self._which = which or self._which
        self.choice.show_choice(self._which)
        if self._rest is not None:
            self.show_rest(self._rest)

    def show_rest(self, rest: Rest) -> None:
        """Show the chosen paper of this job."""
        self._rest = rest
        day = self._clock()
        page = record_page(rest, day) if self._which == "record" else substitution_note(rest, day)
        self.empty.setText(
            self.tr("What was bought goes back: it stands in for nothing, so there is no note.")
            if rest.entries.decision == "send_back"
            else self.tr("The note is written once a motor is chosen under Arrival.")
        )
        self.empty.setVisible(not page)
        self.paper.setVisible(bool(page))
        titles = {"record": self.tr("Record"), "note": self.tr("Substitution note")}
        self.paper.show_page(page, shown(f"{titles[self._which]} {rest.job.name}".strip()))
