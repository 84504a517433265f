"""Open questions by what their answers are worth."""

from typing import Any, NamedTuple

from PySide6.QtCore import Qt

from matcher.judging.asking import Question
from matcher.money.questions import Worth
from ui.answers import Answers
from ui.called import name_of
from ui.models.row_table import Index, RowTable

WORTH, WHOM, QUESTION = range(3)


class Asked(NamedTuple):
    """One row: the candidate, one question about it, and what the answer is worth."""

    listing_id: str
    question: Question
    worth: float | None


class Questions(RowTable):
    """One row a question; without a fallback nothing has a worth and the order is the engine's."""

    NUMBERS = (WORTH,)

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[Asked] = []
        self._names: dict[str, str] = {}

    def show_answers(self, answers: Answers) -> None:
        """Take over the questions of every candidate that may still fit."""
        self.beginResetModel()
        self._names = {one.id: name_of(one) for one in answers.job.listings}
        self.rows = _by_worth(answers.worths) if answers.worths else _unweighed(answers)
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


def is_home(question: Question) -> bool:
    """Tell whether a question is about the old motor or its place, which no seller can answer."""
    return question.whom == "home"


def _each_once(rows: list[Asked]) -> list[Asked]:
    """Leave out what is to be looked at home for a second candidate: one look answers for all."""
    seen: set[str] = set()
    kept = []
    for row in rows:
        field = row.question.field
        if is_home(row.question) and field in seen:
            continue
        seen.add(field)
        kept.append(row)
    return kept


def _by_worth(worths: tuple[Worth, ...]) -> list[Asked]:
    return _each_once([Asked(one.id, question, one.worth) for one in worths for question in one.questions])


def _unweighed(answers: Answers) -> list[Asked]:
    open_ones = [one for one in answers.best_first if one.fit_chance > 0]
    return _each_once(
        [Asked(one.id, question, None) for one in open_ones for question in one.judgement.questions]
    )
