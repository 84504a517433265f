"""The electronic module: in the sale or not, sold alone, and the plugs.

Whole phrases (`motor only`, `module built in`) are in the tables; the rest is put together here: a word
before the module (`with`, `no`) or what the clause goes on to say of it (`is included`, `not in the box`).
"""

import re

from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS

_WITH = frozenset(
    {"with", "w/", "w", "includes", "including", "incl", "plus", "+", "matching", "its", "w/ the"}
)
# `no module swap`, `no module to program`: none is needed.
_NOT_NEEDED = frozenset(
    {"swap", "swaps", "to", "needed", "required", "necessary", "programming", "fuss", "number"}
)
_MOUNTS = re.compile(r"^(?:mount|bracket|adjust|valve|switch|install|position)")
"""`2-way mount`: ways to do something, no pins."""
_PINS = frozenset({"pin", "pins", "pin plug", "pole plug", "polig", "poliger"})
_REACH = 9
_FARTHEST = 30


def module(items: Items, i: int, _value: str) -> None:
    """A module spoken of: supplied, absent, or neither said."""
    if items.word(i + 1) == "?":
        return
    said = _before(items, i) or _after(items, i)
    if said:
        items.claim("module", said, i)


def _before(items: Items, i: int) -> str | None:
    for j in (i - 1, i - 2):
        if items.has(j, "no") or items.has(j, "not") or items.has(j, "absent"):
            return None if items.word(i + 1) in _NOT_NEEDED else "without"
        if items.word(j - 1) in ("only", "use", "used"):
            return None
        if items.word(j) in _WITH and items.said(j - 1, "after") in LENGTHS:
            return None  # `5.1 in. long, 7.6 in. with module`
        if items.word(j) in _WITH or "supplied" in items.word(j):
            return "with"
        if not items.has(j, "fill"):
            return None
    return None


def _after(items: Items, i: int) -> str | None:
    """Walk on to the end of the sentence, or to the next motor, for what is said of the module."""
    denied = supplied = False
    end, bracket = i + _REACH, False
    for j in range(i + 1, min(len(items), i + _FARTHEST)):
        if j >= end or items.segment[j] != items.segment[i] or (not bracket and "motor" in items.roles[j]):
            break
        bracket = items.word(j) == "(" or (bracket and items.word(j) != ")")
        if bracket:
            end += 1  # what stands in a bracket (its number, its program) is read over
            continue
        if supplied:
            if items.said(j, "absent") == "undone":
                return None  # `the module on the back is burnt, so I took it off`
            continue
        if "absent" in items.roles[j] or (denied and "supplied" in items.roles[j]):
            return "without"
        supplied = "supplied" in items.roles[j]
        denied = denied or "not" in items.roles[j] or "no" in items.roles[j]
    return "with" if supplied else None


def module_only(items: Items, i: int, _value: str) -> None:
    """`module only`, `no motor`: the module is sold alone."""
    items.claim("module_alone", items.word(i), i)


def pins(items: Items, i: int) -> None:
    """`5 pin and 16 pin sockets`, `4-pin plug`: collected to one list; a reversing plug isn't one of them."""
    number = items.numbers[i]
    if items.used[i] or items.said(i + 1, "after") != "pin":
        return
    if not all(atom % 1 == 0 and 1 <= atom <= 40 for atom in number.atoms) or not number.atoms:
        return
    if items.word(i + 1) not in _PINS and not _plug_near(items, i):
        return
    if items.word(i + 1) == "way" and _MOUNTS.search(items.word(i + 2)):
        return
    items.used[i] = True
    if number.value == 2 and any(
        "either" in items.roles[j]
        for j in range(max(0, i - 6), min(len(items), i + 6))
        if items.segment[j] == items.segment[i]
    ):
        return
    items.claim("plug_pins", tuple(int(atom) for atom in number.atoms), i, i + 1)
    if items.word(i - 1) in ("+", ",") and items.has(i - 2, "num") and not items.used[i - 2]:
        before = items.numbers[i - 2].value
        if before and before % 1 == 0 and before <= 40:
            items.used[i - 2] = True
            items.claim("plug_pins", (int(before),), i - 2, i + 1)


def _plug_near(items: Items, i: int) -> bool:
    return any("plug" in items.roles[j] for j in range(max(0, i - 8), min(len(items), i + 7)))


HANDLERS = {"moduleonly": module_only, "module": module}
