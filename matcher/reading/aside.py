"""Words that reach back: what a question mark doubts, what is taken back, what turns out to be another's.

They work on the items laid out so far, while a text is still being laid out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from matcher.reading.items import Items

_BEFORE = 4
_ASKED = 6
_FAR = 60  # items; nothing is looked for farther away, so that the work stays linear
_STOPS = frozenset(".;|\n")
_DOUBTED = frozenset({"fact", "weak", "bearing", "protector", "flats"})
_STATEMENTS = _DOUBTED | {"turn", "turnview", "either", "unit"}


def take_back(items: Items) -> None:
    """Mute what stood right before a word that takes it back: `OAO... no wait TEAO`, `ball - no, sleeve`."""
    roles = items.roles
    for i in range(len(roles) - 1, max(-1, len(roles) - _BEFORE), -1):
        if "num" in roles[i] or not _STATEMENTS.isdisjoint(roles[i]):
            first = i - 1 if i and "num" in roles[i - 1] and "unit" in roles[i] else i
            for j in range(first, len(roles)):
                items.muted[j] = "clause"
            return
        sign = items.scan.words[items.first[i]]
        if sign[0].isalnum() or sign in _STOPS:
            return


def ask(items: Items, clause: int) -> None:
    """Doubt the last figure before a question mark and what stands behind it, or the word right before it."""
    end = len(items.roles)
    for i in range(end - 1, max(-1, end - _ASKED), -1):
        if items.clause[i] != clause:
            return
        roles = items.roles[i]
        stated = i == end - 1 and not _DOUBTED.isdisjoint(roles)
        if i in items.numbers or stated or roles.get("fact", "").startswith("phase"):
            items.asked.update(range(i, end))
            return


def set_apart(items: Items, segment: int, clause: int | None) -> str:
    """Mute the sentence, the clause or the bracket that says in the end that it is about another motor.

    Returns how the rest of it is muted.
    """
    muted = "sentence" if clause is None else "clause"
    for i in range(len(items.roles) - 1, max(-1, len(items.roles) - _FAR - 1), -1):
        if items.segment[i] != segment or (clause is not None and items.clause[i] != clause):
            break
        if items.scan.words[items.first[i]] == "(" or items.muted[i] == muted:
            break
        items.muted[i] = muted
    return muted
