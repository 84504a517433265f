"""Records as JSON lines: a listing's `title` and `text`, or facts that were read before.

`{"id", "title", "text"}` is read; `{"id", "facts"}` (with `conflicts` and `where`, as `samespin read`
prints them) is taken as it stands. A record without an id is `name#n`, n its place in the file from 1.
"""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence

from pydantic import ValidationError

from matcher.errors import BadValue, SamespinError, UnknownField, UnreadableInput
from matcher.meant import meant
from matcher.motor import OFFER_FIELDS, Offer
from matcher.reading.listing import read_listing, read_plate
from matcher.reading.problem import OnProblem, Problem
from matcher.record import Conflict, Mark, Origin, Record
from matcher.values import value_for

LONGEST = 1_000_000
"""Characters of one record."""


def read_json_lines(
    lines: Iterable[str], name: str, on_problem: OnProblem, *, plate: bool = False
) -> Iterator[Record]:
    """Yield a record for each good line; a broken one is named with its line and left out."""
    number = 0
    for line_number, line in enumerate(lines, 1):
        if not line.strip() or line.strip() in {"[", "]"}:
            continue
        number += 1
        try:
            yield record_of(_parsed(line), f"{name}#{number}", plate=plate)
        except SamespinError as fault:
            on_problem(Problem(f"{name}, line {line_number}", f"{fault}; the record is left out"))


def _parsed(line: str) -> Mapping[str, object]:
    if len(line) > LONGEST:
        raise UnreadableInput("it is longer than any record can be")
    try:
        # A list written one record a line has a comma behind each.
        found = json.loads(line.strip().rstrip(","))
    except json.JSONDecodeError as fault:
        raise UnreadableInput(
            f"it is no JSON record ({fault.msg.lower()} at character {fault.pos + 1})"
        ) from None
    except (RecursionError, ValueError):
        raise UnreadableInput("it is no JSON record (nested too deep, or a number too long)") from None
    return _object(found)


def _object(found: object) -> Mapping[str, object]:
    if not isinstance(found, Mapping):
        raise UnreadableInput('it is no record; write {"id": ..., "title": ..., "text": ...}')
    return found


def record_of(found: Mapping[str, object], number: str, *, plate: bool = False) -> Record:
    """Return one parsed record.

    :raises UnreadableInput: if it has neither text nor facts.
    :raises UnknownField: for a fact that there isn't, with the one that was probably meant.
    :raises BadValue: for a value that its fact can't have.
    """
    name = _name(found.get("id")) or number
    facts = found.get("facts")
    if facts is not None:
        return _with_facts(found, facts, name)
    text, title = found.get("text"), found.get("title")
    if text is None and title is None:
        raise UnreadableInput(f"{_called(found)}it has neither text nor facts")
    if not all(isinstance(words, str | None) for words in (text, title)):
        raise UnreadableInput(f"{_called(found)}title and text must be strings")
    if plate:
        return read_plate("\n".join(str(words) for words in (title, text) if words), id=name)
    return read_listing(str(text or ""), str(title or ""), id=name)


def _name(given: object) -> str:
    if isinstance(given, bool) or not isinstance(given, str | int | float):
        return ""
    return str(given).strip()[:200]


def _called(found: Mapping[str, object]) -> str:
    name = _name(found.get("id"))
    return f"record {name}: " if name else ""


def _with_facts(found: Mapping[str, object], facts: object, name: str) -> Record:
    if not isinstance(facts, Mapping):
        raise UnreadableInput(f"{_called(found)}facts must be an object")
    conflicts = tuple(_conflicts(found.get("conflicts")))
    # What a record itself calls contradicted isn't known, whatever value stands beside it.
    left_out = {conflict.field for conflict in conflicts}
    known = {str(name): value for name, value in facts.items() if value is not None and name not in left_out}
    try:
        offer = Offer.model_validate(known)
    except (ValidationError, ValueError, RecursionError):
        raise _fault(_called(found), known) from None
    text, title = found.get("text"), found.get("title")
    record = Record(name, offer, title=str(title or ""), text=str(text or ""))
    record.where = dict(_marks(found.get("where"), record))
    record.conflicts = conflicts
    return record


def _fault(called: str, facts: Mapping[str, object]) -> SamespinError:
    """Return what is wrong with the first bad fact."""
    for field, value in facts.items():
        if field not in OFFER_FIELDS:
            return UnknownField(f"{called}{field!r:.60} is no fact of an offer{meant(field, OFFER_FIELDS)}")
        try:
            value_for(Offer, field, value)
        except SamespinError as fault:
            return type(fault)(f"{called}{fault}")
    return BadValue(f"{called}its facts can't all be true together")


def _marks(where: object, record: Record) -> Iterator[tuple[str, Mark]]:
    """Yield the marks that still hold in the record's own title and text."""
    if not isinstance(where, Mapping):
        return
    for field, mark in where.items():
        if field not in OFFER_FIELDS or not isinstance(mark, Mapping):
            continue
        source, span, said = mark.get("from"), mark.get("span"), mark.get("said")
        words = record.title if source == "title" else record.text
        if isinstance(span, Sequence) and len(span) == 2 and all(isinstance(edge, int) for edge in span):
            start, end = span
            if said == words[start:end]:
                yield field, Mark(Origin.READ, str(source), (start, end), str(said))


def _conflicts(given: object) -> Iterator[Conflict]:
    """Yield conflicts that name a fact; only the name is needed to judge."""
    for entry in given if isinstance(given, Sequence) and not isinstance(given, str) else ():
        field = entry.get("field") if isinstance(entry, Mapping) else entry
        if field in OFFER_FIELDS:
            values = entry.get("values") if isinstance(entry, Mapping) else ()
            said = entry.get("said") if isinstance(entry, Mapping) else ()
            yield Conflict(str(field), _items(values), tuple(str(words) for words in _items(said)))


def _items(given: object) -> tuple[object, ...]:
    return tuple(given) if isinstance(given, Sequence) and not isinstance(given, str) else ()
