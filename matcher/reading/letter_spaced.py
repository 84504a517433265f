"""Plates whose letters stand apart (`H P  1 / 8`, `R P M 1 0 7 5`): drawn together before they are cut.

Only lines in which no word is longer than one letter, and in which the letters make a word of the trade
(or, on such a plate, a name). Every character remembers its place, so that spans hold in the original.
"""

import re
from dataclasses import dataclass

from matcher.reading.figures import EIGHTHS
from matcher.reading.run_together import pieces
from matcher.reading.vocabulary import heads
from matcher.record import Conflict, Mark, Record

_HINT = re.compile(r"(?<!\S)[A-Za-z]\.? [A-Za-z](?!\w)|(?<![\w.])\d [./-] \d(?![\w.])")
_SINGLE = re.compile(r"(?<!\S)(?:[A-Za-z]\.?|[^\sA-Za-z])(?!\S)")
_FIGURE = re.compile(r"(?<![\w./-])\d{1,2} [./] (?=\d{1,2}(?![\w./-]))")
_TOKEN = re.compile(r"\S+")
_LETTERS = re.compile(r"[A-Za-z]+")
_OF_NUMBER = re.compile(r"(?:MODEL|MOD|TYPE|SER)(?=[A-Z]{0,3}$)")
_NAME = 5
"""Letters of a name that stands apart on a plate whose other lines don't."""
_WORD = 4
"""Letters and figures that stand apart in a line of a plate whose other lines do."""
_SHARES = EIGHTHS | {"1/3", "2/3"}


@dataclass(frozen=True, slots=True)
class Drawn:
    """A text drawn together: `places[k]` is where its character `k` stands in the original."""

    text: str
    places: list[int]

    def span(self, span: tuple[int, int]) -> tuple[int, int]:
        """Return a span in the original."""
        start, end = span
        return (self.places[start], self.places[end - 1] + 1) if end > start else (0, 0)


def drawn_together(text: str) -> Drawn | None:
    """Return the text with its letters drawn together, `None` where they don't stand apart."""
    if not _HINT.search(text):
        return None
    lines = text.splitlines(keepends=True)
    apart = [_stands_apart(line) for line in lines]
    some = any(apart)
    parts: list[str] = []
    places: list[int] = []
    at = 0
    for line, known in zip(lines, apart, strict=True):
        drawn = known or _is_name(line) or (some and _longest(line) >= _WORD)
        kept = _kept(line) if drawn else _kept_of_figures(line)
        parts.append("".join([line[k] for k in kept]))
        places += [at + k for k in kept]
        at += len(line)
    return Drawn("".join(parts), places) if len(places) < len(text) else None


def put_back(record: Record, drawn: Drawn, text: str) -> Record:
    """Return a record that was read from the drawn text with its marks in the original."""

    def moved(mark: Mark) -> Mark:
        start, end = drawn.span(mark.span)
        return mark._replace(span=(start, end), said=text[start:end])

    record.where = {field: moved(mark) for field, mark in record.where.items()}
    marked = [(conflict, tuple(map(moved, conflict.marks))) for conflict in record.conflicts]
    record.conflicts = tuple(
        Conflict(known.field, known.values, tuple(mark.said for mark in marks), marks)
        for known, marks in marked
    )
    record.text = text
    return record


def _runs(line: str) -> list[list[int]]:
    """Return the places of single characters with one blank between them, run by run."""
    runs: list[list[int]] = []
    end = -2
    for found in _SINGLE.finditer(line):
        if found.start() != end + 1:
            runs.append([])
        runs[-1] += range(*found.span())
        end = found.end()
    return [run for run in runs if len(run) > 1]


def _has_words(line: str) -> bool:
    """Say whether a word of a line is longer than a letter."""
    words = [word.rstrip(".:") for word in _TOKEN.findall(line)]
    return any(len(word) > 1 and word.isalpha() for word in words)


def _stands_apart(line: str) -> bool:
    """Say whether no word of a line is longer than a letter, and its letters make a word of the trade."""
    if _has_words(line):
        return False
    said = ["".join([line[k] for k in run if line[k] != "."]) for run in _runs(line)]
    return any(_is_known(word) for run in said for word in _LETTERS.findall(run))


def _longest(line: str) -> int:
    """Return how many characters the longest word has whose letters stand apart; 0 in a line of words."""
    return 0 if _has_words(line) else max(map(len, _runs(line)), default=0)


def _is_known(word: str) -> bool:
    known = heads().get(word.lower())
    return len(word) > 1 and ((known is not None and bool(known.roles)) or bool(pieces(word.lower())))


def _is_name(line: str) -> bool:
    """Say whether a line is nothing but letters that stand apart."""
    words = line.split()
    return len(words) >= _NAME and all(len(word) == 1 and (word.isalpha() or word == "&") for word in words)


def _kept(line: str) -> list[int]:
    """Return the places in a line that stay: all but the blanks inside its words and figures."""
    gone: set[int] = set()
    for run in _runs(line):
        said = "".join([line[k] for k in run])
        parted = _parted(said)
        gone |= {run[k] + 1 for k in range(len(run) - 1) if k + 1 not in parted and run[k + 1] == run[k] + 2}
    return [k for k in range(len(line)) if k not in gone]


def _parted(said: str) -> set[int]:
    """Return where words that were drawn together part again: `RPM|1075`, `60|PH|1`, `1|1/2`."""
    parted: set[int] = set()
    for found in _LETTERS.finditer(said):
        if _is_known(found[0]):
            parted |= {found.start(), found.end()}
        elif found[0][-1] in "IlO" and _is_known(found[0][:-1]):
            parted |= {found.start(), found.end() - 1}  # `P H I`: a misread figure
        elif label := _OF_NUMBER.match(found[0]):
            parted |= {found.start(), found.start() + label.end()}
    for found in re.finditer(r"(?<![\d./-])\d(?=(\d/\d)(?![\d/]))", said):
        if found[1] in _SHARES:
            parted.add(found.end())
    return parted


def _kept_of_figures(line: str) -> list[int]:
    """Return the places that stay where only the signs inside figures stand apart: `1 / 8`, `2 . 1`."""
    gone: set[int] = set()
    for found in _FIGURE.finditer(line):
        gone |= {k for k in range(*found.span()) if line[k] == " "}
    return [k for k in range(len(line)) if k not in gone]
