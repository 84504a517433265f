"""Rows of a lot on their way out: to the clipboard and into a CSV file. Nothing here knows Qt."""

from collections.abc import Sequence

from ui.lot import LotRow
from ui.money_words import per_cent
from ui.words import verdict_word

HEAD = (
    *("Verdict", "Score", "Lowest", "Highest", "Landed", "Currency", "Shipping presumed", "Chance", "Offer"),
    *("Number", "Condition", "Price", "Shipping", "Quantity", "Return days", "From", "Why"),
)


def lines(rows: Sequence[LotRow]) -> list[list[str]]:
    """Return a head and a line of plain words for each row; what is not known stays empty."""
    return [list(HEAD), *(_cells(row) for row in rows)]


def _cells(row: LotRow) -> list[str]:
    return [
        verdict_word(row.verdict, row.minds),
        *(_plain(figure, "{:.0f}") for figure in (row.score, row.low, row.high)),
        _plain(row.landed, "{:.2f}"),
        row.currency,
        "yes" if row.is_presumed else "",
        per_cent(row.chance),
        row.name,
        row.number,
        row.condition,
        _plain(row.price, "{:.2f}"),
        _plain(row.shipping, "{:.2f}"),
        _plain(row.quantity, "{}"),
        _plain(row.return_days, "{}"),
        row.source,
        row.reason,
    ]


def _plain(figure: float | None, form: str) -> str:
    return "" if figure is None else form.format(figure)
