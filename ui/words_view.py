"""A listing's title and text as found, plain, with the words behind its facts underlined and lit."""

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QTextCharFormat, QTextCursor
from PySide6.QtWidgets import QTextEdit, QWidget

from matcher.record import Record
from ui.spans import Places, shown
from ui.theme import bold, current_colours

BETWEEN = "\n\n"
LONGEST = 200_000
"""Characters that are shown; the reader has read them all."""
_UNBROKEN = re.compile(r"\S{2000}")
"""Signs without a blank, more than any listing means: 100,000 of them stall the window for seconds."""
Span = tuple[int, int]


class WordsView(QTextEdit):
    """Shows one record's words; `pointed` names the field whose words were clicked."""

    pointed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setReadOnly(True)
        self.setAcceptRichText(False)
        self.setTabChangesFocus(True)
        self.setUndoRedoEnabled(False)
        self.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.setAccessibleName(self.tr("The listing's words"))
        self._record = Record("")
        self._lit = ""
        self._places = Places("")
        self._text_at = 0
        self.note = ""
        """What is shown otherwise than it was found; empty for nearly every listing."""

    def show_record(self, record: Record) -> None:
        """Show a record's words; the place in the text is kept while the words are the same."""
        same = (record.title, record.text) == (self._record.title, self._record.text)
        self._record = record
        if not same or not self.toPlainText():
            self._text_at = len(record.title) + len(BETWEEN) if record.title else 0
            whole = (record.title + BETWEEN if record.title else "") + record.text[:LONGEST]
            self._places = Places(whole)
            # A sign gives way to a line's end, so that every span still holds.
            broken = _UNBROKEN.sub(lambda run: f"{run[0][:-1]}\n", whole)
            self.note = self._told(is_cut=len(record.text) > LONGEST, is_broken=broken != whole)
            self.setPlainText(shown(broken))
        self._paint_words()

    def _told(self, *, is_cut: bool, is_broken: bool) -> str:
        told = []
        if is_cut:
            told.append(
                self.tr("Only the first {} characters are shown; all were read.").format(f"{LONGEST:,}")
            )
        if is_broken:
            told.append(self.tr("Signs without any blank are broken into lines here."))
        return " ".join(told)

    def light(self, field: str) -> None:
        """Light the words behind a field and bring the first of them into sight."""
        self._lit = field
        self._paint_words()
        spans = self._spans().get(field, [])
        if spans:
            cursor = self._cursor(spans[0])
            cursor.clearSelection()
            self.setTextCursor(cursor)
            self.ensureCursorVisible()

    def chosen_words(self) -> str:
        """Return the words that the user selected, as they stand in the listing."""
        cursor = self.textCursor()
        start, stop = (self._places.to_text(at) for at in (cursor.selectionStart(), cursor.selectionEnd()))
        return self._whole()[start:stop]

    def place_in_text(self) -> int:
        """Return where the cursor stands in the record's text, in characters."""
        return max(0, self._places.to_text(self.textCursor().position()) - self._text_at)

    def _whole(self) -> str:
        title = self._record.title
        return (title + BETWEEN if title else "") + self._record.text

    def _spans(self) -> dict[str, list[Span]]:
        """Return the spans in the shown text behind each field, conflicts included."""
        marks = list(self._record.where.items())
        marks += [(one.field, mark) for one in self._record.conflicts for mark in one.marks]
        spans: dict[str, list[Span]] = {}
        for field, mark in marks:
            if mark.source:
                shift = 0 if mark.source == "title" else self._text_at
                spans.setdefault(field, []).append((mark.span[0] + shift, mark.span[1] + shift))
        return spans

    def _cursor(self, span: Span) -> QTextCursor:
        cursor = self.textCursor()
        last = self.document().characterCount() - 1
        cursor.setPosition(min(self._places.to_qt(span[0]), last))
        cursor.setPosition(min(self._places.to_qt(span[1]), last), QTextCursor.MoveMode.KeepAnchor)
        return cursor

    def _paint_words(self) -> None:
        conflicts = self._record.contradicted
        made = []
        if self._record.title:
            made.append(self._selection((0, len(self._record.title)), self._heading()))
        for field, spans in self._spans().items():
            form = self._format(lit=field == self._lit, conflict=field in conflicts)
            made += [self._selection(span, form) for span in spans]
        self.setExtraSelections(made)

    def _selection(self, span: Span, form: QTextCharFormat) -> QTextEdit.ExtraSelection:
        made = QTextEdit.ExtraSelection()
        made.cursor, made.format = self._cursor(span), form
        return made

    def _heading(self) -> QTextCharFormat:
        form = QTextCharFormat()
        form.setFont(
            bold(self.font()), QTextCharFormat.FontPropertiesInheritanceBehavior.FontPropertiesSpecifiedOnly
        )
        return form

    def _format(self, *, lit: bool, conflict: bool) -> QTextCharFormat:
        colours, form = current_colours(), QTextCharFormat()
        style = QTextCharFormat.UnderlineStyle
        form.setUnderlineStyle(style.DashUnderline if conflict else style.SingleUnderline)
        form.setUnderlineColor(QColor(colours.wont_fit if conflict else colours.soft))
        if lit:
            form.setBackground(QColor(colours.lit))
        return form

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Tell which field's words were clicked."""
        super().mouseReleaseEvent(event)
        if self.textCursor().hasSelection():
            return
        at = self._places.to_text(self.cursorForPosition(event.position().toPoint()).position())
        for field, spans in self._spans().items():
            if any(start <= at <= stop for start, stop in spans):
                self.pointed.emit(field)
                return
