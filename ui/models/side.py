"""Side by side: checks and money as rows, the old motor and the candidates as columns."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from matcher.finding import Finding, Outcome
from matcher.judging import saying
from matcher.money.weigh import Weighed
from ui.answers import Answers
from ui.called import name_of
from ui.money_words import money, per_cent, presumed_money
from ui.range_bar import range_words
from ui.spans import shown
from ui.words import choice_word, outcome_word, verdict_word

Index = QModelIndex | QPersistentModelIndex
OUTCOME = Qt.ItemDataRole.UserRole + 1
IS_HEAD = Qt.ItemDataRole.UserRole + 2
OLD = 0
"""The column of the old motor."""
HARMLESS = frozenset({Outcome.SAME, Outcome.OK})


@dataclass(frozen=True)
class Row:
    """One row: the head of a group, a check, or a line of money."""

    kind: str
    key: str
    label: str


MoneyLine = Callable[[Weighed], str]


class Side(QAbstractTableModel):
    """The whole comparison; `candidates` are in the order of the columns after the old motor."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[Row] = []
        self.candidates: list[Weighed] = []
        self.names: dict[str, str] = {}
        self.old_name = ""
        self._decided: Mapping[str, str] = {}
        self._findings: list[dict[str, Finding]] = []
        self.only_differences = False

    def show_answers(self, answers: Answers, candidates: Sequence[Weighed]) -> None:
        """Show candidates of a job, in the order given."""
        self.beginResetModel()
        self.candidates = list(candidates)
        self.names = {listing.id: name_of(listing) for listing in answers.job.listings}
        self._decided = answers.decided
        old = answers.wanted.motor
        self.old_name = " ".join(filter(None, (old.brand, old.part_number)))
        self._findings = [{f.check: f for f in one.judgement.findings} for one in self.candidates]
        self.rows = self._rows()
        self.endResetModel()

    def _rows(self) -> list[Row]:
        hard = self._checks(hard=True)
        soft = self._checks(hard=False)
        rows = [Row("head", "", self.tr("Must match")), *hard] if hard else []
        rows += [Row("head", "", self.tr("Costs points")), *soft] if soft else []
        if self.candidates:
            rows += [Row("head", "", self.tr("Money"))]
            rows += [Row("money", key, words) for key, (words, _) in self._money().items()]
        return rows

    def _checks(self, *, hard: bool) -> list[Row]:
        names = dict.fromkeys(f.check for found in self._findings for f in found.values() if f.hard is hard)
        shown = [name for name in names if not self.only_differences or self._differs(name)]
        return [Row("check", name, check_word(name)) for name in shown]

    def _differs(self, check: str) -> bool:
        return any(check in found and found[check].outcome not in HARMLESS for found in self._findings)

    def _money(self) -> dict[str, tuple[str, MoneyLine]]:
        return {
            "price": (self.tr("Price"), lambda one: money(one.offer.price, one.offer.currency)),
            "shipping": (self.tr("Shipping"), self._shipping),
            "landed": (self.tr("Landed cost"), lambda one: _with_shipping(one, one.landed_cost)),
            "lost": (
                self.tr("Lost if it fails"),
                lambda one: _with_shipping(one, one.cost.lost if one.cost else None),
            ),
            "chance": (
                self.tr("Chance it works"),
                lambda one: f"{per_cent(one.fit_chance)} {one.proviso}".rstrip(),
            ),
            "condition": (
                self.tr("Condition"),
                lambda one: choice_word("condition", one.offer.condition) if one.offer.condition else "",
            ),
            "returns": (
                self.tr("Days to return"),
                lambda one: "" if one.offer.return_days is None else str(one.offer.return_days),
            ),
        }

    def _shipping(self, one: Weighed) -> str:
        if one.cost is None:
            return ""
        words = money(one.cost.shipping, one.offer.currency)
        return self.tr("{} presumed").format(words) if one.cost.shipping_presumed else words

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return one column for the old motor and one for each candidate."""
        return 0 if parent.isValid() else 1 + len(self.candidates)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a check's name, or a candidate's; its deciding sentence on demand."""
        if role == Qt.ItemDataRole.ToolTipRole and orientation == Qt.Orientation.Horizontal:
            known = OLD < section <= len(self.candidates)
            return shown(self.candidates[section - 1].judgement.reason) if known else None
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if orientation == Qt.Orientation.Vertical:
            return self.rows[section].label if section < len(self.rows) else None
        if section == OLD:
            return self.tr("Old motor")
        # A header still asks for a section that a reset has just taken away.
        gone = section > len(self.candidates)
        return None if gone else self.names.get(self.candidates[section - 1].id, "")

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Cells can be chosen, heads of groups can't."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        if self.rows[index.row()].kind == "head":
            return Qt.ItemFlag.ItemIsEnabled
        return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == IS_HEAD:
            return row.kind == "head"
        if role == Qt.ItemDataRole.DisplayRole:
            return self._words(row, index.column())
        found = self.finding(index)
        if found is None or index.column() == OLD:
            return None
        if role == OUTCOME:
            return found.outcome.value
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{outcome_word(found)}: {self._said(found)}"
        return None

    def _words(self, row: Row, column: int) -> str:
        if row.kind == "money":
            return "" if column == OLD else self._money()[row.key][1](self.candidates[column - 1])
        if row.kind == "head":
            return row.label if column == OLD else ""
        if column == OLD:
            return next((found[row.key].old for found in self._findings if row.key in found), "")
        found = self._findings[column - 1].get(row.key)
        return self._said(found) if found else ""

    def _said(self, found: Finding) -> str:
        """Return a candidate's value; where it says none, whether that is open or was presumed."""
        if found.new:
            return found.new
        if found.outcome is Outcome.UNKNOWN:
            return self.tr("not known")
        return self.tr("not said, presumed") if found.presumed else self.tr("not said")

    def row_words(self, row: int) -> list[str]:
        """Return what a row's cells say."""
        return [self._words(self.rows[row], column) for column in range(self.columnCount())]

    def finding(self, index: Index) -> Finding | None:
        """Return the finding behind a cell."""
        if not index.isValid() or index.column() == OLD:
            return None
        return self._findings[index.column() - 1].get(self.rows[index.row()].key)

    def plain(self, columns: Sequence[int] | None = None) -> list[list[str]]:
        """Return the table as lines of words, heads and signs included: for export and the clipboard."""
        chosen = list(range(self.columnCount())) if columns is None else list(columns)
        across = Qt.Orientation.Horizontal
        lines = [["", *(str(self.headerData(column, across)) for column in chosen)]]
        for label, words in self._heads():
            lines.append([label, *("" if column == OLD else words[column - 1] for column in chosen)])
        for place, row in enumerate(self.rows):
            cells = [self._marked(place, column) for column in chosen]
            lines.append([row.label, *("" if row.kind == "head" else cell for cell in cells)])
        return lines

    def _heads(self) -> Iterator[tuple[str, list[str]]]:
        """Yield what stands over the columns on the screen: no paper may leave out the verdict."""
        judged = [one.judgement for one in self.candidates]
        yield self.tr("Verdict"), [self.verdict_of(one) for one in self.candidates]
        yield self.tr("Score"), [range_words(one.score_low, one.score, one.score_high) for one in judged]
        yield self.tr("Why"), [one.reason for one in judged]

    def verdict_of(self, one: Weighed) -> str:
        """Return the word of a candidate's verdict as listed, and what was decided once it was bought."""
        return verdict_word(one.judgement.verdict, one.judgement.minds, self._decided.get(one.id, ""))

    def _marked(self, row: int, column: int) -> str:
        index = self.index(row, column)
        words, found = str(index.data() or ""), self.finding(index)
        said = outcome_word(found) if found else ""
        return f"{words} ({said})" if said and said != words else words


def check_word(check: str) -> str:
    """Return a check's name as a row's label."""
    return saying.check(check)


def _with_shipping(one: Weighed, cost: float | None) -> str:
    """Say a sum that counts shipping; `~` marks a presumed one, as the row above it says in words."""
    presumed = one.cost is not None and one.cost.shipping_presumed
    return presumed_money(cost, one.offer.currency, presumed=presumed)
