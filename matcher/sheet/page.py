"""The sheet as a page for print and PDF: a page or two, blanks wide enough to write in."""

from matcher.printed import document, heading, paragraph, words
from matcher.sheet.sheet import PARTS, UNNUMBERED, Line, Sheet

BOX = "☐"
BLANK_WIDTH = "24%"
GAP = "margin-bottom:6px"
SECOND_PAGE = "prepare"
"""What happens at the unit stands on the first page, what happens at the bench and after on the second."""


def as_html(sheet: Sheet, job: str = "", day: str = "") -> str:
    """Return the sheet as one page; `job` and `day` stand below the title. Every text is escaped."""
    body = [paragraph("  ·  ".join(filter(None, (job, day))), soft=True)] if job or day else []
    if sheet.warning:
        body.append(f"<p><b>{words(sheet.warning)}</b></p>")
    number = 0
    for part, title in PARTS.items():
        lines = sheet.parts[part]
        if not lines:
            continue
        body.append(heading(title, on_new_page=part == SECOND_PAGE))
        if part == "caution":
            body.append(_cautions(lines))
        elif part == "tool":
            body.append(_tools(lines))
        else:
            body.append(_steps(lines, number))
            number += len(lines)
    body.append(paragraph(_rests_on(sheet), soft=True))
    return document(sheet.title, body)


def _cautions(lines: tuple[Line, ...]) -> str:
    rows = "".join(f"<tr><td><b>!</b></td><td>{words(line.text)}</td></tr>" for line in lines)
    return (
        f'<table width="100%" border="1" cellspacing="0" cellpadding="6" '
        f'style="border-collapse:collapse;border-color:#000"><tr><td><table width="100%" cellspacing="0" '
        f'cellpadding="1">{rows}</table></td></tr></table>'
    )


def _tools(lines: tuple[Line, ...]) -> str:
    cells = [f'<td width="3%">{BOX}</td><td width="47%">{words(line.text)}</td>' for line in lines]
    if len(cells) % 2:
        cells.append("<td></td><td></td>")
    rows = "".join(f"<tr>{left}{right}</tr>" for left, right in zip(cells[::2], cells[1::2], strict=True))
    return f'<table width="100%" cellspacing="0" cellpadding="1" style="{GAP}">{rows}</table>'


def _steps(lines: tuple[Line, ...], before: int) -> str:
    rows = "".join(_step(line, before + place) for place, line in enumerate(lines, 1))
    return f'<table width="100%" cellspacing="0" cellpadding="2" style="{GAP}">{rows}</table>'


def _step(line: Line, number: int) -> str:
    first = f'<td width="5%" align="right">{number}.</td><td width="3%">{BOX}</td>'
    if not line.filled:
        return f'<tr>{first}<td colspan="2">{words(line.text)}</td></tr>'
    return (
        f"<tr>{first}<td>{words(line.text)}</td>"
        f'<td width="{BLANK_WIDTH}" align="right">{_filled(line)}</td></tr>'
    )


def _filled(line: Line) -> str:
    return f"<b>{words(line.note)}</b>" if line.note else words(line.blank)


def _rests_on(sheet: Sheet) -> str:
    sources = [line.source for part in PARTS if part not in UNNUMBERED for line in sheet.parts[part]]
    sources += [line.source for part in UNNUMBERED for line in sheet.parts[part]]
    named = [source for source in dict.fromkeys(sources) if source != "common practice"]
    return f"Rests on: {'; '.join(named)}. All else is common practice."
