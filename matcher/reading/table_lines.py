"""Which rows of a table are listings, and which are sections, repeated headers, totals or footers."""

import re
from collections.abc import Sequence

from matcher.reading.cell_words import is_word
from matcher.reading.table_layout import Layout, header_score

_COUNTED = re.compile(
    r"\d{1,6} (\S{2,20})(?: (?:in all|total|listed|in stock|on the shelf|gesamt))?", re.IGNORECASE
)
_FIGURES = re.compile(r"[$€£]?\s?-?[\d.,\s]{1,20}(?:[$€£%]|[A-Z]{3})?")


def is_header_again(cells: Sequence[str], layout: Layout) -> bool:
    """Say whether a row repeats the header, some of its cells perhaps left out."""
    filled = [" ".join(cell.split()).casefold() for cell in cells if cell and not cell.isspace()]
    same = sum(cell in layout.names for cell in filled)
    return same >= max(1, 0.8 * len(filled)) and (len(filled) > 1 or layout.width == 1)


def is_new_header(cells: Sequence[str], layout: Layout) -> bool:
    """Say whether a row is the header of another table below the first."""
    filled = sum(1 for cell in cells if cell.strip())
    return filled >= 3 and layout.width >= 2 and header_score(cells) >= max(3, 0.7 * filled)


def is_total(cells: Sequence[str]) -> bool:
    """Say whether a row adds up others: a word of adding up, and figures alone beside it."""
    filled = [" ".join(cell.split()) for cell in cells if cell.strip()]
    words = [cell for cell in filled if not _FIGURES.fullmatch(cell)]
    return len(words) == 1 and _adds_up(words[0].rstrip(":. "))


def _adds_up(words: str) -> bool:
    if is_word("total", words) or is_word("total", words.partition(":")[0]):
        return True
    counted = _COUNTED.fullmatch(words)
    return counted is not None and is_word("total_of", counted.group(1))


def is_section(cells: Sequence[str], layout: Layout) -> bool:
    """Say whether a row only parts the table: one cell of words, rulers, or one text in all merged cells."""
    filled = [" ".join(cell.split()) for cell in cells if cell.strip()]
    if not filled:
        return True
    if all(not any(sign.isalnum() for sign in cell) for cell in filled):
        return True
    return layout.width > 1 and len(set(filled)) == 1
