"""Small labels that show plain text alone, whatever a listing or a file name holds."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QPalette, QShowEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from ui.spans import shown
from ui.theme import bold, current_colours, large


class Line(QLabel):
    """A label of plain text that wraps."""

    def __init__(self, text: str = "", parent: QWidget | None = None, *, wrap: bool = True) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(wrap)
        self.setText(text)

    def changeEvent(self, event: QEvent) -> None:
        """Keep the margins when light becomes dark: Qt takes those of a label too small for them away."""
        kept = self.contentsMargins()
        super().changeEvent(event)
        if event.type() == QEvent.Type.StyleChange:
            self.setContentsMargins(kept)


class Heading(Line):
    """The large line at the top of a page; beside buttons it doesn't wrap."""

    def __init__(self, text: str = "", parent: QWidget | None = None, *, wrap: bool = True) -> None:
        super().__init__(text, parent, wrap=wrap)
        self.setFont(large(self.font()))


class Strong(Line):
    """A bold line that names a group."""

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setFont(bold(self.font()))


class Soft(Line):
    """A line in soft ink: said once, not in the way."""

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setForegroundRole(QPalette.ColorRole.PlaceholderText)


class Trouble(Line):
    """An error where it arose: one line that stays until it is mended; hidden while all is well."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self.hide()

    def showEvent(self, event: QShowEvent) -> None:
        """Take on the colour of the light or dark that it is shown in."""
        super().showEvent(event)
        self._tint()

    def changeEvent(self, event: QEvent) -> None:
        """Take on the new colour when light becomes dark while it is shown."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.StyleChange:
            self._tint()

    def _tint(self) -> None:
        tint = self.palette()
        tint.setColor(QPalette.ColorRole.WindowText, current_colours().wont_fit)
        self.setPalette(tint)

    def tell(self, line: str) -> None:
        """Show a line, or nothing when it is empty; what a file's name or a listing brings stays plain."""
        line = shown(line).replace("\n", " ")
        self._tint()
        self.setText(line)
        self.setAccessibleName(line)
        self.setVisible(bool(line))
