"""Open questions by what their answers are worth."""

from typing import Any

from PySide6.QtCore import Qt

from ui.answers import Answers
from ui.asked import Asked, is_home
from ui.called import name_of
from ui.models.row_table import Index, RowTable

WORTH, WHOM, QUESTION = range(3)


class Questions(RowTable):
    """One row a question, what has a worth first; without a fallback nothing has one."""

    NUMBERS = (WORTH,)

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[Asked] = []
        self._names: dict[str, str] = {}
        self.shows_all = False
        """Whether the questions that matter less stand there as well."""
        self.left_out = 0
        """How many matter less."""

    def show_answers(self, answers: Answers) -> None:
        """Take over the questions of every candidate that may still fit."""
        self.beginResetModel()
        self._names = {one.id: name_of(one) for one in answers.job.listings}
        asking = answers.asking
        self.rows = list(asking.still if self.shows_all else asking.first)
        self.left_out = len(asking.still) - len(asking.first)
        self.endResetModel()

    def headings(self) -> tuple[str, ...]:
        """Return the columns' names."""
        return (self.tr("Worth"), self.tr("About"), self.tr("Question"))

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            worth = "" if row.worth is None else f"{row.worth:,.0f}"
            return (worth, self._whom(row), row.question.text)[index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() == WORTH:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None

    def _whom(self, row: Asked) -> str:
        if is_home(row.question):
            return self.tr("look at home")
        return self._names.get(row.listing_id, "")
