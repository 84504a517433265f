"""Text and values in the plainest form that can be kept: no half characters, only what JSON holds.

What comes from outside is hostile. Nothing is interpreted here; what can't be stored at all (half a
character, not-a-number, endless nesting) is mended or refused with a line.
"""

import math
import re

from pydantic import JsonValue

DEEPEST = 24
"""Levels of nesting that a value may have; a section of a job has no more."""

_LONE_SURROGATE = re.compile("[\ud800-\udfff]")


def without_halves(text: str) -> str:
    """Replace half characters (lone surrogates) by U+FFFD, one for one, so that spans still hold.

    Everything else stays as it is: a right-to-left mark or a NUL is stored, never obeyed.
    """
    return text if text.isascii() else _LONE_SURROGATE.sub("\ufffd", text)


def plain_text(value: object) -> object:
    """Return text without half characters, any other value as it is."""
    return without_halves(value) if isinstance(value, str) else value


def plain_json(value: object, depth: int = DEEPEST) -> JsonValue:
    """Return a value as JSON holds it: tuples become lists, text plain.

    Raises `ValueError` for what JSON can't hold (NaN, infinity, other types) and for deeper nesting
    than `DEEPEST`.
    """
    if depth < 0:
        raise ValueError(f"nested deeper than {DEEPEST} levels")
    if isinstance(value, dict):
        return {without_halves(str(key)): plain_json(item, depth - 1) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain_json(item, depth - 1) for item in value]
    return _plain_leaf(value)


def _plain_leaf(value: object) -> JsonValue:
    if value is None or isinstance(value, (bool, int)):
        return value
    if isinstance(value, float):
        if not math.isfinite(value):
            raise ValueError("not a finite number")
        return value
    if isinstance(value, str):
        return without_halves(value)
    raise ValueError(f"a {type(value).__name__} can't be kept in a job")


def as_tuples(value: object) -> object:
    """Return a value of JSON with a tuple in the place of every list, as the models hold it."""
    return tuple(as_tuples(item) for item in value) if isinstance(value, (list, tuple)) else value
