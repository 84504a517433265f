"""What a job lets in from outside: plain text, plain file names, plain JSON values.

Listings, pages and other people's job files are hostile. Nothing is interpreted here; what can't
be stored at all (half a character, not-a-number, endless nesting) is mended or refused with a line.
"""

import math
import re
import unicodedata
from datetime import UTC, datetime
from typing import Annotated

from pydantic import BeforeValidator, Field, JsonValue

LONGEST_TEXT = 5_000_000
"""Characters of one listing or note; a longer one is no listing."""
DEEPEST = 24
"""Levels of nesting that a section of a job may have."""

STAMP_FORM = "%Y-%m-%dT%H:%M:%SZ"
"""How a moment in UTC is written; texts of this form sort by time."""

_LONE_SURROGATE = re.compile("[\ud800-\udfff]")
_FORBIDDEN_IN_NAMES = re.compile(r'[\x00-\x1f\x7f<>:"|?*]')
_DEVICE = re.compile(r"(?i)(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)\s*(?:\..*)?")
_LONGEST_NAME = 120


def without_halves(text: str) -> str:
    """Replace half characters (lone surrogates) by U+FFFD, one for one, so that spans still hold.

    Everything else stays as it is: a right-to-left mark or a NUL is stored, never obeyed.
    """
    return text if text.isascii() else _LONE_SURROGATE.sub("\ufffd", text)


def plain_text(value: object) -> object:
    """Return text without half characters, any other value as it is."""
    return without_halves(value) if isinstance(value, str) else value


def safe_name(name: str) -> str:
    """Return a file name that stays inside whatever folder it is put in, on any system.

    Only the last part of a path is kept; control characters, direction marks and the characters that
    some system forbids become `_`; device names (`con`, `nul.txt`, ...) get a `_` in front.
    """
    last = re.split(r"[/\\]", without_halves(name))[-1]
    shown = "".join("_" if unicodedata.category(sign) in ("Cf", "Cc") else sign for sign in last)
    clean = _FORBIDDEN_IN_NAMES.sub("_", shown)[-_LONGEST_NAME:].strip(" .")
    if not clean:
        return "_"
    return f"_{clean}"[:_LONGEST_NAME] if _DEVICE.fullmatch(clean) else clean


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


def now() -> str:
    """Return the time as a job writes it: UTC, ISO 8601, to the second."""
    return datetime.now(UTC).strftime(STAMP_FORM)


def _section(value: object) -> dict[str, JsonValue]:
    plain = plain_json(value)
    if not isinstance(plain, dict):
        raise ValueError("a section of a job is a set of named values")
    return plain


PlainText = Annotated[str, BeforeValidator(plain_text), Field(max_length=LONGEST_TEXT)]
Line = Annotated[str, BeforeValidator(plain_text), Field(max_length=2000)]
"""A name, place or note that stands in one line."""
FileName = Annotated[str, BeforeValidator(lambda name: safe_name(name) if isinstance(name, str) else name)]
Id = Annotated[str, Field(pattern=r"^[0-9a-f]{32}$")]
"""A random id, 32 hexadecimal digits; never a name somebody else chose."""
Digest = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]
"""The SHA-256 of a file's bytes, 64 hexadecimal digits."""
Stamp = Annotated[str, Field(pattern=r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$")]
"""A moment in UTC, `2030-01-31T23:59:59Z`."""
Section = Annotated[dict[str, JsonValue], BeforeValidator(_section)]
"""Named JSON values, as one later stage of a job keeps them."""


def as_tuples(value: object) -> object:
    """Return a value of JSON with a tuple in the place of every list, as the models hold it."""
    return tuple(as_tuples(item) for item in value) if isinstance(value, (list, tuple)) else value
