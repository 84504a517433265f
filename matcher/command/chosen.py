"""The one listing that a command is about, out of everything that its files hold."""

from collections.abc import Sequence
from pathlib import Path

from matcher.command.inputs import Inputs
from matcher.errors import BadValue
from matcher.record import Record


def chosen(path: Path, wanted_id: str | None) -> tuple[Record, bool]:
    """Return the listing with an id (or the only one) and whether anything in the file was bad.

    Raises BadValue when there is none, or several and no id to choose by.
    """
    inputs = Inputs([path])
    found = list(inputs)
    return _one(found, wanted_id, str(path)), inputs.had_problems


def _one(found: Sequence[Record], wanted_id: str | None, path: str) -> Record:
    if wanted_id is not None:
        for record in found:
            if record.id == wanted_id:
                return record
        raise BadValue(f"{path}: no listing has the id {wanted_id!r:.60}; {_ids(found)}")
    if len(found) == 1:
        return found[0]
    if not found:
        raise BadValue(f"{path}: no listing in it; give the text, page, table or JSON lines of one")
    raise BadValue(f"{path}: {len(found)} listings in it; choose one with --id: {_ids(found)}")


def _ids(found: Sequence[Record]) -> str:
    names = ", ".join(record.id for record in found[:8])
    return f"the ids are {names}{', ...' if len(found) > 8 else ''}" if names else "it holds no listing"
