"""One labelled value: what stands in a column, or behind a label, made into claims.

The value is said to the reader in the words that it surely understands (`Shaft diameter 12.7 mm`),
and only the facts that the label allows are taken: the rules of reading stay in one place, and a
clear label decides. Cells repeat down a column, so each is read once and remembered.
"""

import re
from collections.abc import Sequence
from functools import lru_cache

from matcher.reading.amounts import is_free, money, number, with_points
from matcher.reading.cell_special import BARE, COUNT, SPECIAL, SUBJECT, Value, diameter, values_of
from matcher.reading.cell_words import is_word, shown
from matcher.reading.claim import Claim
from matcher.reading.designation import designation, is_number
from matcher.reading.listing import GIVEN, read_listing
from matcher.reading.table_headers import SAID, Header, folded

_SUBJECTS = {"control": "ECM motor", "module": "ECM motor", "module_number": "ECM motor"}
"""Labels that only an electronic motor has: its phrases are read under that title."""
LONGEST = 300
"""Characters of a labelled value; longer ones are prose."""

_NUMBER = re.compile(
    r"(\d{1,6}(?:[.,]\d{1,4})?)\s?(?:%|pct|percent|per cent)?(?:\s?positive)?(?:\s?\([\d,. ]{1,12}\))?",
    re.IGNORECASE,
)
_UNSEEN = dict.fromkeys(
    [0xAD, 0xFEFF, *range(0x200B, 0x2010), *range(0x202A, 0x202F), *range(0x2060, 0x206A)]
)
"""Marks of direction and of joining, which nobody sees."""
_PARTED_THOUSANDS = re.compile(r"(?<=\b\d)[ \u00a0\u202f](?=\d{3}\b)")
_NO_VALUE = re.compile(
    r"IP[ -]?\d\d[A-Z]?|[-−]\s?[\d.,]+(?:\s?[A-Z%]+)?|[-\d.,]+E[+-]?\d+(?:\s.*)?", re.IGNORECASE
)
"""An ingress rating, which under `Protection` isn't the winding's; figures that nobody prints on a motor."""
_LEADS = re.compile(r"\d|lead|wire|cable|loose|flying|litze|fil|hilo|kabel", re.IGNORECASE)
_LISTED = re.compile(r"\s*[,;\n|]\s*|\s+/\s+")
_OWN_VIEW = frozenset({"le", "se", "end", "shaft", "lead", "cwle", "ccwle", "cwse", "ccwse"})
_VIEW_SAID = {"lead_end": "lead end", "shaft_end": "shaft end"}
_TYPED_VALUES: dict[str, object] = {"true": True, "false": False}


@lru_cache(maxsize=4_096)
def read_value(header: Header, cell: str, *, comma: bool = False, more: bool = False) -> tuple[Value, ...]:
    """Return the facts that a labelled value gives, none if it isn't understood.

    `comma` says that the comma is the decimal sign; with `more`, facts beyond the label's own count too
    (the value of a page's table is often half a sentence).
    """
    cell = shown(cell.translate(_UNSEEN).strip())
    if is_word("nothing", cell) or cell.endswith("?") or len(cell) > LONGEST or cell.startswith("#"):
        return ()
    if _NO_VALUE.fullmatch(cell):
        return ()
    column = header.column
    if column.yes or column.no:
        plain = _yes_no(header, cell)
        if plain or column.how == "yes_no":
            return plain
    return _HOW[column.how](header, cell, comma) if column.how != "read" else _read(header, cell, comma, more)


def claims_of(values: Sequence[Value], span: tuple[int, int], source: str = "text") -> list[Claim]:
    """Return values as claims by the words at `span`."""
    return [Claim(field, value, source, span, GIVEN) for field, value in values]


def _yes_no(header: Header, cell: str) -> tuple[Value, ...]:
    meant = header.column.yes if is_word("yes", cell) else header.column.no if is_word("none", cell) else ""
    field, _, value = meant.partition("=")
    if not field:
        return ()
    if field == "turn":
        return (("turn", (value, None)),)
    return ((field, _TYPED_VALUES.get(value, int(value) if value.isdigit() else value)),)


def _nothing(_header: Header, _cell: str, _comma: bool) -> tuple[Value, ...]:
    return ()


def _text(header: Header, cell: str, _comma: bool) -> tuple[Value, ...]:
    """Names and numbers stay as written; a brand is words, a number has a figure in it."""
    field = header.column.fields[0]
    if field == "brand":
        is_name = any(sign.isalpha() for sign in cell) and len(cell) <= 60 and len(cell.split()) <= 6
        return (("brand", cell),) if is_name and not is_word("none", cell) else ()
    numbers = [part for part in _LISTED.split(cell) if is_number(part)]
    if not numbers:
        return ()
    if field == "other_numbers":
        return (("other_numbers", tuple(dict.fromkeys(numbers))),)
    rest = tuple(dict.fromkeys(part for part in numbers[1:] if part != numbers[0]))
    more: tuple[Value, ...] = (("other_numbers", rest),) if rest and field == "part_number" else ()
    return ((field, numbers[0]), *more)


def _loose(_header: Header, cell: str, _comma: bool) -> tuple[Value, ...]:
    """`No.` is a maker's number where it has letters or a hyphen; figures alone count the rows."""
    number = designation(cell) if any(sign.isalpha() or sign == "-" for sign in cell) else ""
    return (("part_number", number),) if number else ()


def _count(header: Header, cell: str, _comma: bool) -> tuple[Value, ...]:
    found = COUNT.fullmatch(cell)
    if found is None:
        return ()
    field, value = header.column.fields[0], int(found.group(1))
    limits = {
        "shaft_flats": (0, 2),
        "shaft_ends": (1, 2),
        "speeds": (1, 12),
        "capacitor_vac": (100, 700),
        "quantity": (0, 10**6),
    }
    low, high = limits.get(field, (1, 10**6))
    return ((field, value),) if low <= value <= high else ()


def _plain_number(header: Header, cell: str, comma: bool) -> tuple[Value, ...]:
    field = header.column.fields[0]
    if field == "restocking_pct" and is_word("none", cell):
        return ((field, 0.0),)
    found = _NUMBER.fullmatch(cell)
    value = number(found.group(1), comma=comma) if found else None
    if value is None or "$" in cell:
        return ()
    if field == "service_factor":
        return ((field, value),) if 0.8 <= value <= 2 else ()
    if field == "seller_rating_pct" and (value <= 5 or value > 100):
        return ()  # stars, or a count of ratings
    return ((field, value),) if 0 <= value <= 100 else ()


def _money(header: Header, cell: str, comma: bool) -> tuple[Value, ...]:
    """A price brings its currency with it; a price of nothing is a place-holder, free shipping isn't."""
    field = header.column.fields[0]
    if field == "shipping" and is_free(cell):
        return (("shipping", 0.0),)
    found = money(cell, comma=comma)
    if found is None:
        return _read(header, cell, comma, more=False) if any(sign.isdigit() for sign in cell) else ()
    value, currency = found
    if field == "shipping":
        return (("shipping", value),)
    currency = currency or header.currency
    if not value:
        return ()
    return (("price", value), ("currency", currency)) if currency else (("price", value),)


def _read(header: Header, cell: str, comma: bool, more: bool) -> tuple[Value, ...]:
    column = header.column
    if "_" in cell and cell.islower():
        cell = cell.replace("_", " ")  # `open_box`
    special = SPECIAL.get(column.name)
    direct = special(cell) if special else ()
    if direct or not column.says:
        return direct
    if column.name == "diameter":
        bare = BARE.fullmatch(cell) is not None
        return diameter(
            f"{with_points(cell) if comma else cell} {SAID.get(header.unit, 'in')}" if bare else cell
        )
    if column.unit == "RPM":
        cell = _PARTED_THOUSANDS.sub("", cell)
    if _is_vetoed(column.name, cell):
        return ()
    phrase = _phrase(header, with_points(cell) if comma else cell)
    if not phrase:
        return ()
    values = values_of(read_listing(phrase, _SUBJECTS.get(column.name, SUBJECT)))
    if more and len(cell.split()) > 1 and column.name not in _SUBJECTS:
        return tuple(values)
    return tuple(value for value in values if value[0] in column.fields)


def _is_vetoed(column: str, cell: str) -> bool:
    """Say whether a cell says nothing by itself, so that its label alone would be read (`Leads: plug`)."""
    return column in {"leads", "lead_length"} and _LEADS.search(cell) is None


def _phrase(header: Header, cell: str) -> str:
    """Say a value in words that the reader knows: label, value, and the unit where none is written."""
    column = header.column
    cell = " ".join(cell.split())
    if header.view and _OWN_VIEW.isdisjoint(folded(cell).split()):
        return f"{column.says} {cell} {_VIEW_SAID[header.view]}"
    if BARE.fullmatch(cell):
        unit = SAID.get(header.unit, column.unit)
        if not unit and column.units:
            return ""  # a bare number of nobody knows what
        return f"{column.says} {cell} {unit}".strip()
    return f"{column.says} {cell}"


_HOW = {
    "nothing": _nothing,
    "free": _nothing,
    "text": _text,
    "loose": _loose,
    "count": _count,
    "number": _plain_number,
    "money": _money,
}
