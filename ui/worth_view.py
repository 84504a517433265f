"""Was it worth it: the few entries at the left, the reckoning with its assumptions at the right."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from matcher.rest import Rest
from matcher.worth import texts_in, worth_entries
from ui.entry_form import EntryForm
from ui.line import Heading, Line, Soft
from ui.theme import GRID

FORM_WIDTH = 48 * GRID


class WorthView(QWidget):
    """Money, hours and energy."""

    entered = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.form, self.says, self.more, self.small = EntryForm(), Heading(), Line(), Soft()
        for entry in worth_entries():
            self.form.add_entry(entry.name, entry.label, entry.unit, entry.how)
        self.form.entered.connect(self.entered)
        self.form.setFixedWidth(FORM_WIDTH)
        right = QVBoxLayout()
        for widget in (self.says, self.more, self.small):
            right.addWidget(widget)
        right.addStretch(1)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, GRID, 0, 0)
        across.setSpacing(2 * GRID)
        across.addWidget(self.form)
        across.addLayout(right, 1)

    def show_rest(self, rest: Rest) -> None:
        """Show the reckoning as it stands."""
        worth = rest.worth
        self.form.show_entries(texts_in(rest.job.worth), worth.faults)
        first, *others = worth.says or (self.tr("Not reckoned yet"),)
        self.says.setText(first)
        self.more.setText("\n".join(others))
        assumed = [self.tr("Assumed: {}").format(line) for line in worth.assumed]
        self.small.setText("\n".join([*assumed, *worth.missing]))
