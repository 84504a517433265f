"""One fact of a delivery's check list: the listing's words, the old motor's value, the box, the measuring."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from matcher.arrival.checklist import Item
from matcher.entry import said
from matcher.rest import Rest
from ui.line import Line, Soft, Trouble
from ui.measure_edit import measure_edit
from ui.spans import shown
from ui.theme import GRID, bold
from ui.tick_box import TickBox
from ui.units import Units

FACT, LISTED, OLD, BOX, EDIT, UNIT, MARK = range(7)
WIDTHS = {FACT: 17, LISTED: 25, OLD: 15, BOX: 3, EDIT: 15, UNIT: 5}
"""In grid steps; the mark takes what is left."""
LONGEST_WORDS = 48


class CheckRow(QWidget):
    """One row; ticking the box says "measured, and as listed"."""

    measured = Signal(str, str)
    """Field and text; empty to take it back."""

    def __init__(self, field: str, units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.field, self._units = field, units
        self._as_listed = ""
        self.fact, self.listed, self.old = Line(), Line(), Soft()
        self.box, self.edit = TickBox(), measure_edit(field, units)
        self.unit, self.mark, self.trouble = Soft(), Line(), Trouble()
        self._lay_out()
        self.box.clicked.connect(self._tick)
        self.edit.measured.connect(lambda text: self.measured.emit(field, text))
        self.setFocusProxy(self.edit)

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 2, 0, 2)
        grid.setHorizontalSpacing(GRID)
        grid.setVerticalSpacing(0)
        widgets = (self.fact, self.listed, self.old, self.box, self.edit, self.unit, self.mark)
        for column, widget in enumerate(widgets):
            if column in WIDTHS:
                widget.setFixedWidth(WIDTHS[column] * GRID)
            grid.addWidget(widget, 0, column)
        self.unit.setWordWrap(False)
        room = self.box.sizePolicy()
        room.setRetainSizeWhenHidden(True)
        self.box.setSizePolicy(room)
        grid.addWidget(self.trouble, 1, 0, 1, len(widgets))
        grid.setColumnStretch(MARK, 1)

    def _tick(self, ticked: bool) -> None:
        self.measured.emit(self.field, self._as_listed if ticked else "")

    def show_item(self, item: Item, rest: Rest) -> None:
        """Show the fact, what was typed for it, and how it compares."""
        standing = rest.standing
        if standing is None:
            return
        text = rest.entries.measured.get(self.field, "")
        self.fact.setText(item.label)
        self.fact.setFont(bold(self.font()) if item.hard else self.font())
        for widget in (self.fact, self.edit):
            widget.setToolTip(item.how)
        self.listed.setText(self._listed(item, rest))
        self.listed.setToolTip(shown(item.said))
        self.old.setText(self._units.of(self.field, rest.wanted.motor))
        value = getattr(standing.candidate.facts, self.field)
        self._as_listed = said(self.field, value)
        self._show_box(item, text)
        self.edit.setAccessibleName(self.tr("{} as measured").format(item.label))
        self.edit.setAccessibleDescription(item.how)
        self.edit.show_measured(text)
        self.unit.setText(self._units.unit(self.field))
        self.trouble.tell(standing.faults.get(self.field, ""))
        differs = any(one.field == self.field for one in standing.differing)
        self.mark.setText(self.tr("differs") if differs else "")
        self.mark.setFont(bold(self.font()))

    def _show_box(self, item: Item, text: str) -> None:
        self.box.setVisible(bool(self._as_listed))
        self.box.setToolTip(self.tr("Measured, and it is as listed"))
        self.box.setAccessibleName(self.tr("{} is as listed").format(item.label))
        self.box.setChecked(bool(text) and text == self._as_listed)

    def _listed(self, item: Item, rest: Rest) -> str:
        facts = rest.standing.candidate.facts if rest.standing else None
        value = self._units.of(self.field, facts) if facts is not None else ""
        if not value:
            return _DOUBTS.get(item.doubt, item.doubt)
        words = shown(" ".join(item.said.split()))
        short = words if len(words) <= LONGEST_WORDS else f"{words[: LONGEST_WORDS - 1]}…"
        return f"{value}  “{short}”" if short and short != value else value


_DOUBTS = {
    "not said": "not said",
    "presumed": "not said, presumed by number",
    "contradicted": "said twice, differently",
}
