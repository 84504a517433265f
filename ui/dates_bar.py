"""Which one was bought, when, when it arrived, and how long a parcel takes back."""

from collections.abc import Mapping
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QWidget

from matcher.rest import Rest
from ui.called import name_of
from ui.entry_row import Typed
from ui.line import Line, Trouble
from ui.still_box import StillBox
from ui.theme import GRID

ENTRIES = ("bought", "delivered", "transit_days")


class DatesBar(QWidget):
    """Entries in one row, troubles below."""

    bought = Signal(str)
    """The id of the listing that was bought; empty for none."""
    entered = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.listing, self.counted = StillBox(), StillBox()
        self.edits = {name: Typed() for name in ENTRIES}
        self.trouble = Trouble()
        self._faults: dict[str, str] = {}
        self._typing = ""
        """The entry that is being typed: half a date isn't wrong yet, until Enter or the way out of it."""
        self._lay_out()
        self.listing.activated.connect(lambda place: self.bought.emit(self.listing.itemData(place)))
        self.counted.activated.connect(
            lambda place: self.entered.emit("counted", self.counted.itemData(place))
        )
        for name, edit in self.edits.items():
            edit.typed.connect(partial(self._type, name))
            edit.editingFinished.connect(partial(self._finish, name))

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(2)
        self.listing.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.listing.setMinimumContentsLength(14)
        words = {
            "bought": (self.tr("Bought"), self.tr("day, as 8 Apr"), 15),
            "delivered": (self.tr("Delivered"), self.tr("day it arrived"), 15),
            "transit_days": (self.tr("Days on the way back"), "5", 7),
        }
        self.counted.addItem(self.tr("be back in time"), "back")
        self.counted.addItem(self.tr("be sent in time"), "sent")
        place = self._put(grid, 0, self.tr("This one was bought"), self.listing)
        for name, (label, hint, wide) in words.items():
            self.edits[name].setPlaceholderText(hint)
            self.edits[name].setFixedWidth(wide * GRID)
            place = self._put(grid, place, label, self.edits[name])
        self._put(grid, place, self.tr("It must"), self.counted)
        grid.addWidget(self.trouble, 2, 0, 1, 6)
        grid.setColumnStretch(0, 1)

    def _put(self, grid: QGridLayout, column: int, words: str, widget: QWidget) -> int:
        label = Line(words, wrap=False)
        label.setBuddy(widget)
        widget.setAccessibleName(words)
        grid.addWidget(label, 0, column)
        grid.addWidget(widget, 1, column)
        return column + 1

    def show_rest(self, rest: Rest, verdicts: Mapping[str, str]) -> None:
        """Show the entries and why one doesn't count; `verdicts` are the words to say beside each listing."""
        self._show_listings(rest, verdicts)
        entries = rest.entries
        for name, edit in self.edits.items():
            edit.show_text(str(getattr(entries, name)))
            edit.setEnabled(rest.bought is not None)
        self.counted.setCurrentIndex(self.counted.findData(entries.counted))
        self.counted.setEnabled(rest.bought is not None)
        self._faults = dict(rest.standing.faults) if rest.standing else {}
        self._tell_faults()

    def _type(self, name: str, text: str) -> None:
        self._typing = name
        self.entered.emit(name, text)

    def _finish(self, name: str) -> None:
        if self._typing == name:
            self._typing = ""
        self._tell_faults()

    def _tell_faults(self) -> None:
        """Say what is wrong with each entry that is finished."""
        known = [self._faults[name] for name in self.edits if name in self._faults and name != self._typing]
        self.trouble.tell("  ".join(known))

    def _show_listings(self, rest: Rest, verdicts: Mapping[str, str]) -> None:
        lines = [("", self.tr("nothing bought yet"))]
        for listing in rest.job.listings:
            said = filter(None, (verdicts.get(listing.id, ""), name_of(listing)))
            lines.append((listing.id, ": ".join(said)))
        if lines != [
            (self.listing.itemData(at), self.listing.itemText(at)) for at in range(self.listing.count())
        ]:
            self.listing.clear()
            for one, name in lines:
                self.listing.addItem(name, one)
        self.listing.setCurrentIndex(max(0, self.listing.findData(rest.bought.id if rest.bought else "")))
