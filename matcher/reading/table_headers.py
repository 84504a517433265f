"""Words over a column, or before a value, and what they mean: `Motor HP`, `Shaft Ø (mm)`, `Ask EUR`.

Nobody agreed on headers, so units, currencies, the view of a rotation and filler words are told apart
first; what is left is looked up in `data/reading/headers.tsv`, a misspelling forgiven.
"""

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from rapidfuzz import fuzz, process

from matcher import tables
from matcher.reading.cell_words import meanings

FORGIVEN = 88
"""How alike (0..100, `rapidfuzz.fuzz.ratio`) a misspelled header must be to a known one."""
LONGEST = 60
"""Characters of a label; longer text is prose."""

SAID: Mapping[str, str] = {
    "hp": "HP", "kw": "kW", "w": "W", "ps": "PS", "v": "V", "a": "A", "hz": "Hz", "rpm": "RPM", "ph": "phase",
    "mm": "mm", "cm": "cm", "in": "in", "ft": "ft", "f": "F", "c": "C", "uf": "MFD", "pct": "%",
    "d": "days", "mo": "months", "yr": "years", "pin": "pin",
}  # fmt: skip
"""How each unit is said to the reader."""
_SIGNS = str.maketrans(
    {
        **dict.fromkeys("Øø⌀", " dia "),
        **dict.fromkeys("#№", " no "),
        **dict.fromkeys("°’'", " "),
        **dict.fromkeys('"″', " in "),
        **dict.fromkeys("µμ", "u"),
        "º": "o",
        "%": " pct ",
        "&": " & ",
    }
)
_PER_MINUTE = re.compile(
    r"\b(?:u|t|tr|tours|r|rev|umdr|vueltas|rotations|1)\.?\s?(?:/|par|per|por)\s?min(?:ute|uto)?\b"
    r"|\bmin\s?[-⁻^]{1,2}\s?[1¹]"
)
_HUMPS = re.compile(r"(?<=[a-z])(?=[A-Z][a-z])|(?<=[a-z])(?=[A-Z]{2,})")
_APART = re.compile(r"[^\w&$€£]+|_+")
_IN_BRACKETS = re.compile(r"[(\[{]([^()\[\]{}]{1,40})[)\]}]")


# Compared by identity: each kind of column and each header is made once, and looked up very often.
@dataclass(frozen=True, slots=True, eq=False)
class Column:
    """A kind of value: how its cell is taken, which facts it may give (see `data/reading/columns.tsv`)."""

    name: str
    how: str
    fields: tuple[str, ...]
    says: str
    unit: str
    units: tuple[str, ...]
    yes: str
    no: str


@dataclass(frozen=True, slots=True, eq=False)
class Header:
    """What a header means: its column, and the unit, currency or view that holds for all its cells."""

    column: Column
    unit: str = ""
    currency: str = ""
    view: str = ""


def _units() -> Mapping[str, str]:
    return meanings("unit")


def folded(words: str) -> str:
    """Return a header in the form that the table is looked up by.

    >>> folded("Shaft_Ø [mm]")
    'shaft dia mm'
    >>> folded("Qté")
    'qte'
    """
    words = _HUMPS.sub(" ", words.translate(_SIGNS))
    plain = unicodedata.normalize("NFKD", _PER_MINUTE.sub(" rpm ", words.casefold()))
    plain = "".join(sign for sign in plain if not unicodedata.combining(sign))
    return " ".join(_APART.sub(" ", plain).split())


@cache
def columns() -> Mapping[str, Column]:
    """Return every kind of column by its name."""
    return {
        row["column"]: Column(
            row["column"],
            row["how"],
            tuple(row["fields"].split()),
            row["says"],
            row["unit"],
            tuple(row["units"].split()),
            row["yes"],
            row["no"],
        )
        for row in tables.rows("reading/columns")
    }


@cache
def known_words() -> Mapping[str, str]:
    """Return every known header, folded, with the name of its column."""
    found: dict[str, str] = {}
    for row in tables.rows("reading/headers"):
        for words in row["words"].split("|"):
            found.setdefault(folded(words), row["column"])
    return found


@lru_cache(maxsize=4_096)
def header(words: str) -> Header | None:
    """Return what a header or label means, `None` for one that nobody here knows."""
    if len(words) > LONGEST or not words.strip():
        return None
    whole = folded(words)
    name = known_words().get(whole)
    if name is not None:
        return _with_unit(columns()[name], whole.split())
    return _bracketed(words) or _stripped(whole, [])


def _with_unit(column: Column, tokens: list[str]) -> Header:
    """Take the unit and currency out of a header that is known as a whole (`kW`, `EUR`, `Amb F`)."""
    unit = next((_units()[token] for token in tokens if _units().get(token) in column.units), "")
    return Header(column, unit, _currency(tokens) if "money" in column.how else "")


def _currency(tokens: list[str]) -> str:
    known = meanings("currency")
    return next((known[token] for token in reversed(tokens) if token in known), "")


def _bracketed(words: str) -> Header | None:
    """Look up `Rotation (LE)`, `Price [EUR]`: what stands in brackets qualifies what stands before them."""
    found = _IN_BRACKETS.search(words)
    if found is None:
        return None
    outside = folded(words[: found.start()] + " " + words[found.end() :])
    inside = folded(found.group(1))
    name = known_words().get(outside)
    column = columns()[name] if name else None
    if column is not None and inside in meanings("view") and "turn" in column.fields:
        return Header(column, view=meanings("view")[inside])
    return _stripped(outside, inside.split())


def _stripped(whole: str, inside: list[str]) -> Header | None:
    """Look up what is left of a header without its units, currency, view and fillers."""
    tokens = whole.split()
    viewed = _viewed(tokens)
    if viewed is not None:
        return viewed
    rest = [token for token in tokens if token not in _units() and token not in meanings("currency")]
    units = [token for token in [*inside, *tokens] if token in _units()]
    money = _currency([*tokens, *inside])
    if money and not rest:
        return _fitting(columns()["price"], units, money)
    forms = ([*tokens, *inside], tokens, _without_fillers(tokens), rest, _without_fillers(rest))
    words = [" ".join(form) for form in forms]
    name = next((known_words()[form] for form in words if form in known_words()), "")
    name = name or next(filter(None, map(_misspelled, words)), "")
    return _fitting(columns()[name], units, money) if name else None


def _without_fillers(tokens: list[str]) -> list[str]:
    return [token for token in tokens if token not in meanings("filler")]


def _viewed(tokens: list[str]) -> Header | None:
    """Look up `Rot LE`, `Rotation facing shaft`: a known rotation header and the end it is seen from."""
    for cut in range(1, min(len(tokens), 4)):
        view = meanings("view").get(" ".join(tokens[cut:]))
        name = known_words().get(" ".join(tokens[:cut]))
        if view and name and "turn" in columns()[name].fields:
            return Header(columns()[name], view=view)
    return None


def _misspelled(words: str) -> str:
    """Return the column of the known header that is nearly this one, empty if none is."""
    # Digits are never a misspelling (`price 2`), nor is another first letter (`hp rating`, `ip rating`).
    if len(words) < 6 or any(sign.isdigit() for sign in words):
        return ""
    best = process.extractOne(words, known_words().keys(), scorer=fuzz.ratio, score_cutoff=FORGIVEN)
    return known_words()[best[0]] if best is not None and best[0][0] == words[0] else ""


def _fitting(column: Column, units: list[str], money: str) -> Header | None:
    """Return the header if its unit is one that its column can have."""
    if column.how in {"free", "nothing"}:
        return Header(column)
    fitting = [_units()[unit] for unit in units if _units()[unit] in column.units]
    # `Price in USD`: there the word is no inch.
    if units and not fitting and not (column.how == "money" and units == ["in"]):
        return None
    if money and column.how != "money":
        return None
    return Header(column, fitting[0] if fitting else "", money)
