"""Plain numbers and sums of money as cells hold them, in English and continental writing."""

import re
from functools import cache

from matcher.reading.cell_words import is_word, meanings

_FIGURES = r"\d[\d.,' ]{0,15}\d|\d"
_TAIL = (
    r"(?:\s?(?:ea|each|per (?:piece|unit|motor)|/ ?(?:ea|each|pc|stk|stück|st)|obo|o\.b\.o\.?|firm|vb"
    r"|flat|flat rate|ground|fix|fp|excl\.? (?:vat|tax)|ex vat|plus vat|\+ ?vat|ht|ttc|iva incl\.?)\.?)?"
)
_IN_TEXT = re.compile(
    rf"(?:[$€£]|\b(?:USD|EUR|GBP|CAD|AUD|CHF))\s?(?:{_FIGURES})"
    rf"|(?:{_FIGURES})\s?(?:[€£$]|(?:USD|EUR|GBP|CAD|AUD|CHF)\b)"
)
_FROM_TO = re.compile(
    r"\d\s?(?:[€£$]|[A-Z]{3})?\s?(?:-|–|—|to|bis|à|a)\s?(?:[€£$]|[A-Z]{3})?\s?\d[\d.,]*\s?\S{0,3}$"
)
_CONTINENTAL = re.compile(r"\d{1,3}(?:[. ']\d{3})*,\d{1,4}|\d{1,3}(?:\.\d{3})+")
_IN_CELL = re.compile(r"\d[\d.,]*\d")


@cache
def _money() -> re.Pattern[str]:
    codes = "|".join(re.escape(code) for code in sorted(meanings("currency"), key=len, reverse=True))
    figures = rf"(?P<figures>{_FIGURES}|\.\d\d)(?:[.,]?[-–—]{{1,2}})?"
    return re.compile(rf"(?P<before>{codes})?\s?{figures}\s?(?P<after>{codes})?{_TAIL}", re.IGNORECASE)


def number(figures: str, *, comma: bool = False) -> float | None:
    """Return a number written with any thousands sign, `None` where its sign could mean either.

    `comma` says that the comma is the decimal sign here.

    >>> number("1.234,50"), number("1,234.5"), number("12,5"), number("1,250")
    (1234.5, 1234.5, 12.5, 1250.0)
    >>> number("1.250"), number("1.250", comma=True)
    (1.25, 1250.0)
    """
    plain = figures.strip().replace(" ", "").replace("'", "").replace("\u202f", "")
    point, mark = plain.rfind("."), plain.rfind(",")
    if point >= 0 and mark >= 0:
        thousands = "," if point > mark else "."
        plain = plain.replace(thousands, "").replace(",", ".")
    elif mark >= 0:
        whole = plain.count(",") > 1 or (len(plain) - mark == 4 and not comma)
        plain = plain.replace(",", "" if whole else ".")
    elif plain.count(".") > 1 or (comma and len(plain) - point == 4 and point > 0):
        plain = plain.replace(".", "")
    try:
        return float(plain)
    except ValueError:
        return None


def money(cell: str, *, comma: bool = False) -> tuple[float, str] | None:
    """Return the sum that a cell holds, with its ISO 4217 code or an empty one; `None` if it holds more.

    >>> money("US$ 1,250.00"), money("65,- EUR"), money("12 or offer")
    ((1250.0, 'USD'), (65.0, 'EUR'), None)
    """
    found = _money().fullmatch(cell.strip())
    if found is None:
        return None
    value = number(found["figures"], comma=comma)
    sign = found["before"] or found["after"] or ""
    # Both a sign and a code may stand there (`$65 CAD`); the code is the more exact.
    if found["before"] and found["after"] and found["before"] == "$":
        sign = found["after"]
    return None if value is None else (value, meanings("currency").get(sign.lower(), ""))


def sums(text: str) -> list[float]:
    """Return the sums of money that stand in running text, each with its sign or code.

    >>> sums("US $31.00 (6 bids), 1,250 EUR")
    [31.0, 1250.0]
    """
    found = []
    for match in _IN_TEXT.finditer(text[:20_000]):
        amount = money(match.group().rstrip(" .,'"))
        if amount:
            found.append(amount[0])
    return found


def is_price_range(line: str) -> bool:
    """Say whether a line is a range of prices, of which none is the asked one.

    >>> is_price_range("Price: $55.00 - $75.00"), is_price_range("$55.00 + $9")
    (True, False)
    """
    found = _FROM_TO.search(line[-60:])
    return found is not None and len(sums(line)) == 2


def is_free(cell: str) -> bool:
    """Say whether a cell says that shipping costs nothing."""
    return is_word("free", cell.strip("!. "))


def is_continental(cell: str) -> bool:
    """Say whether a cell shows that the comma is the decimal sign in its table."""
    plain = cell.strip().strip("€").strip()
    return (
        "," in plain
        and _CONTINENTAL.fullmatch(plain) is not None
        and not re.fullmatch(r"\d{1,3}(?:,\d{3})+", plain)
    )


def with_points(cell: str) -> str:
    """Return a cell of a table with decimal commas as it is written with decimal points.

    >>> with_points("3,2/1,85"), with_points("1.400")
    ('3.2/1.85', '1400')
    """

    def point(found: re.Match[str]) -> str:
        value = number(found.group(), comma=True)
        return found.group() if value is None or "," in found.group()[-1:] else f"{value:.10g}"

    return _IN_CELL.sub(point, cell)
