"""What a file is, told by its first bytes and then by its name: page, table, JSON lines or text."""

import re
from typing import Literal

from matcher.reading.decoding import decoded, marked
from matcher.reading.table_layout import SAMPLE, Layout, sniff

Kind = Literal["page", "table", "json lines", "text"]

HEAD = 65_536
"""Bytes that are looked at."""

_FOREIGN: tuple[tuple[bytes, str], ...] = (
    (b"PK\x03\x04", "a zip archive or spreadsheet; save it as CSV"),
    (b"PK\x05\x06", "an empty zip archive"),
    (b"%PDF", "a PDF; copy its text into a text file"),
    (b"\x89PNG", "a picture; type what stands on it"),
    (b"\xff\xd8\xff", "a picture; type what stands on it"),
    (b"GIF8", "a picture; type what stands on it"),
    (b"\x1f\x8b", "a compressed file; unpack it first"),
    (b"BZh", "a compressed file; unpack it first"),
    (b"\xfd7zXZ", "a compressed file; unpack it first"),
    (b"7z\xbc\xaf", "a compressed file; unpack it first"),
    (b"\xd0\xcf\x11\xe0", "an old office document; save it as CSV or text"),
    (b"SQLite format 3", "a database; export the table as CSV"),
    (b"\x7fELF", "a program"),
    (b"MZ\x90", "a program"),
    (b"{\\rtf", "a rich-text document; save it as plain text"),
)
_CONTROL = bytes(set(range(32)) - {9, 10, 12, 13, 27})
_MARKUP = re.compile(
    r"<(?:!doctype html|html|head|body|div|table|article|main|section|script|meta|p|ul|h1)\b", re.IGNORECASE
)
_ENDINGS: dict[str, Kind] = {
    ".html": "page", ".htm": "page", ".xhtml": "page", ".csv": "table", ".tsv": "table", ".tab": "table",
    ".jsonl": "json lines", ".ndjson": "json lines", ".json": "json lines",
}  # fmt: skip


def foreign(head: bytes) -> str:
    """Return what a file that isn't text is, and what to do; empty for text."""
    for magic, what in _FOREIGN:
        if head.startswith(magic):
            return f"it is {what}"
    if marked(head)[1]:
        return ""
    odd = len(head) - len(head.translate(None, _CONTROL))
    if odd > 0.05 * len(head) and odd > 3:
        return "it is no text but binary data; save what it shows as text, HTML or CSV"
    text = decoded(head[:2000])
    if "MIME-Version:" in text and "multipart/related" in text:
        return 'it is a web archive; save the page as "Web page, HTML only"'
    return ""


def kind_of(head: bytes, ending: str) -> Kind:
    """Return what a file holds; its ending decides only where the first bytes leave it open."""
    text = decoded(head).lstrip("\ufeff \t\r\n")
    named = _ENDINGS.get(ending.lower())
    if text.startswith("{") or (text.startswith("[") and named == "json lines"):
        return "json lines"
    if named in {"page", "json lines"}:
        return named
    if text.startswith("<") and _MARKUP.search(text[:4000]):
        return "page"
    if named == "table":
        return named
    return "table" if _is_table(text) else "text"


def _is_table(text: str) -> bool:
    """Say whether a text file is a table: a header of known columns, and rows as wide below it."""
    lines = text.splitlines()[:SAMPLE]
    layout = sniff(lines)
    if layout is None or layout.known < 2:
        return False
    least = 1 if layout.known == layout.width else 2
    rows = [line for line in lines[layout.line :] if line.count(layout.delimiter) >= least]
    return bool(rows) and (layout.known >= 3 or _sells_by(layout))


def _sells_by(layout: Layout) -> bool:
    """Say whether two columns alone make a table: a price and what it is the price of."""
    names = {heading.header.column.name for heading in layout.headings if heading.header}
    return layout.known == layout.width and bool(names & {"price", "asking"})
