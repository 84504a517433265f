"""The box that takes the plate as typed or pasted, and says what was left over."""

from math import ceil

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QTextCharFormat, QTextCursor
from PySide6.QtWidgets import QPlainTextEdit, QTextEdit, QVBoxLayout, QWidget

from matcher.leftover import leftover, understood
from matcher.record import Record
from ui.line import Soft, Trouble
from ui.theme import GRID

LONGEST = 20_000
"""Characters that a plate's box takes from a paste; the longest plates have some hundreds."""

LEAST_LINES, MOST_LINES = 4, 9
"""Lines of the plate that stand in sight; a longer one scrolls."""


class _Box(QPlainTextEdit):
    """A plain-text box that Tab leaves and that leaves undo to the job's history."""

    enter = Signal()
    shortened = Signal()
    """More was pasted than any plate holds."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTabChangesFocus(True)
        self.setUndoRedoEnabled(False)

    def insertFromMimeData(self, source: QMimeData) -> None:
        """Take pasted or dropped text, of a very long one the beginning."""
        room = LONGEST - self.document().characterCount() + len(self.textCursor().selectedText())
        if len(text := source.text()) > room:
            self.insertPlainText(text[: max(0, room)])
            self.shortened.emit()
        else:
            super().insertFromMimeData(source)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Ctrl+Enter as "done"; everything else types."""
        control = event.modifiers() & Qt.KeyboardModifier.ControlModifier
        if control and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.enter.emit()
            return
        super().keyPressEvent(event)


class PlateBox(QWidget):
    """The box with its line of leftovers."""

    typed = Signal(str)
    entered = Signal()
    """Ctrl+Enter: show me what fits."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.box, self._left, self.trouble = _Box(), Soft(), Trouble()
        self.box.setPlaceholderText(
            self.tr("Type or paste the plate, in one line or many: 1/2 208-230 1075 ccwle 48Y 5.6 1/2x6")
        )
        self.box.setAccessibleName(self.tr("Type or paste the plate"))
        self._fit_lines()
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(GRID // 2)
        down.addWidget(self.box)
        down.addWidget(self._left)
        down.addWidget(self.trouble)
        self.setFocusProxy(self.box)
        self.box.textChanged.connect(lambda: self.typed.emit(self.box.toPlainText()))
        self.box.document().documentLayout().documentSizeChanged.connect(lambda _size: self._fit_lines())
        self.box.enter.connect(self.entered)
        self.box.shortened.connect(self._tell_cut)

    def _fit_lines(self) -> None:
        """Stand as high as the plate has lines, within limits: the turn is often in the last one."""
        lines = min(MOST_LINES, max(LEAST_LINES, round(self.box.document().size().height())))
        around = 3 * self.box.document().documentMargin() + GRID  # it scrolls with less below the last line
        line = ceil(QFontMetricsF(self.box.font()).lineSpacing())  # lines end on whole pixels
        self.box.setFixedHeight(ceil(lines * line + around))

    def _tell_cut(self) -> None:
        line = self.tr("That is longer than any plate: only the first {} characters were taken.")
        self.trouble.tell(line.format(f"{LONGEST:,}"))

    def show_text(self, text: str) -> None:
        """Show a plate's text, keeping the cursor while the user writes it."""
        if text != self.box.toPlainText():
            self.box.blockSignals(True)
            self.box.setPlainText(text)
            self.box.blockSignals(False)
            self.box.moveCursor(QTextCursor.MoveOperation.End)
            self.box.verticalScrollBar().setValue(0)  # maker and number stand first on most plates

    def show_read(self, record: Record) -> None:
        """Underline what was understood and name what was not."""
        if record.text != self.box.toPlainText():
            return
        form = QTextCharFormat()
        form.setUnderlineStyle(QTextCharFormat.UnderlineStyle.SingleUnderline)
        self.box.setExtraSelections([self._selection(span, form) for span in understood(record)])
        rest = leftover(record)
        self._left.setText(self.tr("Not understood, left over: {}").format("  ".join(rest)) if rest else "")

    def _selection(self, span: tuple[int, int], form: QTextCharFormat) -> QTextEdit.ExtraSelection:
        made = QTextEdit.ExtraSelection()
        cursor = self.box.textCursor()
        cursor.setPosition(span[0])
        cursor.setPosition(span[1], QTextCursor.MoveMode.KeepAnchor)
        made.cursor, made.format = cursor, form
        return made
