"""Values as people type them into a form and as a form says them back.

`said` and `entered` are each other's inverse: what a form shows can be typed again and means the
same. Lengths stand in inches as fractions where they are one (`5 5/8`), or in millimetres.
"""

import re
from fractions import Fraction
from functools import cache
from typing import Literal, get_args, get_origin

from matcher.errors import BadValue, UnknownField
from matcher.judging.saying import choice, mixed
from matcher.motor import Motor, Offer, Site
from matcher.units import MM_PER_INCH
from matcher.values import value_for

FINEST = 64
"""Denominator of the finest fraction of an inch that is said as one."""
_ROUNDING_IN = 0.0006
_POWER_PARTS = frozenset({3, 5, 6, 10, 12, 15, 20})
"""Denominators of usual ratings, 1/3 hp among them; a rule for lengths has none of them."""
_NUMBER = re.compile(r"(\d+)\s*[- ]\s*(\d+)/(\d+)|(\d+)/(\d+)|(-?\d*[.,]?\d+)")
_MONEY = re.compile(
    r"(?:[A-Z]{3}|[$€£])?\s*([1-9]\d{0,2}(?:[., ']\d{3})+|\d+)(?:[.,](\d{1,2}))?\s*(?:[A-Z]{3}|[$€£])?",
    re.IGNORECASE,
)
MONEY = frozenset({"price", "shipping"})
"""Fields that hold a sum of money: there a group of three figures is thousands, never a fraction."""
_EITHER = re.compile(r"-?[1-9]\d{0,2},\d{3}")
"""`1,150`: thousands here, a fraction there."""
_LONGEST = 60
"""Characters; a longer one is no figure that anybody means, and may be too large to reckon with."""
_TAIL = re.compile(
    r"\s*(mm|cm|in\.?|inch(?:es)?|\"|″|hp|v|a|hz|rpm|uf|µf|mfd|vac|ft|d|%|°?c)?\s*", re.IGNORECASE
)

Kind = Literal["choice", "choices", "yes_no", "text", "texts", "number", "numbers", "range"]


def model_of(field: str) -> type[Motor] | type[Site]:
    """Return the model that holds a field: an offer's (a motor's among them) or a site's."""
    if field in Offer.model_fields:
        return Offer
    if field in Site.model_fields:
        return Site
    raise UnknownField(f"{field!r:.60} is no fact of a motor, an offer or a site")


@cache
def choices(field: str) -> tuple[object, ...]:
    """Return the values that a field may have, empty if any number or text will do."""
    return tuple(_literals(model_of(field).model_fields[field].annotation))


def _literals(annotation: object) -> list[object]:
    if get_origin(annotation) is Literal:
        return list(get_args(annotation))
    return [value for inner in get_args(annotation) for value in _literals(inner)]


@cache
def kind(field: str) -> Kind:
    """Return how a field is filled in."""
    named = str(model_of(field).model_fields[field].annotation)
    several = "tuple[" in named
    if choices(field):
        return "choices" if several else "choice"
    if "bool" in named:
        return "yes_no"
    if field == "rpm_range":
        return "range"
    if "str" in named:
        return "texts" if several else "text"
    return "numbers" if several else "number"


def is_length(field: str) -> bool:
    """Tell whether a field is kept in inches."""
    return field.endswith("_in")


def unit(field: str, *, metric: bool = False) -> str:
    """Return the unit that a length is said in: `in` or `mm`; empty for anything else."""
    return ("mm" if metric else "in") if is_length(field) else ""


def said(field: str, value: object, *, metric: bool = False) -> str:
    """Return a value as a form says it, without its unit; empty for `None`."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, (list, tuple)):
        return _joint(field).join(said(field, item, metric=metric) for item in value)
    if isinstance(value, (int, float)):
        return _number_said(field, float(value), metric=metric)
    return str(value)


def _joint(field: str) -> str:
    return {"texts": ", ", "choices": ", ", "range": "-"}.get(kind(field), "/")


def _number_said(field: str, value: float, *, metric: bool) -> str:
    if is_length(field) and metric:
        return f"{value * MM_PER_INCH:.1f}".removesuffix(".0")
    if is_length(field) or field == "power_hp":
        return _fraction_said(value, others=frozenset() if is_length(field) else _POWER_PARTS)
    return f"{value:.10g}"


def _fraction_said(value: float, others: frozenset[int]) -> str:
    near = Fraction(value).limit_denominator(FINEST)
    usual = near.denominator & (near.denominator - 1) == 0 or near.denominator in others
    if abs(float(near) - value) > _ROUNDING_IN or not usual:
        return f"{value:.4g}"
    return mixed(near)


def spoken(field: str, value: object) -> str:
    """Return a value as a page or a note says it, in the trade's words and with no unit.

    >>> spoken("motor_type", "psc"), spoken("mounting", ("band", "studs")), spoken("price", 55.0)
    ('PSC', 'belly band, through studs', '55.00')
    """
    if field in MONEY and isinstance(value, (int, float)):
        return f"{value:,.2f}"
    if kind(field) in {"choice", "choices", "yes_no"} and value is not None:
        values = value if isinstance(value, (list, tuple)) else (value,)
        return ", ".join(choice(field, item) for item in values)
    return said(field, value)


def entered(field: str, text: str, *, metric: bool = False) -> object:
    """Return what was typed into a field as its value in JSON; `None` for nothing.

    Raises `BadValue`: one line that says what the field can't hold.
    """
    text = text.strip()[:2000]
    if not text:
        return None
    model = model_of(field)
    return value_for(model, field, _parsed(field, text, metric=metric))


def _parsed(field: str, text: str, *, metric: bool) -> object:
    how = kind(field)
    if how == "yes_no":
        return _yes_no(text)
    if how == "choice":
        return next((value for value in choices(field) if str(value) == text), text)
    if how in {"texts", "choices"}:
        return [part.strip() for part in text.split(",") if part.strip()]
    if how == "text":
        return re.sub(r"(?<=\d)\s*[vV]$|\s*[hH][zZ]$", "", text) if field in {"volts", "hertz"} else text
    if how == "range":
        return [number(part) for part in re.split(r"-|/|to", text)]
    if how == "numbers":
        return [_whole(number(part)) for part in re.split(r"/|,\s", text)]
    return _whole(_figure(field, text, metric=metric))


def _yes_no(text: str) -> object:
    return {"yes": True, "y": True, "no": False, "n": False}.get(text.lower(), text)


def _whole(value: float) -> float | int:
    return int(value) if value == int(value) else value


def _figure(field: str, text: str, *, metric: bool) -> float:
    """Return a sum of money, a length in inches, or a plain number."""
    if field in MONEY:
        return amount(text)
    if not is_length(field):
        return number(text)
    value = number(text)
    low = text.lower()
    if low.endswith("cm"):
        return value * 10 / MM_PER_INCH
    if low.endswith("mm") or (metric and not low.endswith(('"', "in", "in.", "inch", "inches", "″"))):
        return value / MM_PER_INCH
    return value


def number(text: str) -> float:
    """Return a number as people type it: `5 5/8`, `5-5/8`, `1/2`, `.5`, `0,5`, with a unit or not.

    Raises `BadValue` if it is no number, or may be either of two (`1,150`).
    """
    text = text.strip()
    if len(text) > _LONGEST:
        raise BadValue(f"{text!r:.40} is no number; write it like 5 5/8, 1/2 or 5.625")
    if either := _EITHER.match(text):
        raise BadValue(f"{either.group()!r} may mean two things; write it without the comma, or with a point")
    found = _NUMBER.match(text)
    if found is None or not _TAIL.fullmatch(text, found.end()):
        raise BadValue(f"{text!r:.40} is no number; write it like 5 5/8, 1/2 or 5.625")
    whole, top, bottom, only_top, only_bottom, plain = found.groups()
    if plain:
        return float(plain.replace(",", "."))
    top, bottom = top or only_top, bottom or only_bottom
    if not int(bottom):
        raise BadValue(f"{text!r:.40} divides by nothing; write it like 5 5/8, 1/2 or 5.625")
    return int(whole or 0) + int(top) / int(bottom)


def amount(text: str) -> float:
    """Return a sum of money as people type it: `1150`, `1,150`, `1,150.00`, `1.150,00`, `$65`, `9,90 EUR`.

    Raises `BadValue` if it is no sum of money.
    """
    found = _MONEY.fullmatch(text.strip())
    if found is None:
        raise BadValue(f"{text.strip()!r:.40} is no sum of money; write it like 65, 1150 or 14.50")
    whole, cents = found.groups()
    return float(f"{re.sub(r'[^0-9]', '', whole)}.{cents or 0}")
