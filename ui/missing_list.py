"""What would change an answer: the missing facts that count, each a step to its field."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from matcher.missing import Missing
from ui.fields import label
from ui.line import Strong
from ui.theme import GRID
from ui.words import counted

SHOWN = 6


class MissingList(QWidget):
    """A short list; choosing an entry goes to its field."""

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._head, self.list = Strong(self.tr("What would change an answer")), QListWidget()
        self.list.setAccessibleName(self.tr("Missing facts that would change an answer"))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setFixedHeight(17 * GRID)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, GRID, 0, 0)
        down.setSpacing(GRID // 2)
        down.addWidget(self._head)
        down.addWidget(self.list)
        self.list.itemActivated.connect(self._choose)
        self.list.itemClicked.connect(self._choose)

    def show_missing(self, missing: tuple[Missing, ...]) -> None:
        """Show missing facts, the most telling first."""
        self.list.clear()
        for one in missing[:SHOWN]:
            item = QListWidgetItem(f"{label(one.field)}: {self._why(one)}", self.list)
            item.setData(Qt.ItemDataRole.UserRole, one.field)
        more = len(missing) - SHOWN
        if more > 0:  # the rail counts them all; the two must not seem to disagree
            rest = QListWidgetItem(self.tr("and {} more, once these are known").format(more), self.list)
            rest.setFlags(Qt.ItemFlag.NoItemFlags)
        self.list.setVisible(bool(missing))
        self._head.setText(
            self.tr("What would change an answer")
            if missing
            else self.tr("Nothing missing would change an answer")
        )

    def _why(self, one: Missing) -> str:
        words = self.tr("decides") if one.decides else self.tr("narrows the score")
        if one.waiting:
            return self.tr("{} for {}").format(words, counted(one.waiting, "candidate"))
        return words

    def _choose(self, item: QListWidgetItem) -> None:
        self.chosen.emit(item.data(Qt.ItemDataRole.UserRole))
