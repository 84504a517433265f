"""One listing of a page into a record: its visible text and the page's data about it, settled together.

The record's text is the visible text, then a line for each property of the data, so that every mark
points into it. Labelled lines and data are claimed by their labels; the reader sees all other text.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from matcher.reading.amounts import is_price_range, sums
from matcher.reading.cell_words import shown
from matcher.reading.claim import Claim
from matcher.reading.labelled import claims_of, read_value
from matcher.reading.listing import read_beside
from matcher.reading.page_offer import Said
from matcher.reading.table_headers import Header, header
from matcher.record import Conflict, Mark, Origin, Record
from matcher.trade.numbers import compact

DATA_HEADING = "Data in the page:"
"""Stands between the visible text and the data."""

LONGEST_TEXT = 100_000
"""Characters of one listing's visible text that are read; what follows is no longer about it."""
_DOLLARS = frozenset({"CAD", "AUD", "NZD", "MXN", "SGD", "HKD"})
_PARTS = (" — ", " – ", " | ", " · ", " • ")
_DECIDES = 9
"""Strength of a claim that nothing else on the page can contradict."""
_LABELLED_NAMES = ("brand", "part_number")


@dataclass(slots=True)
class Sheet:
    """A record's text while it is put together: what the reader sees of it, and the claims on it."""

    lines: list[str] = field(default_factory=list)
    seen: list[str] = field(default_factory=list)
    visible: list[Claim] = field(default_factory=list)
    data: list[Claim] = field(default_factory=list)
    not_asked: set[float] = field(default_factory=set)
    at: int = 0

    def add(self, line: str, seen: str) -> tuple[int, int]:
        """Add a line; return its span."""
        span = (self.at, self.at + len(line))
        self.lines.append(line)
        self.seen.append(seen)
        self.at += len(line) + 1
        return span

    def add_visible(self, line: str) -> None:
        """Add a line of visible text; a label that is known decides what its value means."""
        if is_price_range(line):
            self.add(line, " " * len(line))
            return
        line, rest = _parted(line)
        self._add_line(line)
        if rest:
            self._add_line(rest)

    def _add_line(self, line: str) -> None:
        meant, value = _labelled(line)
        if value.startswith("=") and not shown(value):
            self.add(line, " " * len(line))  # a formula that a spreadsheet left in the page
            return
        if meant is None or meant.column.how == "free":
            self.add(line, line)
            return
        if meant.column.name == "other_price":
            # Data that calls a bid or a list price the price is not to be believed.
            self.not_asked.update(sums(value))
        value, behind = _first_sentence(value) if meant.column.how == "money" else (value, "")
        values = read_value(meant, value, more=True)
        hidden = bool(values) or meant.column.how == "nothing"
        span = self.add(line, behind.rjust(len(line)) if hidden else line)
        self.visible += claims_of(values, (span[0], span[1] - len(behind)))

    def add_data(self, said: Said) -> None:
        """Add a line of the page's data."""
        span = self.add(said.line, said.line if said.free else " " * len(said.line))
        self.data += claims_of(said.values, span)


def _parted(line: str) -> tuple[str, str]:
    """Part `Make: Hale — Mfr. no.: QD-7` before its second label, where both are known."""
    for sign in _PARTS:
        first, found, rest = line.partition(sign)
        if found and _labelled(first)[0] is not None and _labelled(rest)[0] is not None:
            return first, rest
    return line, ""


def _labelled(line: str) -> tuple[Header | None, str]:
    label, colon, value = line.partition(":")
    if not colon or not value.strip() or len(value) > 240:
        return None, ""
    return header(label), value.strip()


def _first_sentence(value: str) -> tuple[str, str]:
    """Part `$41.00` from what a seller writes behind it on the same line: `. New, never mounted.`"""
    for at in range(1, len(value) - 2):
        if value[at] in ".;!" and value[at + 1] == " " and value[at + 2].isalpha():
            return value[:at], value[at + 1 :]
    return value, ""


def page_record(title: str, visible: Sequence[str], data: Iterable[Said], name: str) -> Record:
    """Read one listing of a page; never raises."""
    sheet = Sheet()
    for line in visible:
        if sheet.at > LONGEST_TEXT:
            break
        sheet.add_visible(line[:LONGEST_TEXT])
    known = {_squeezed(title), *map(_squeezed, visible)}
    whole = _squeezed(" ".join(visible))
    lines = [said for said in data if not (said.free and _is_known(said.line, known, whole))]
    if lines:
        sheet.add(DATA_HEADING, " " * len(DATA_HEADING))
    for said in lines:
        sheet.add_data(said)
    sheet.data = [claim for claim in sheet.data if not _is_bid(claim, sheet)]
    text, seen = "\n".join(sheet.lines), "\n".join(sheet.seen)
    record = read_beside(_reconciled(sheet, seen), seen, text, title, id=name)
    return _with_name_conflicts(record, sheet)


def _squeezed(words: str) -> str:
    return " ".join(words.split()).casefold()


def _is_known(line: str, known: set[str], whole: str) -> bool:
    """Say whether the visible text already says a line of data."""
    words = _squeezed(line.partition(":")[2])
    return words in known or (len(words) > 20 and words in whole)


def _is_bid(claim: Claim, sheet: Sheet) -> bool:
    asked = {seen.value for seen in sheet.visible if seen.field == "price"}
    return claim.field == "price" and claim.value in sheet.not_asked and not asked


def _reconciled(sheet: Sheet, seen: str) -> list[Claim]:
    """Return all claims; schema.org's few words are widened to what the visible text may say within them."""
    claims = [*sheet.visible]
    for claim in sheet.data:
        # A dollar sign on a page whose data names another country's dollars is that dollar.
        other_signs = any(sign in seen for sign in "€£") or "USD" in seen or "US$" in seen
        if claim.field == "currency" and claim.value in _DOLLARS and not other_signs:
            claims.append(replace(claim, strength=_DECIDES))
        else:
            claims.append(claim)
    return claims


def _with_name_conflicts(record: Record, sheet: Sheet) -> Record:
    """Make a conflict where a visible label and the data name two makers, or two numbers of the maker."""
    for name in _LABELLED_NAMES:
        one = next((claim for claim in sheet.visible if claim.field == name), None)
        two = next((claim for claim in sheet.data if claim.field == name), None)
        if one is None or two is None or _is_one_name(str(one.value), str(two.value)):
            continue
        record.facts = record.facts.model_copy(update={name: None})
        record.where.pop(name, None)
        marks = tuple(_mark(record.text, claim) for claim in (one, two))
        conflict = Conflict(name, (one.value, two.value), tuple(mark.said for mark in marks), marks)
        record.conflicts = (*(known for known in record.conflicts if known.field != name), conflict)
    return record


def _is_one_name(one: str, two: str) -> bool:
    first, second = compact(one), compact(two)
    return first == second or first in second or second in first


def _mark(text: str, claim: Claim) -> Mark:
    return Mark(Origin.READ, claim.source, claim.span, text[slice(*claim.span)])
