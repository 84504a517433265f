"""Cells of special columns that are understood without a sentence: supplies, plugs, phases, codes."""

import re
from collections.abc import Callable

from matcher.reading.cell_words import Kind, is_word, meanings
from matcher.reading.designation import designation
from matcher.reading.listing import read_listing
from matcher.reading.table_headers import folded
from matcher.record import Record

Value = tuple[str, object]
"""A field and its value; a turn comes with its view, as the reader claims it."""

SUBJECT = "motor"
"""The title under which a phrase is read: `Module FD-1` alone would be a module for sale."""
BARE = re.compile(r"[\d\s./,x×+½¼¾⅛⅜⅝⅞⅓⅔⅕⅙–-]+")
COUNT = re.compile(
    r"(\d{1,6})(?:[.,]0+)?(?:\s?(?:pcs?|pieces?|ea|units?|motors?|available|avail|in stock|left|on hand|stk"
    r"|stück|st|pièces?|uds?|speeds?|spd|flats?|ends?|vac|v|rpm|pins?|shafts?)\.?)?",
    re.IGNORECASE,
)
_SUPPLY = re.compile(
    r"(?P<volts>[\d./-]{2,20}?)\s?v?(?:ac)?\s?[-/,;x ]\s?"
    r"(?:(?P<phase>[13])\s?(?:ph|phase|ø|~)?\.?\s?[-/,;x ]\s?)?"
    r"(?P<hertz>50/60|50|60)\s?(?:hz)?(?:\s?[-/,;x ]\s?(?P<phase_last>[13])\s?(?:ph|phase|ø|~)?\.?)?",
    re.IGNORECASE,
)
_PINS = re.compile(r"\d{1,2}(?:[\s,;/&+-]{1,3}(?:pins?|and|plugs?|und|et|y|\d{1,2})){0,8}", re.IGNORECASE)


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
    read = values_of(read_listing(cell, SUBJECT))
    told = tuple(value for value in read if value[0] not in {"brand", "part_number", "other_numbers"})
    number = "" if told else designation(cell)
    return (("part_number", number),) if number else told


def _returns(cell: str) -> tuple[Value, ...]:
    word = cell.strip(". ")
    return (("return_days", 0),) if is_word("none", word) or is_word("final", word) else ()


def _phase(cell: str) -> tuple[Value, ...]:
    return (("phase", int(cell)),) if cell in {"1", "3"} else ()


def _volts(figures: str) -> tuple[Value, ...]:
    read = values_of(read_listing(f"Volts {figures} V", SUBJECT))
    return tuple(value for value in read if value[0] == "volts")


def _supply(cell: str) -> tuple[Value, ...]:
    """Read `208-230/1/60`, `115-1-60`, `230V/60Hz/1Ph`: volts, phase and hertz in one cell."""
    found = _SUPPLY.fullmatch(cell)
    if found is None:
        return _volts(cell) if BARE.fullmatch(cell) else ()
    values = list(_volts(found["volts"]))
    phase = found["phase"] or found["phase_last"]
    if phase:
        values.append(("phase", int(phase)))
    return (*values, ("hertz", found["hertz"])) if found["hertz"] else tuple(values)


def diameter(cell: str) -> tuple[Value, ...]:
    """A bare diameter is the shaft's up to 1.5 in and the body's from 3 in; between them it is nobody's."""
    inches = dict(values_of(read_listing(f"Shaft diameter {cell}", SUBJECT))).get("shaft_diameter_in")
    if inches is None:
        inches = dict(values_of(read_listing(f"Body diameter {cell}", SUBJECT))).get("body_diameter_in")
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
    found = COUNT.fullmatch(cell)
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


SPECIAL = {
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
"""What reads the cells of each special column; an empty answer leaves them to the reader."""
