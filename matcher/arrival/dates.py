"""Days as people type them: with a year or without, `today`, and with slashes where these are clear."""

from datetime import date, datetime, timedelta

from matcher.errors import BadValue

DATE_FORMS = ("%Y-%m-%d", "%d %b %Y", "%d %B %Y", "%b %d %Y", "%B %d %Y", "%d.%m.%Y")
NEAR = {"today": 0, "yesterday": -1}
"""Words for a day, with its distance from today in days."""
MONTHS = 12


def date_in(what: str, text: str, today: date | None = None) -> date | None:
    """Return a typed date, `None` for nothing.

    Where `today` is given, `yesterday` counts, and a day without a year is the one nearest to it.
    Raises BadValue for what is no date of these decades, and for slashes that can be read in two ways:
    3/4 is March here and April there.
    """
    words = " ".join(text.replace(",", " ").split())
    if not words:
        return None
    found = _dated(_unslashed(what, words))
    if found is None and today is not None:
        found = _near(_unslashed(what, words), today)
    if found is not None and 2000 <= found.year <= 2199:
        return found
    raise BadValue(f"{what}: {text!r:.40} is no date; write it as 2030-04-08 or 8 Apr 2030")


def lasting(text: str, today: date) -> str:
    """Return a typed day so that it still means the same next year; what isn't one stays as it is."""
    try:
        if date_in("", text) is None:
            return text
    except BadValue:
        pass
    else:
        return text
    try:
        day = date_in("", text, today)
    except BadValue:
        return text
    return f"{day.day} {day:%b %Y}" if day else text


def _dated(words: str) -> date | None:
    for form in DATE_FORMS:
        try:
            return datetime.strptime(words, form).date()
        except ValueError:
            continue
    return None


def _near(words: str, today: date) -> date | None:
    """Return the day that words without a year mean, the nearest to today."""
    if words.casefold() in NEAR:
        return today + timedelta(days=NEAR[words.casefold()])
    joint = "." if words.count(".") else " "
    years = (today.year - 1, today.year, today.year + 1)
    days = [day for year in years if (day := _dated(f"{words.removesuffix('.')}{joint}{year}"))]
    return min(days, key=lambda day: abs(day - today), default=None)


def _unslashed(what: str, words: str) -> str:
    """Return `11/20` and `20/11/2030` with dots, day first: one of the two must be too large for a month."""
    parts = [part.strip() for part in words.split("/")]
    if not 2 <= len(parts) <= 3 or not all(part.isdecimal() and len(part) <= 4 for part in parts):
        return words
    first, second = int(parts[0]), int(parts[1])
    if first != second and max(first, second) <= MONTHS:
        raise BadValue(f"{what}: {words!r:.40} can be read in two ways; write it as 2030-04-08 or 8 Apr 2030")
    day, month = (first, second) if first > MONTHS else (second, first)
    year = f"20{parts[2]}" if parts[2:] and len(parts[2]) == 2 else "".join(parts[2:])
    return f"{day}.{month}.{year}"
