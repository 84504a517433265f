"""Pages that are printed: plain HTML of few words, every text escaped, no script, nothing loaded.

Listings are hostile. What stands in a page went through `words`, which escapes it and takes out the
characters that turn the direction of writing or can't be seen.
"""

import html
import unicodedata
from collections.abc import Iterable, Sequence

STYLE = (
    "body{font-family:sans-serif;font-size:9.5pt;color:#000;background:#fff}"
    "h1{font-size:15pt;margin:0 0 4px 0}h2{font-size:11pt;margin:10px 0 3px 0}"
    "p{margin:2px 0}td,th{padding:2px 5px;vertical-align:top;text-align:left}"
    ".soft{color:#444;font-size:8.5pt}.blank{white-space:nowrap}"
    "@page{margin:14mm}"
)


def words(text: object) -> str:
    """Return a text as a page may hold it: visible characters alone, escaped."""
    seen = "".join(
        sign
        for sign in str(text)
        if sign in "\n\t " or not unicodedata.category(sign).startswith(("C", "Zl", "Zp"))
    )
    return html.escape(seen, quote=True)


def lines(text: object) -> str:
    """Return a text with its line breaks."""
    return words(text).replace("\n", "<br>")


def document(title: str, body: Iterable[str]) -> str:
    """Return a whole page; `body` is markup already."""
    head = f'<meta charset="utf-8"><title>{words(title)}</title><style>{STYLE}</style>'
    inside = "\n".join([f"<h1>{words(title)}</h1>", *body])
    return f"<!doctype html>\n<html><head>{head}</head><body>\n{inside}\n</body></html>\n"


def table(rows: Iterable[Sequence[object]], head: Sequence[object] = (), *, ruled: bool = True) -> str:
    """Return a table of plain texts, empty when there are no rows."""
    body = [f"<tr>{''.join(f'<td>{lines(cell)}</td>' for cell in row)}</tr>" for row in rows]
    if not body:
        return ""
    top = [f"<tr>{''.join(f'<th>{words(cell)}</th>' for cell in head)}</tr>"] if head else []
    border = ' border="1" style="border-collapse:collapse;border-color:#999"' if ruled else ""
    return f'<table width="100%" cellspacing="0" cellpadding="3"{border}>{"".join([*top, *body])}</table>'


def heading(text: str, *, on_new_page: bool = False) -> str:
    """Return a heading of the second rank."""
    style = ' style="page-break-before:always"' if on_new_page else ""
    return f"<h2{style}>{words(text)}</h2>"


def paragraph(text: str, *, soft: bool = False) -> str:
    """Return a paragraph; soft ones are small print."""
    return f'<p class="soft">{lines(text)}</p>' if soft else f"<p>{lines(text)}</p>"
