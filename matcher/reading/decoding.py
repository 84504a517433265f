"""Bytes of unknown encoding into text: byte-order marks, UTF-8, UTF-16 without a mark, Windows-1252.

Nothing here raises: what no encoding explains becomes the replacement character.
"""

import codecs
import io
import re
from collections.abc import Iterator
from contextlib import suppress
from typing import BinaryIO

LINE_LIMIT = 1_000_000
"""Characters of one line that are kept; no listing, row or record is longer."""

_MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),  # before UTF-16, whose mark it begins with
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
_DECLARED = re.compile(
    rb"<meta[^<>]{0,200}?charset\s{0,9}=\s{0,9}[\"']?([a-zA-Z0-9_.:-]{2,40})", re.IGNORECASE
)
_DECLARED_XML = re.compile(
    rb"^\s{0,99}<\?xml[^<>]{0,200}?encoding\s{0,9}=\s{0,9}[\"']([a-zA-Z0-9_.:-]{2,40})"
)


def marked(head: bytes) -> tuple[int, str]:
    """Return the length of the byte-order mark and the encoding it names; `(0, "")` without one.

    UTF-16 without a mark is told by its zero bytes, which fall on one side of each pair.
    """
    for mark, name in _MARKS:
        if head.startswith(mark):
            return len(mark), name
    sample = head[:4000]
    half = len(sample) // 2
    if half >= 4:
        even, odd = sample[0::2].count(0), sample[1::2].count(0)
        if odd > 0.6 * half and even < 0.1 * half:
            return 0, "utf-16-le"
        if even > 0.6 * half and odd < 0.1 * half:
            return 0, "utf-16-be"
    return 0, ""


def decoded(data: bytes) -> str:
    """Return a whole page or text; a mark counts first, then valid UTF-8, then what the page declares."""
    skip, name = marked(data)
    if name:
        return data[skip:].decode(name, "replace")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return _by_declaration(data)


def _by_declaration(data: bytes) -> str:
    found = _DECLARED.search(data[:4096]) or _DECLARED_XML.search(data[:1024])
    name = found.group(1).decode("ascii") if found else ""
    # The HTML standard reads "iso-8859-1" and "ascii" as Windows-1252.
    if name.lower() in {"", "iso-8859-1", "latin1", "latin-1", "ascii", "us-ascii", "windows-1252", "utf-8"}:
        return western(data)
    try:
        return data.decode(name, "replace")
    except (LookupError, UnicodeError, ValueError):
        return western(data)


def western(data: bytes) -> str:
    """Return text of a Western single-byte file; the five bytes that Windows-1252 lacks stay as they are."""
    try:
        return data.decode("cp1252")
    except UnicodeDecodeError:
        return data.decode("latin-1")


def _line(data: bytes) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return western(data)


def text_lines(stream: BinaryIO) -> Iterator[str]:
    """Yield the lines of a file without their ends (LF, CRLF or CR), one at a time.

    Each line is UTF-8 if it can be, else Windows-1252, so that one odd line never spoils the file.
    A longer line than `LINE_LIMIT` is cut to one character more than the limit.
    """
    head = stream.read(4000)
    skip, name = marked(head)
    stream.seek(skip)
    # Latin-1 maps bytes to characters one for one, so lines can be found before they are decoded.
    wrapper = io.TextIOWrapper(stream, encoding=name or "latin-1", errors="replace", newline=None)
    try:
        for line in _bounded(wrapper):
            yield line if name else _line(line.encode("latin-1"))
    finally:
        with suppress(ValueError):  # stopped in the middle, the stream is closed already
            wrapper.detach()


def _bounded(wrapper: io.TextIOWrapper) -> Iterator[str]:
    while line := wrapper.readline(LINE_LIMIT + 1):
        rest = line
        while rest and not rest.endswith("\n"):
            rest = wrapper.readline(LINE_LIMIT)
        yield line.removesuffix("\n")
