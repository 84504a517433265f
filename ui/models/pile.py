"""The pile of listings of a job, each with its verdict, its price and what is unsettled."""

from typing import Any

from PySide6.QtCore import QAbstractListModel, QCoreApplication, QModelIndex, QPersistentModelIndex, Qt

from matcher.job import Job, Listing
from ui.answers import Answers
from ui.called import name_of
from ui.money_words import money
from ui.words import counted, verdict_word

VERDICT = Qt.ItemDataRole.UserRole + 1
STATE = Qt.ItemDataRole.UserRole + 2
PRICE = Qt.ItemDataRole.UserRole + 3
Index = QModelIndex | QPersistentModelIndex


class Pile(QAbstractListModel):
    """Rows are the listings in the order they came."""

    def __init__(self) -> None:
        super().__init__()
        self.listings: tuple[Listing, ...] = ()
        self._answers: Answers | None = None

    def show_job(self, job: Job) -> None:
        """Take over the job's listings."""
        if [one.id for one in job.listings] == [one.id for one in self.listings]:
            self.listings = job.listings
            self._all_changed()
            return
        self.beginResetModel()
        self.listings = job.listings
        self.endResetModel()

    def show_answers(self, answers: Answers) -> None:
        """Take over the verdicts."""
        self._answers = answers
        self._all_changed()

    def _all_changed(self) -> None:
        if self.listings:
            self.dataChanged.emit(self.index(0), self.index(len(self.listings) - 1))

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of listings."""
        return 0 if parent.isValid() else len(self.listings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a listing's name, verdict or state."""
        if not index.isValid():
            return None
        listing = self.listings[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return name_of(listing)
        if role == VERDICT:
            return self._verdict(listing)
        if role == STATE:
            return self._state(listing)
        if role == PRICE:
            return self._price(listing)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return ", ".join(filter(None, (name_of(listing), self._state(listing), self._price(listing))))
        return None

    def _verdict(self, listing: Listing) -> str | None:
        weighed = self._answers.weighed.get(listing.id) if self._answers else None
        return weighed.judgement.verdict if weighed else "waiting"

    def _state(self, listing: Listing) -> str:
        weighed = self._answers.weighed.get(listing.id) if self._answers else None
        decision = self._answers.decided.get(listing.id, "") if self._answers and weighed else ""
        words = [verdict_word(self._verdict(listing), weighed.judgement.minds if weighed else 0, decision)]
        record = self._answers.records.get(listing.id) if self._answers else None
        if record is None:
            return words[0]
        if record.conflicts:
            words.append(counted(len(record.conflicts), "conflict"))
        return " · ".join(words)

    def _price(self, listing: Listing) -> str:
        record = self._answers.records.get(listing.id) if self._answers else None
        return money(record.facts.price, record.facts.currency) if record else ""


def pile_state(job: Job, answers: Answers | None) -> str:
    """Return a job's listings in a few words, for the rail: how many, and what is unsettled in them."""
    count = len(job.listings)
    if not count:
        return _tr("paste or drop some")
    if answers is None or len(answers.records) != count:
        return _tr("{}, being read").format(counted(count, "listing"))
    clashes = sum(len(record.conflicts) for record in answers.records.values())
    return ", ".join([counted(count, "listing"), *([counted(clashes, "conflict")] if clashes else [])])


def _tr(text: str) -> str:
    return QCoreApplication.translate("Pile", text)
