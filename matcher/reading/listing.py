"""Read one listing or one plate: cut, lay out, let every word claim, settle."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from matcher.motor import OFFER_FIELDS, Offer
from matcher.reading import (
    brand,
    capacitor,
    control,
    identity,
    module,
    money,
    owner,
    phrases,
    rotation,
    terms,
)
from matcher.reading.columns import pair_columns
from matcher.reading.dimension import lengths
from matcher.reading.dual import merge_frequencies
from matcher.reading.items import Claim, Items
from matcher.reading.settle import Contradicted, Settled, settle
from matcher.reading.thing import kind_of_thing
from matcher.record import Conflict, Mark, Origin, Record

GIVEN = -2
"""The clause of claims that a label made, outside the running text."""

Handler = Callable[[Items, int, str], None]

_LABELS: dict[str, Handler] = {"label": identity.label}
_WORDS: dict[str, Handler] = {
    **phrases.HANDLERS,
    **rotation.HANDLERS,
    **capacitor.HANDLERS,
    **control.HANDLERS,
    **module.HANDLERS,
    **terms.HANDLERS,
    **money.HANDLERS,
}
_OF_PARTS = frozenset(
    [
        "item",
        "brand",
        "part_number",
        "other_numbers",
        "price",
        "currency",
        "shipping",
        "condition",
        "return_days",
        "return_shipping",
        "restocking_pct",
        "warranty_days",
        "quantity",
        "seller_rating_pct",
    ]
)


def read_listing(text: str, title: str = "", *, id: str = "") -> Record:  # noqa: A002 (the record's own word)
    """Read a listing; never raises, whatever the input."""
    parts = [Items(title, "title")] if title else []
    parts.append(Items(text, "text"))
    return _record(parts, id, title, text)


def read_plate(text: str, *, id: str = "") -> Record:  # noqa: A002
    """Read a nameplate as typed or scanned; never raises, whatever the input."""
    return _record([Items(text, "text", plate=True)], id, "", text)


def read_beside(given: Sequence[Claim], seen: str, text: str, title: str = "", *, id: str = "") -> Record:  # noqa: A002
    """Read a listing of which labelled values were read already; never raises.

    `given` are their claims, with spans in `text`; `seen` is `text` with blanks over what gives nothing
    more, character for character.
    """
    parts = [Items(title, "title")] if title else []
    parts.append(Items(seen, "text"))
    return _record(parts, id, title, text, given)


def _record(parts: list[Items], name: str, title: str, text: str, given: Sequence[Claim] = ()) -> Record:
    for items in parts:
        _claim_all(items)
    read = [claim for items in parts for claim in items.claims]
    claims = [*_weighty(given, read), *read]
    claims += kind_of_thing(parts, claims)
    if parts[0].plate:
        claims = merge_frequencies(claims)
    settled, conflicts = settle(claims)
    _tidy(settled, conflicts, parts)
    texts = {"title": title, "text": text}
    facts = {field: settled[field][0] for field in OFFER_FIELDS if field in settled}
    return Record(
        id=name,
        facts=Offer.model_validate(facts),
        where={field: _mark(texts, settled[field][1]) for field in facts},
        conflicts=tuple(_conflict(texts, field, against) for field, against in conflicts.items()),
        title=title,
        text=text,
    )


def _weighty(given: Sequence[Claim], read: Sequence[Claim]) -> list[Claim]:
    """Give what a label says at least the weight of anything read: they contradict each other or agree."""
    top: dict[str, int] = {}
    for claim in read if given else ():
        top[claim.field] = max(claim.strength, top.get(claim.field, 0))
    return [
        replace(claim, strength=top[claim.field]) if claim.strength < top.get(claim.field, 0) else claim
        for claim in given
    ]


def _claim_all(items: Items) -> None:
    if items.plate:
        pair_columns(items)
        brand.of_plate(items)
    _dispatch(items, _LABELS)
    identity.loose_codes(items)
    if not any(claim.field == "brand" for claim in items.claims):
        brand.by_place(items)
    _dispatch(items, _WORDS)
    for i in items.numbers:
        if not phrases.bare_frame(items, i):
            module.pins(items, i)
            terms.days(items, i)
            phrases.celsius(items, i)
            owner.own(items, i)
    money.money(items)
    lengths(items)


def _dispatch(items: Items, handlers: dict[str, Handler]) -> None:
    for i in items.active:
        for kind, value in items.roles[i].items():
            handler = handlers.get(kind)
            if handler:
                handler(items, i, value)


def _tidy(settled: Settled, conflicts: Contradicted, parts: list[Items]) -> None:
    """Keep to what the contract says of fields that hang together."""
    if "turn" in conflicts:
        settled.pop("seen_from", None)
    if settled.get("item", ("",))[0] == "part":
        _keep(settled, _OF_PARTS)
        for field in [field for field in conflicts if field not in _OF_PARTS]:
            del conflicts[field]
    if (
        settled.get("hertz", ("",))[0] == "50/60"
        and "speeds" in settled
        and settled["speeds"][1].strength == 0
    ):
        del settled["speeds"]  # one speed at each frequency
    if "rpm_range" in settled:
        settled.pop("rpm", None)
        conflicts.pop("rpm", None)
    if (
        settled.get("motor_type", ("",))[0] == "ecm_torque"
        and "control_signal" not in settled
        and "control_signal" not in conflicts
    ):
        settled["control_signal"] = ("taps_24v", settled["motor_type"][1])
    if (
        settled.get("module", ("",))[0] == "module_only"
        and "module_number" not in settled
        and "part_number" in settled
    ):
        settled["module_number"] = settled.pop("part_number")
    if settled.get("item", ("",))[0] == "module":
        settled.pop("power_hp", None)  # the motor's that it drives
    if len({claim.source for claim in conflicts.get("shaft_position", ())}) == 1:
        del conflicts["shaft_position"]  # `shaft down or horizontal`: no one position
    if not _is_electronic(settled, parts):
        _drop_electronics(settled, conflicts)
    if "other_numbers" in settled:
        own = settled.get("part_number", ("",))[0]
        others = tuple(number for number in settled["other_numbers"][0] if number != own)  # type: ignore[attr-defined]
        settled["other_numbers"] = (others, settled["other_numbers"][1])
        if not others:
            del settled["other_numbers"]


def _drop_electronics(settled: Settled, conflicts: Contradicted) -> None:
    """Words that could speak of a module or its control don't, where nothing else is electronic."""
    for field in ("module", "control_signal"):
        if field in settled and settled[field][1].clause == GIVEN:
            continue  # a label of its own said it
        settled.pop(field, None)
        conflicts.pop(field, None)


def _is_electronic(settled: Settled, parts: list[Items]) -> bool:
    """Say whether anything speaks for an electronically commutated motor; `motor only` alone doesn't."""
    return (
        str(settled.get("motor_type", ("",))[0]).startswith("ecm")
        or not settled.keys().isdisjoint({"program_number", "module_number", "rpm_range"})
        or any("module" in roles for items in parts for roles in items.roles)
        or ("module" not in settled and settled.get("control_signal", ("",))[0] != "thermostat")
    )


def _keep(settled: Settled, fields: Iterable[str]) -> None:
    for field in [field for field in settled if field not in set(fields)]:
        del settled[field]


def _mark(texts: dict[str, str], claim: Claim) -> Mark:
    return Mark(Origin.READ, claim.source, claim.span, texts[claim.source][slice(*claim.span)])


def _conflict(texts: dict[str, str], field: str, claims: list[Claim]) -> Conflict:
    marks = tuple(_mark(texts, claim) for claim in claims)
    values = tuple(claim.value[0] if field == "turn" else claim.value for claim in claims)  # type: ignore[index]
    return Conflict(field, values, tuple(mark.said for mark in marks), marks)
