"""Inches or millimetres: one switch for every page; the engine does the conversion."""

from PySide6.QtCore import QObject, Signal

from matcher.entry import MONEY, entered, is_length, said, spoken, unit
from matcher.motor import Motor, Site
from ui.fields import fields
from ui.words import choice_word


class Units(QObject):
    """Says values and understands typed ones in the chosen unit of length."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.metric = False

    def use_metric(self, metric: bool) -> None:
        """Switch to millimetres or back to inches."""
        if metric != self.metric:
            self.metric = metric
            self.changed.emit()

    def unit(self, field: str) -> str:
        """Return the unit that a field is shown in."""
        return unit(field, metric=self.metric) or fields()[field].unit

    def bare(self, field: str, value: object) -> str:
        """Return a value as a form holds it, without unit."""
        return said(field, value, metric=self.metric)

    def entered(self, field: str, text: str) -> object:
        """Return what was typed as a value. Raises `BadValue`."""
        return entered(field, text, metric=self.metric)

    def words(self, field: str, value: object) -> str:
        """Return a value as a person says it, with its unit; empty when not known."""
        if value is None:
            return ""
        if isinstance(value, (list, tuple)) and not is_length(field):
            if any(isinstance(item, str) for item in value):
                return ", ".join(choice_word(field, item) for item in value)
        elif isinstance(value, (str, bool)):
            return self._with_unit(field, choice_word(field, value))
        if field in MONEY:
            return spoken(field, value)
        return self._with_unit(field, self.bare(field, value))

    def _with_unit(self, field: str, words: str) -> str:
        shown = self.unit(field)
        return f"{words} {shown}" if shown else words

    def of(self, field: str, facts: Motor | Site) -> str:
        """Return a field of some facts as a person says it."""
        return self.words(field, getattr(facts, field, None))
