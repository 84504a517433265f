"""Rows of a lot on their way out: to the clipboard and into a CSV file. Nothing here knows Qt."""

from collections.abc import Sequence

from ui.lot import LotRow
from ui.money_words import per_cent
from ui.words import verdict_word

HEAD = ("Verdict", "Score", "Lowest", "Highest", "Landed", "Currency", "Chance", "Offer", "Number", "Why")


def lines(rows: Sequence[LotRow]) -> list[list[str]]:
    """Return a head and a line of plain words for each row; what is not known stays empty."""
    return [list(HEAD), *(_cells(row) for row in rows)]


def _cells(row: LotRow) -> list[str]:
    figures = (row.score, row.low, row.high)
    return [
        verdict_word(row.verdict),
        *("" if figure is None else f"{figure:.0f}" for figure in figures),
        "" if row.landed is None else f"{row.landed:.2f}",
        row.currency,
        per_cent(row.chance),
        row.name,
        row.number,
        row.reason,
    ]
