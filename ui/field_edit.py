"""One field of a form: label, editor, unit, the underline of its origin, and its trouble in one line."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QLineEdit,
    QMenu,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from matcher.entry import choices, kind
from ui.fields import Field
from ui.line import Line, Soft, Trouble
from ui.still_box import StillBox
from ui.theme import GRID
from ui.underline import Underline
from ui.units import Units
from ui.words import choice_word, origin_word


class _Text(QLineEdit):
    """A line to type into; what was typed counts when Enter is pressed or the field is left."""

    committed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = ""
        self.editingFinished.connect(self._commit)

    def show_text(self, text: str) -> None:
        """Show a value, unless the user is just writing another."""
        if self.text() == self._shown or not self.hasFocus():
            self.setText(text)
            self.setCursorPosition(0)
        self._shown = text

    def _commit(self) -> None:
        if self.text() != self._shown:
            self._shown = self.text()
            self.committed.emit(self.text())


class _Choice(StillBox):
    """A list of a field's values in words, empty first; `committed` gives the value's own text."""

    committed = Signal(str)

    def __init__(self, field: str, values: tuple[object, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(6)
        self.addItem("", "")
        for value in values:
            self.addItem(choice_word(field, value), str(value))
        self.activated.connect(lambda place: self.committed.emit(self.itemData(place)))

    def show_text(self, text: str) -> None:
        """Show a value."""
        self.setCurrentIndex(max(0, self.findData(text)))


class _Choices(QToolButton):
    """A button whose menu ticks any number of a field's values."""

    committed = Signal(str)

    def __init__(self, field: str, values: tuple[object, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._field = field
        menu = QMenu(self)
        self._actions: list[QAction] = []
        for value in values:
            action = menu.addAction(choice_word(field, value))
            action.setCheckable(True)
            action.setData(str(value))
            action.triggered.connect(lambda _on: self.committed.emit(", ".join(self._ticked())))
            self._actions.append(action)
        self.setMenu(menu)

    def _ticked(self) -> list[str]:
        return [action.data() for action in self._actions if action.isChecked()]

    def show_text(self, text: str) -> None:
        """Show values separated by commas."""
        chosen = text.split(", ") if text else []
        for action in self._actions:
            action.setChecked(action.data() in chosen)
        self.setText(", ".join(choice_word(self._field, value) for value in chosen))


class FieldEdit(QWidget):
    """A field with all that belongs to it."""

    entered = Signal(str, str)
    """Field and the text that the user gave it."""
    focused = Signal(str)

    def __init__(self, field: Field, units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.field, self._units = field, units
        self.editor = self._made()
        self.editor.setAccessibleName(field.label)
        self.editor.setAccessibleDescription(field.how)
        self.editor.installEventFilter(self)
        self.editor.committed.connect(lambda text: self.entered.emit(field.name, text))
        self._underline, self.trouble, self._unit = Underline(), Trouble(), Soft(units.unit(field.name))
        self._fault, self._conflict = "", ""
        self._lay_out()
        self.setFocusProxy(self.editor)

    def _made(self) -> _Text | _Choice | _Choices:
        name = self.field.name
        how = kind(name)
        if how == "choices":
            return _Choices(name, choices(name), self)
        if how == "choice":
            return _Choice(name, choices(name), self)
        if how == "yes_no":
            box = _Choice(name, (), self)
            for word, value in (("yes", True), ("no", False)):
                box.addItem(choice_word(name, value), word)
            return box
        return _Text(self)

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GRID)
        grid.setVerticalSpacing(0)
        label = Line(self.field.label)
        label.setBuddy(self.editor)
        label.setFixedWidth(15 * GRID)
        self._unit.setFixedWidth(4 * GRID)
        self._unit.setWordWrap(False)
        grid.addWidget(label, 0, 0)
        grid.addWidget(self.editor, 0, 1)
        grid.addWidget(self._unit, 0, 2)
        grid.addWidget(self._underline, 1, 1)
        grid.addWidget(self.trouble, 2, 0, 1, 3)
        grid.setColumnStretch(1, 1)

    def show_value(self, value: object, origin: str) -> None:
        """Show a value and where it came from."""
        self._unit.setText(self._units.unit(self.field.name))
        self.editor.show_text(self._units.bare(self.field.name, value))
        self._underline.show_origin(origin if value is not None else "")
        said = f"{self.field.how} ({origin_word(origin)})" if origin and value is not None else self.field.how
        self.editor.setAccessibleDescription(said)

    def tell_fault(self, line: str) -> None:
        """Say why what was typed can't be, or nothing more."""
        self._fault = line
        self.trouble.tell(line or self._conflict)

    def tell_conflict(self, line: str) -> None:
        """Say which values the plate gives, or nothing more; what was typed wrong comes first."""
        self._conflict = line
        self.trouble.tell(self._fault or line)

    def forget(self) -> None:
        """Drop what was said about another job."""
        self.tell_conflict("")
        self.tell_fault("")

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Tell when the editor gets the keyboard."""
        if event.type() == QEvent.Type.FocusIn:
            self.focused.emit(self.field.name)
        return super().eventFilter(watched, event)
