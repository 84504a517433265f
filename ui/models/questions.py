"""Open questions by what their answers are worth."""

from typing import Any, NamedTuple

from PySide6.QtCore import Qt

from matcher.judging.asking import Question
from matcher.money.questions import Worth, to_ask
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
        still, first = _split(_each_once(_by_worth(answers.worths) + _unweighed(answers)), answers)
        self.rows = still if self.shows_all else first
        self.left_out = len(still) - len(first)
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
    """Leave out what stands there already, and what is to be looked at home for a second candidate."""
    kept: dict[tuple[str, str], Asked] = {}
    for row in rows:  # one look at home answers for all candidates
        whose = "" if is_home(row.question) else row.listing_id
        kept.setdefault((whose, row.question.field), row)
    return list(kept.values())


def _split(rows: list[Asked], answers: Answers) -> tuple[list[Asked], list[Asked]]:
    """Return the rows that can still be asked, in the words for that seller, and the first ones of them."""
    plans = {
        (listing.id, whom): to_ask(one, answers.worths, listing.told_unknown(), whom=whom)
        for listing in answers.job.listings
        for whom in ("seller", "home")
        if (one := answers.weighed.get(listing.id)) is not None
    }
    still: list[Asked] = []
    first: list[Asked] = []
    for row in rows:
        plan = plans[row.listing_id, row.question.whom]
        asked = {one.field: one for one in (*plan.first, *plan.more)}.get(row.question.field)
        if asked is not None:
            still.append(row._replace(question=asked))
            if asked in plan.first:
                first.append(still[-1])
    return still, first


def _by_worth(worths: tuple[Worth, ...]) -> list[Asked]:
    return [Asked(one.id, question, one.worth) for one in worths for question in one.questions]


def _unweighed(answers: Answers) -> list[Asked]:
    open_ones = [one for one in answers.best_first if one.fit_chance > 0]
    return [Asked(one.id, question, None) for one in open_ones for question in one.judgement.questions]
