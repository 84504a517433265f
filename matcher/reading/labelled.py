"""One labelled value: what stands in a column, or behind a label, made into claims.

The value is said to the reader in the words that it surely understands (`Shaft diameter 12.7 mm`),
and only the facts that the label allows are taken: the rules of reading stay in one place, and a
clear label decides. Cells repeat down a column, so each is read once and remembered.
"""

import re
from collections.abc import Callable, Sequence
from functools import lru_cache

from matcher.reading.amounts import is_free, money, number, with_points
from matcher.reading.cell_words import Kind, is_word, meanings
from matcher.reading.designation import designation, is_number
from matcher.reading.items import Claim
from matcher.reading.listing import GIVEN, read_listing
from matcher.reading.table_headers import SAID, Header, folded
from matcher.record import Record

Value = tuple[str, object]
"""A field and its value; a turn comes with its view, as the reader claims it."""

_SUBJECT = "motor"
"""The title under which a phrase is read: `Module FD-1` alone would be a module for sale."""
_SUBJECTS = {"control": "ECM motor", "module": "ECM motor", "module_number": "ECM motor"}
"""Labels that only an electronic motor has: its phrases are read under that title."""
LONGEST = 300
"""Characters of a labelled value; longer ones are prose."""

_BARE = re.compile(r"[\d\s./,x×+½¼¾⅛⅜⅝⅞⅓⅔⅕⅙–-]+")
_COUNT = re.compile(
    r"(\d{1,6})(?:[.,]0+)?(?:\s?(?:pcs?|pieces?|ea|units?|motors?|available|avail|in stock|left|on hand|stk"
    r"|stück|st|pièces?|uds?|speeds?|spd|flats?|ends?|vac|v|rpm|pins?|shafts?)\.?)?",
    re.IGNORECASE,
)
_NUMBER = re.compile(
    r"(\d{1,6}(?:[.,]\d{1,4})?)\s?(?:%|pct|percent|per cent)?(?:\s?positive)?(?:\s?\([\d,. ]{1,12}\))?",
    re.IGNORECASE,
)
_UNSEEN = dict.fromkeys(
    [0xAD, 0xFEFF, *range(0x200B, 0x2010), *range(0x202A, 0x202F), *range(0x2060, 0x206A)]
)
"""Marks of direction and of joining, which nobody sees."""
_PARTED_THOUSANDS = re.compile(r"(?<=\b\d)[ \u00a0\u202f](?=\d{3}\b)")
_SUPPLY = re.compile(
    r"(?P<volts>[\d./-]{2,20}?)\s?v?(?:ac)?\s?[-/,;x ]\s?"
    r"(?:(?P<phase>[13])\s?(?:ph|phase|ø|~)?\.?\s?[-/,;x ]\s?)?"
    r"(?P<hertz>50/60|50|60)\s?(?:hz)?(?:\s?[-/,;x ]\s?(?P<phase_last>[13])\s?(?:ph|phase|ø|~)?\.?)?",
    re.IGNORECASE,
)
_PINS = re.compile(r"\d{1,2}(?:[\s,;/&+-]{1,3}(?:pins?|and|plugs?|und|et|y|\d{1,2})){0,8}", re.IGNORECASE)
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
    cell = cell.translate(_UNSEEN).strip()
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


def _count(header: Header, cell: str, _comma: bool) -> tuple[Value, ...]:
    found = _COUNT.fullmatch(cell)
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
    special = _SPECIAL.get(column.name)
    direct = special(cell) if special else ()
    if direct or not column.says:
        return direct
    if column.name == "diameter":
        bare = _BARE.fullmatch(cell) is not None
        return _diameter(
            f"{with_points(cell) if comma else cell} {SAID.get(header.unit, 'in')}" if bare else cell
        )
    if column.unit == "RPM":
        cell = _PARTED_THOUSANDS.sub("", cell)
    if _is_vetoed(column.name, cell):
        return ()
    phrase = _phrase(header, with_points(cell) if comma else cell)
    if not phrase:
        return ()
    values = values_of(read_listing(phrase, _SUBJECTS.get(column.name, _SUBJECT)))
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
    if _BARE.fullmatch(cell):
        unit = SAID.get(header.unit, column.unit)
        if not unit and column.units:
            return ""  # a bare number of nobody knows what
        return f"{column.says} {cell} {unit}".strip()
    return f"{column.says} {cell}"


def values_of(record: Record) -> list[Value]:
    """Return what a record says as values; a turn with its view, both sides of a conflict."""
    facts = {field: getattr(record.facts, field) for field in record.where}
    values: list[Value] = []
    for field, value in facts.items():
        if field == "turn":
            values.append(("turn", (value, facts.get("seen_from"))))
        elif field != "seen_from":
            values.append((field, value))
    return values


def _by_word(kind: Kind, field: str) -> Callable[[str], tuple[Value, ...]]:
    """Return a reader of cells that are one word of a kind."""

    def read(cell: str) -> tuple[Value, ...]:
        meant = meanings(kind).get(cell.casefold().strip(". "), "")
        return ((field, meant),) if meant else ()

    return read


def _kind(cell: str) -> tuple[Value, ...]:
    """A type may be a number of the maker, but not where its words say anything else (`3-phase`)."""
    told = values_of(read_listing(cell, _SUBJECT))
    number = "" if any(field != "part_number" for field, _ in told) else designation(cell)
    return (("part_number", number),) if number else tuple(told)


def _returns(cell: str) -> tuple[Value, ...]:
    word = cell.strip(". ")
    return (("return_days", 0),) if is_word("none", word) or is_word("final", word) else ()


def _phase(cell: str) -> tuple[Value, ...]:
    return (("phase", int(cell)),) if cell in {"1", "3"} else ()


def _volts(figures: str) -> tuple[Value, ...]:
    read = values_of(read_listing(f"Volts {figures} V", _SUBJECT))
    return tuple(value for value in read if value[0] == "volts")


def _supply(cell: str) -> tuple[Value, ...]:
    """Read `208-230/1/60`, `115-1-60`, `230V/60Hz/1Ph`: volts, phase and hertz in one cell."""
    found = _SUPPLY.fullmatch(cell)
    if found is None:
        return _volts(cell) if _BARE.fullmatch(cell) else ()
    values = list(_volts(found["volts"]))
    phase = found["phase"] or found["phase_last"]
    if phase:
        values.append(("phase", int(phase)))
    return (*values, ("hertz", found["hertz"])) if found["hertz"] else tuple(values)


def _diameter(cell: str) -> tuple[Value, ...]:
    """A bare diameter is the shaft's up to 1.5 in and the body's from 3 in; between them it is nobody's."""
    inches = dict(values_of(read_listing(f"Shaft diameter {cell}", _SUBJECT))).get("shaft_diameter_in")
    if inches is None:
        inches = dict(values_of(read_listing(f"Body diameter {cell}", _SUBJECT))).get("body_diameter_in")
    if not isinstance(inches, float):
        return ()
    if inches <= 1.5:
        return (("shaft_diameter_in", inches),)
    return (("body_diameter_in", inches),) if inches >= 3 else ()


def _plug(cell: str) -> tuple[Value, ...]:
    if not _PINS.fullmatch(cell):
        return ()
    pins = sorted({int(figures) for figures in re.findall(r"\d+", cell)})
    return (("plug_pins", tuple(pins)),) if all(2 <= pin <= 40 for pin in pins) else ()


def _flats(cell: str) -> tuple[Value, ...]:
    found = _COUNT.fullmatch(cell)
    return (("shaft_flats", int(found[1])),) if found and int(found[1]) <= 2 else ()


def _keyed(cell: str) -> tuple[Value, ...]:
    """A size of the key says that there is one."""
    return (("shaft_keyed", True),) if re.search(r"[1-9]/\d|\d ?mm", cell) else ()


def _explosion_proof(cell: str) -> tuple[Value, ...]:
    return (
        (("explosion_proof", True),) if re.match(r"(?:class|cl\.?|div\.?) ?[I1]", cell, re.IGNORECASE) else ()
    )


def _category(cell: str) -> tuple[Value, ...]:
    """A shelf of parts holds parts; a shelf of motors says nothing that isn't presumed."""
    if any(word in meanings("motor_word") for word in folded(cell).split()):
        return ()
    item = read_listing("", cell).facts.item
    return (("item", item),) if item else ()


_SPECIAL = {
    "kind": _kind,
    "bearing": _by_word("bearing", "bearing"),
    "currency": _by_word("currency", "currency"),
    "condition": _by_word("condition", "condition"),
    "returns": _returns,
    "return_shipping": _by_word("payer", "return_shipping"),
    "phase": _phase,
    "supply": _supply,
    "plug": _plug,
    "flats": _flats,
    "keyed": _keyed,
    "explosion_proof": _explosion_proof,
    "category": _category,
}
_HOW = {
    "nothing": _nothing,
    "free": _nothing,
    "text": _text,
    "count": _count,
    "number": _plain_number,
    "money": _money,
}
