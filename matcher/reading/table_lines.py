"""Which rows of a table are listings, and which are sections, repeated headers, totals or footers."""

import re
from collections.abc import Sequence

from matcher.reading.cell_words import is_word
from matcher.reading.table_layout import Layout, header_score

_COUNTED = re.compile(
    r"\d{1,6} (\S{2,20})(?: (?:in all|total|listed|in stock|on the shelf|gesamt))?", re.IGNORECASE
)
_FIGURES = re.compile(r"[$€£]?\s?-?[\d.,\s]{1,20}(?:[$€£%]|[A-Z]{3})?")


def filled_cells(cells: Sequence[str]) -> list[str]:
    """Return the cells of a row that hold anything, with single blanks; all questions below are of these."""
    return [words for cell in cells if cell and (words := " ".join(cell.split()))]


def is_header_again(filled: Sequence[str], layout: Layout) -> bool:
    """Say whether a row repeats the header, some of its cells perhaps left out."""
    same = sum([cell.casefold() in layout.names for cell in filled])
    return same >= max(1, 0.8 * len(filled)) and (len(filled) > 1 or layout.width == 1)


def is_new_header(filled: Sequence[str], layout: Layout) -> bool:
    """Say whether a row is the header of another table below the first."""
    return len(filled) >= 3 and layout.width >= 2 and header_score(filled) >= max(3, 0.7 * len(filled))


def is_total(filled: Sequence[str]) -> bool:
    """Say whether a row adds up others: a word of adding up, and figures alone beside it."""
    words = ""
    for cell in filled:
        if not _FIGURES.fullmatch(cell):
            if words:
                return False  # the second text, which nearly every row has
            words = cell
    return words != "" and _adds_up(words.rstrip(":. "))


def _adds_up(words: str) -> bool:
    if is_word("total", words) or is_word("total", words.partition(":")[0]):
        return True
    counted = _COUNTED.fullmatch(words)
    return counted is not None and is_word("total_of", counted.group(1))


def is_section(filled: Sequence[str], layout: Layout) -> bool:
    """Say whether a row only parts the table: one cell of words, rulers, or one text in all merged cells."""
    if not filled:
        return True
    if all(not any(sign.isalnum() for sign in cell) for cell in filled):
        return True
    return layout.width > 1 and len(set(filled)) == 1
