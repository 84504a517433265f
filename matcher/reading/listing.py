"""Read one listing or one plate: cut, lay out, let every word claim, settle."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache

from pydantic import ValidationError

from matcher.motor import Offer
from matcher.reading import (
    bearings,
    brand,
    capacitor,
    condition,
    control,
    days,
    frame,
    free_shipping,
    heat,
    identity,
    module,
    money,
    owner,
    phrases,
    rotation,
    series,
    terms,
)
from matcher.reading.claim import Claim
from matcher.reading.columns import pair_columns
from matcher.reading.correction import corrected
from matcher.reading.dimension import lengths
from matcher.reading.dual import merge_frequencies, merge_voltages
from matcher.reading.items import NO_ROLES, Items
from matcher.reading.label_pairs import pair_labels
from matcher.reading.letter_spaced import drawn_together, put_back
from matcher.reading.loose_code import loose_codes
from matcher.reading.positional import in_a_row
from matcher.reading.settle import settle
from matcher.reading.speed_lines import merge_speeds, stack_values
from matcher.reading.speed_names import name_speeds
from matcher.reading.thing import first_line, kind_of_thing
from matcher.reading.together import GIVEN, tidy
from matcher.reading.told_apart import tell_apart
from matcher.reading.vocabulary import all_roles
from matcher.record import Conflict, Mark, Origin, Record

__all__ = ["GIVEN", "read_beside", "read_listing", "read_plate"]

Handler = Callable[[Items, int, str], None]
_OF_MONEY = frozenset({"money", "price", "ship", "shipped", "freeship", "wants", "buys", "local"})
_BY_UNIT: dict[str, Callable[[Items, int], None]] = {
    "pin": module.pins,
    "c": heat.celsius,
    "f": heat.celsius,
    **dict.fromkeys(("day", "week", "month", "year"), days.days),
}


class _Handled(dict[int, tuple[tuple[Handler, str], ...]]):
    """The handlers of a phrase's roles, by the identity of the roles, which live as long as the tables."""

    def __init__(self, handlers: dict[str, Handler]) -> None:
        super().__init__({id(NO_ROLES): ()})
        for roles in all_roles():
            found = [(handlers[kind], value) for kind, value in roles.items() if kind in handlers]
            self[id(roles)] = tuple(found)


_NAMES = frozenset({"brand", "part_number"})
_LABELS: dict[str, Handler] = {"label": identity.label}
_WORDS: dict[str, Handler] = {
    **phrases.HANDLERS,
    **bearings.HANDLERS,
    **heat.HANDLERS,
    **frame.HANDLERS,
    **rotation.HANDLERS,
    **capacitor.HANDLERS,
    **control.HANDLERS,
    **module.HANDLERS,
    **series.HANDLERS,
    **terms.HANDLERS,
    **condition.HANDLERS,
    **free_shipping.HANDLERS,
}


@cache
def _handled() -> tuple[_Handled, _Handled]:
    """Return the handlers of labels, and of all other words."""
    return _Handled(_LABELS), _Handled(_WORDS)


def read_listing(text: str, title: str = "", *, id: str = "") -> Record:  # noqa: A002 (the record's own word)
    """Read a listing; never raises, whatever the input."""
    return _record(_parts(text, title), id, title, text)


def read_plate(text: str, *, id: str = "") -> Record:  # noqa: A002
    """Read a nameplate as typed or scanned; never raises, whatever the input."""
    drawn = drawn_together(text)
    if drawn is None:
        return _record([Items(text, "text", plate=True)], id, "", text)
    read = _record([Items(drawn.text, "text", plate=True)], id, "", drawn.text)
    return put_back(read, drawn, text)


def read_beside(given: Sequence[Claim], seen: str, text: str, title: str = "", *, id: str = "") -> Record:  # noqa: A002
    """Read a listing of which labelled values were read already; never raises.

    `given` are their claims, with spans in `text`; `seen` is `text` with blanks over what gives nothing
    more, character for character.
    """
    return _record(_parts(seen, title), id, title, text, given)


def _parts(text: str, title: str) -> list[Items]:
    """Lay out title and text; without a title the first line of the text stands for one."""
    parts = [Items(title, "title")] if title else []
    parts.append(Items(text, "text"))
    parts[0].head = first_line(parts[0])
    return parts


def _record(parts: list[Items], name: str, title: str, text: str, given: Sequence[Claim] = ()) -> Record:
    for items in parts:
        _claim_all(items)
    read = [claim for items in parts for claim in items.claims]
    claims = [*_weighty(given, read), *read]
    claims += kind_of_thing(parts, claims)
    if any(items.turned for items in parts):
        claims = corrected(parts, claims)
    plate = parts[0].plate
    if not plate:
        claims = tell_apart(parts, claims)
    claims = merge_voltages(merge_frequencies(claims, plate=plate), parts)
    if plate:
        claims = merge_speeds(claims, parts[0].scan.text)
    settled, conflicts = settle(claims)
    tidy(settled, conflicts, parts)
    texts = {"title": title, "text": text}
    facts = _offer({field: value for field, (value, _) in settled.items()})
    kept = facts.model_fields_set
    return Record(
        id=name,
        facts=facts,
        where={field: _mark(texts, claim) for field, (_, claim) in settled.items() if field in kept},
        conflicts=tuple(_conflict(texts, field, against) for field, against in conflicts.items()),
        title=title,
        text=text,
    )


def _offer(facts: dict[str, object]) -> Offer:
    """Return the facts as an offer, without those that no offer can hold (a part number of 500 letters)."""
    try:
        return Offer.model_validate(facts)
    except ValidationError as error:
        refused = {str(fault["loc"][0]) for fault in error.errors()}
        return Offer.model_validate({field: value for field, value in facts.items() if field not in refused})


def _weighty(given: Sequence[Claim], read: Sequence[Claim]) -> list[Claim]:
    """Give what a label says at least the weight of anything read: they contradict each other or agree.

    A maker or a number under its label goes before any that was found elsewhere.
    """
    top: dict[str, int] = {}
    for claim in read if given else ():
        least = claim.strength + (claim.field in _NAMES)
        top[claim.field] = max(least, top.get(claim.field, 0))
    return [
        replace(claim, strength=top[claim.field]) if claim.strength < top.get(claim.field, 0) else claim
        for claim in given
    ]


def _claim_all(items: Items) -> None:
    if items.plate:
        name_speeds(items)
        stack_values(items)
        pair_columns(items)
        brand.of_plate(items)
        in_a_row(items)
        pair_labels(items)
    _dispatch(items, _handled()[0])
    loose_codes(items)
    if not any(claim.field == "brand" for claim in items.claims):
        brand.by_place(items)
    _dispatch(items, _handled()[1])
    _own_numbers(items)
    kinds = set().union(*[items.roles[i] for i in items.active])
    words = items.scan.words
    if not kinds.isdisjoint(_OF_MONEY) or "+" in words or (words and words[-1][-3:-2] == "."):
        money.money(items, one_lot="nosplit" in kinds)
    lengths(items)


def _own_numbers(items: Items) -> None:
    """Let every number find its owner, from left to right."""
    roles, used, glued, last = items.roles, items.used, items.scan.tight, items.last
    for i in items.numbers:
        if used[i] or (glued[last[i]] and frame.bare_frame(items, i)) or frame.lone_frame(items, i):
            continue
        behind = roles[i + 1]
        special = _BY_UNIT.get(behind.get("after") or behind.get("unit") or "")
        if special:
            special(items, i)
        if not used[i]:
            owner.own(items, i)


def _dispatch(items: Items, handled: _Handled) -> None:
    """Let each item's words claim: one look-up an item, then only the handlers that it has."""
    roles = items.roles
    for i in items.active:
        found = handled.get(id(roles[i]))
        if found:
            for handler, value in found:
                handler(items, i, value)


def _mark(texts: dict[str, str], claim: Claim) -> Mark:
    start, end = claim.span
    return Mark(Origin.READ, claim.source, claim.span, texts[claim.source][start:end])


def _conflict(texts: dict[str, str], field: str, claims: list[Claim]) -> Conflict:
    marks = tuple(_mark(texts, claim) for claim in claims)
    values = tuple(rotation.said_turn(claim)[0] if field == "turn" else claim.value for claim in claims)
    return Conflict(field, values, tuple(mark.said for mark in marks), marks)
