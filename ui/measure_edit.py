"""The editor for one measured fact: a line, or the few words that the fact can be."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QWidget

from matcher.entry import choices, is_length, kind, said
from ui.entry_row import Typed
from ui.still_box import StillBox
from ui.units import Units
from ui.words import choice_word


class MeasureLine(Typed):
    """Numbers and numbers-of-parts; a bare length counts in the unit that the window shows."""

    measured = Signal(str)

    def __init__(self, field: str, units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._field, self._units = field, units
        self.typed.connect(lambda text: self.measured.emit(self._with_unit(text)))

    def _with_unit(self, text: str) -> str:
        bare = text.strip()
        metric = is_length(self._field) and self._units.metric and bare[-1:].isdigit()
        return f"{bare} mm" if metric else bare

    def show_measured(self, text: str) -> None:
        """Show what the job holds."""
        bare = text.removesuffix(" mm") if self._units.metric else text
        self.show_text(bare)


class MeasureChoice(StillBox):
    """The words that a fact can be, empty first."""

    measured = Signal(str)

    def __init__(self, field: str, _units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(6)
        self.addItem("", "")
        for value in choices(field) or (True, False):
            self.addItem(choice_word(field, value), said(field, value))
        self.activated.connect(lambda place: self.measured.emit(self.itemData(place)))

    def show_measured(self, text: str) -> None:
        """Show what the job holds."""
        self.setCurrentIndex(max(0, self.findData(text)))


MeasureEdit = MeasureLine | MeasureChoice


def measure_edit(field: str, units: Units) -> MeasureEdit:
    """Return the editor for a fact."""
    if kind(field) in ("choice", "choices", "yes_no"):
        return MeasureChoice(field, units)
    return MeasureLine(field, units)
