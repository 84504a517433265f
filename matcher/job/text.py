"""What a job lets in from outside: plain text, plain file names, sections of plain JSON values.

Listings, pages and other people's job files are hostile. Nothing is interpreted here; what can't be
stored at all is mended or refused with a line (`matcher/plain.py`).
"""

import re
import unicodedata
from datetime import UTC, datetime
from typing import Annotated

from pydantic import BeforeValidator, Field, JsonValue

from matcher.plain import plain_json, plain_text, without_halves

LONGEST_TEXT = 5_000_000
"""Characters of one listing or note; a longer one is no listing."""

STAMP_FORM = "%Y-%m-%dT%H:%M:%SZ"
"""How a moment in UTC is written; texts of this form sort by time."""

_FORBIDDEN_IN_NAMES = re.compile(r'[\x00-\x1f\x7f<>:"|?*]')
_DEVICE = re.compile(r"(?i)(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)\s*(?:\..*)?")
_LONGEST_NAME = 120


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
