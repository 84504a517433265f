"""Why a value was refused, in the program's own words: pydantic's are for programmers."""

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

_WHY: Mapping[str, str] = {
    "float_parsing": "it is no number",
    "float_type": "it is no number",
    "finite_number": "it is no number",
    "int_parsing": "it is no whole number",
    "int_parsing_size": "it is too large",
    "int_type": "it is no whole number",
    "int_from_float": "it is no whole number",
    "bool_parsing": "write yes or no",
    "bool_type": "write yes or no",
    "string_type": "it is no text",
    "string_too_short": "it is empty",
    "string_too_long": "it is longer than {max_length} signs",
    "string_pattern_mismatch": "it isn't written as it must be",
    "literal_error": "choose {expected}",
    "enum": "choose {expected}",
    "greater_than": "it must be more than {gt}",
    "greater_than_equal": "it must be at least {ge}",
    "less_than": "it must be less than {lt}",
    "less_than_equal": "it must be at most {le}",
    "missing": "it is missing",
    "extra_forbidden": "there is no such entry",
    "too_short": "it needs more entries",
    "too_long": "it has too many entries",
    "list_type": "it is no list",
    "tuple_type": "it is no list",
    "dict_type": "it is no group of entries",
    "mapping_type": "it is no group of entries",
    "model_type": "it is no group of entries",
    "model_attributes_type": "it is no group of entries",
}
"""By pydantic's type of error; `{...}` is filled from its context."""
_ELSE = "it can't be taken"


def first_fault(fault: ValidationError) -> str:
    """Return the first thing wrong as one line: where it stands, and why."""
    error: Mapping[str, Any] = fault.errors(include_url=False, include_input=False)[0]
    where, reason = ".".join(str(part) for part in error["loc"]), _reason(error)
    return f"{where}: {reason}" if where else reason


def _reason(error: Mapping[str, Any]) -> str:
    if error["type"] == "value_error":
        return str(error["msg"]).removeprefix("Value error, ")
    context = {name: _plain(value) for name, value in error.get("ctx", {}).items()}
    return _WHY.get(error["type"], _ELSE).format_map(context)


def _plain(value: object) -> object:
    return f"{value:,.10g}" if isinstance(value, float | int) else value


def told(fault: ValueError) -> str:
    """Return any refusal as one line."""
    line = first_fault(fault) if isinstance(fault, ValidationError) else str(fault)
    return line.splitlines()[0] if line else type(fault).__name__
