"""The words behind an offer's facts, as short JSON beside the facts.

A mark whose words stand in the offer's own text is kept as `[source, start, end]`; its words are cut from the
text again. Any other is `[source, start, end, said, origin]`. The whole is
`{"where": {field: mark}, "conflicts": [[field, values, said, marks], ...]}`, or empty.
"""

from collections.abc import Mapping
from typing import Any

from pydantic_core import from_json, to_json

from matcher.plain import as_tuples
from matcher.record import Conflict, Mark, Origin


def _packed(mark: Mark, title: str, text: str) -> list[object]:
    start, end = mark.span
    source = mark.source
    if mark.origin is Origin.READ and (title if source == "title" else text)[start:end] == mark.said:
        return [source, start, end]
    return [source, start, end, mark.said, mark.origin]


def _unpacked(packed: list[Any], title: str, text: str) -> Mark:
    source, start, end, *rest = packed
    if rest:
        return Mark(Origin(rest[1]), source, (start, end), rest[0])
    words = title if source == "title" else text
    return Mark(Origin.READ, source, (start, end), words[start:end])


def pack(where: Mapping[str, Mark], conflicts: tuple[Conflict, ...], title: str, text: str) -> str:
    """Return where the facts of an offer with this title and text came from, as JSON."""
    if not where and not conflicts:
        return ""
    packed: dict[str, object] = {"where": {name: _packed(mark, title, text) for name, mark in where.items()}}
    if conflicts:
        packed["conflicts"] = [
            [one.field, one.values, one.said, [_packed(mark, title, text) for mark in one.marks]]
            for one in conflicts
        ]
    return to_json(packed).decode()


def unpack(packed: str, title: str, text: str) -> tuple[dict[str, Mark], tuple[Conflict, ...]]:
    """Return what `pack` was given."""
    if not packed:
        return {}, ()
    document = from_json(packed)
    where = {name: _unpacked(mark, title, text) for name, mark in document["where"].items()}
    conflicts = tuple(
        Conflict(
            field,
            tuple(as_tuples(value) for value in values),
            tuple(said),
            tuple(_unpacked(mark, title, text) for mark in marks),
        )
        for field, values, said, marks in document.get("conflicts", ())
    )
    return where, conflicts
