"""What an offer is called in a list; nothing here knows Qt."""

from ui.spans import shown

LONGEST = 120


def called(brand: str | None, number: str | None, words: str) -> str:
    """Return maker and number, else the first line of the title or text, plain and on one line."""
    if brand and number:
        return shown(f"{brand} {number}")[:LONGEST]
    lines = shown(words.strip()[: 2 * LONGEST]).splitlines()
    return lines[0].strip()[:LONGEST] if lines else shown(number or brand or "")
