"""The columns of a lot: their heads, what their cells say, and how rows are sorted by them."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QCoreApplication

from ui.lot import LotRow
from ui.money_words import money, per_cent, presumed_money
from ui.range_bar import range_words
from ui.words import VERDICTS, verdict_word

MARK, RANGE, LANDED, CHANCE, NAME, CONDITION, PRICE, QUANTITY, RETURNS, SOURCE, REASON = range(11)
NUMBERS = frozenset({LANDED, CHANCE, PRICE, QUANTITY, RETURNS})
_LAST = float("inf")


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a lot's table."""

    head: str
    says: Callable[[LotRow], str]
    key: Callable[[LotRow], Any]
    """What rows are sorted by, best or smallest first; what isn't known stands last."""
    hint: str = ""
    falls: bool = False
    """Whether the best stands first with the largest figure."""


def _tr(text: str) -> str:
    return QCoreApplication.translate("LotTable", text)


def columns() -> tuple[Column, ...]:
    """Return the columns in their order."""
    return (
        Column(_tr("Verdict"), lambda row: verdict_word(row.verdict, row.minds), _by_rank, _tr("Best first")),
        Column(
            _tr("Score"),
            lambda row: range_words(row.low, row.score, row.high),
            lambda row: -(row.low or 0.0),
            falls=True,
        ),
        Column(
            _tr("Landed"),
            _cost,
            lambda row: _by_money(row, row.price if row.landed is None else row.landed),
            _tr("With shipping and what the swap needs; ~ counts a shipping cost that nobody named"),
        ),
        Column(_tr("Chance"), lambda row: per_cent(row.chance), lambda row: -(row.chance or 0.0), falls=True),
        Column(_tr("Offer"), lambda row: row.name, lambda row: row.name.casefold()),
        Column(_tr("Condition"), lambda row: row.condition, lambda row: (not row.condition, row.condition)),
        Column(
            _tr("Price"), lambda row: money(row.price, row.currency), lambda row: _by_money(row, row.price)
        ),
        Column(
            _tr("Qty"),
            lambda row: _whole(row.quantity),
            lambda row: -(row.quantity or 0),
            _tr("Quantity"),
            falls=True,
        ),
        Column(
            _tr("Returns"),
            lambda row: _whole(row.return_days),
            lambda row: -(row.return_days or 0),
            _tr("Days to return it"),
            falls=True,
        ),
        Column(_tr("From"), _place, lambda row: row.at, _tr("File and row")),
        Column(_tr("Why"), lambda row: row.reason, lambda row: (not row.reason, row.reason)),
    )


def _whole(figure: int | None) -> str:
    return "" if figure is None else f"{figure:,}"


def _place(row: LotRow) -> str:
    """Return row and file, the row first: in a narrow column it is what finds the box again."""
    file, mark, line = row.source.rpartition("#")
    return f"#{line} {file}" if mark else row.source


def _cost(row: LotRow) -> str:
    """Return the landed cost; until that is reckoned the bare price, which says what it is."""
    if row.landed is not None:
        return presumed_money(row.landed, row.currency, presumed=row.is_presumed)
    return "" if row.price is None else f"asks {money(row.price, row.currency)}"


def _by_money(row: LotRow, cost: float | None) -> tuple[bool, str, float]:
    """Sort sums within their currency: without a rate no two currencies can be compared."""
    return cost is None, row.currency, _LAST if cost is None else cost


def _by_rank(row: LotRow) -> tuple[int, float, float]:
    return (
        VERDICTS.index(row.verdict) if row.verdict in VERDICTS else len(VERDICTS),
        -(row.low or 0.0),
        row.landed if row.landed is not None else _LAST,
    )


def sorted_rows(rows: list[LotRow], column: int, first: str = "") -> list[LotRow]:
    """Return rows sorted by a column, best or smallest first; the currency `first` comes first."""
    key = columns()[column].key
    if column in (LANDED, PRICE):
        return sorted(rows, key=lambda row: _own_money_first(key(row), first))
    return sorted(rows, key=key)


def _own_money_first(key: tuple[bool, str, float], first: str) -> tuple[bool, bool, str, float]:
    return key[0], key[1] not in ("", first), key[1], key[2]


def turned_rows(rows: list[LotRow]) -> list[LotRow]:
    """Return rows the other way round."""
    return rows[::-1]
