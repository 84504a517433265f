"""Words that reach back: what a question mark doubts, what is taken back, what turns out to be another's.

They work on the items laid out so far, while a text is still being laid out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from matcher.reading.figures import FIRST_OF_NUMBER
from matcher.reading.vocabulary import entries

if TYPE_CHECKING:
    from matcher.reading.items import Items
    from matcher.reading.vocabulary import Roles

_LOOK_BEFORE = 4
_BEFORE = 4
_ASKED = 6
_FAR = 60  # items; nothing is looked for farther away, so that the work stays linear
_PARTS = frozenset(",;()\n")
_LABELS = frozenset({"rotlabel", "brglabel", "encl", "frame", "label", "poslabel", "protlabel"})
_CHANGEABLE = frozenset({"insclass", "brglabel", "encl", "frame", "amb"})
"""Labels of what a shop changes: `INS: upgraded to F`."""
_PRINTED = frozenset({"plate", "nameplate", "tag", "label", "sticker", "stamped", "rated", "fla"})
_OPENS = frozenset("(,-")
_ENDS = frozenset(").;|\n!")
_STOPS = frozenset(".;|\n")
_DOUBTED = frozenset({"fact", "weak", "bearing", "protector", "flats", "turn", "either"})
_STATEMENTS = _DOUBTED | {"turnview", "unit"}


def figure_follows(words: list[str], token: int) -> bool:
    """`not 115 V`, `not for 230 V`, never `not legible, 115 V`: say whether words are about a figure."""
    for word in words[token : token + _LOOK_BEFORE]:
        if word[0] in FIRST_OF_NUMBER:
            return True
        if word in _PARTS:
            break
    return False


def goes_on(items: Items, token: int) -> bool:
    """Say whether a denied list goes on behind a comma: `not 120, 208 or 240`.

    A figure with another unit is no part of it: `not 3 phase, 1/2 hp`.
    """
    words = items.scan.words
    if token < len(words) and words[token] in ("and", "or", "nor"):
        token += 1
    if token >= len(words) or words[token][0] not in FIRST_OF_NUMBER:
        return False
    before = items.roles[-1]
    unit = before.get("unit") if len(items.roles) > 1 and "num" in items.roles[-2] else None
    other = entries()[words[token + 1]].roles.get("unit") if token + 1 < len(words) else None
    return "fact" not in before and (unit is None or other is None or unit == other)


def heed(items: Items, roles: Roles, after: int, clause: int) -> None:
    """Heed words that doubt, correct, affirm or measure; `after` is the token behind them."""
    if "unsure" in roles:
        if roles["unsure"] != "figure" or figure_follows(items.scan.words, after):
            doubt(items, after, clause)
    elif "asks" in roles:
        ask(items, clause)
    elif "affirms" in roles:
        affirm(items)
    if "takeback" in roles:
        take_back(items)
    if "measured" in roles:
        items.measured.update((clause, field) for field in roles["measured"].split())


def doubt(items: Items, after: int, clause: int) -> None:
    """Doubt a clause; a doubt that is all of it is about what stands before: `1075 rpm (I think)`.

    So is another fraction in a bracket: `1/3 (might be 1/8)`.
    """
    words = items.scan.words
    ends = after >= len(words) or words[after][0] in _ENDS
    before = words[items.first[-1]] if items.first else ""
    if (ends and before in _OPENS) or (before == "(" and "/" in "".join(words[after : after + 1])):
        ask(items, clause)
    items.doubted.add(clause)


def is_printed(items: Items, i: int) -> bool:
    """Say whether a figure is the plate's in so many words: `on the plate 8.4, it draws 6.1 by my meter`."""
    for j in range(i - 1, max(-1, i - _LOOK_BEFORE - 1), -1):
        if items.clause[j] != items.clause[i] or "num" in items.roles[j]:
            break
        if not _PRINTED.isdisjoint(items.words[j].split()):
            return True
    return False


def ends_in_label(items: Items) -> bool:
    """Say whether the last item so far labels a value of a motor that a shop may have changed."""
    i = len(items.roles) - 1
    i -= i > 0 and items.scan.words[items.first[i]] in (":", "=")
    return i >= 0 and not _CHANGEABLE.isdisjoint(items.roles[i])


def affirm(items: Items) -> None:
    """`115 V? Yes.` asks nothing."""
    if _says(items, "?"):
        items.asked.difference_update(range(len(items.roles) - _ASKED, len(items.roles)))


def _says(items: Items, sign: str) -> bool:
    """Say whether the last item so far is a sign."""
    return bool(items.first) and items.scan.words[items.first[-1]] == sign


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
    """Doubt the last figure before a question mark and what stands behind it, or the word right before it.

    In `1/3 HP (?)` a bracket stands between them, in `feels like sleeve, not sure` a comma.
    """
    end = len(items.roles)
    if items.first and items.scan.words[items.first[-1]] in _OPENS:
        end, clause = end - 1, clause - 1
    for i in range(end - 1, max(-1, end - _ASKED), -1):
        if items.clause[i] != clause:
            return
        roles = items.roles[i]
        if not _LABELS.isdisjoint(roles):
            return  # `1075 rpm rotation?`
        stated = i == end - 1 and not _DOUBTED.isdisjoint(roles)
        stated = stated or "turn" in roles  # `rotates left seen at the rotor?`
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
