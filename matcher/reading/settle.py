"""Turn all claims on a field into one value, or a conflict, as the contract settles it."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from matcher.reading.claim import Claim
from matcher.reading.rotation import settle_turn

Settled = dict[str, tuple[object, Claim]]
Contradicted = dict[str, list[Claim]]

_SHAFTS = frozenset({"shaft_diameter_in"})
_JOINED = frozenset({"mounting", "plug_pins", "other_numbers"})
_SHAPED = _JOINED | {"turn"}  # what one claim gives isn't yet the value
_FIRST = frozenset({"brand", "part_number", "module_number", "lead_length_in"})
_WEAK_COUNTS = frozenset({"volts", "rpm"})  # a bare `208-230` may be fuller than a titled `230 V`
_JOINT = 5
"""Characters between the members of one list: `1725 rpm and 1140 rpm`."""
_RANK = ("for_parts", "rebuilt", "open_box", "used_tested", "used")
_ECM = ("ecm_torque", "ecm_airflow")


def settle(claims: Sequence[Claim]) -> tuple[Settled, Contradicted]:
    """Return the settled value of each field with the claim that says it, and the contradicting claims."""
    by_field: dict[str, list[Claim]] = {}
    unsure: dict[str, list[Claim]] = {}
    for claim in claims:
        where = unsure if claim.doubt else by_field
        if claim.field in where:
            where[claim.field].append(claim)
        else:
            where[claim.field] = [claim]
    settled: Settled = {}
    conflicts: Contradicted = {}
    for field, found in by_field.items():
        if len(found) == 1 and field not in _SHAPED:
            settled[field] = (found[0].value, found[0])
        else:
            _settle_field(field, found, settled, conflicts)
    for field, found in unsure.items():
        _doubt(field, found, settled, conflicts)
    return settled, conflicts


def _settle_field(field: str, claims: list[Claim], settled: Settled, conflicts: Contradicted) -> None:
    if field == "turn":
        facts, against = settle_turn(claims)
        settled.update(facts)
    else:
        top = 0 if field in _WEAK_COUNTS else max([claim.strength for claim in claims])
        strongest = [claim for claim in claims if claim.strength >= top]
        value, told, against = _RULES.get(field, _one)(strongest)
        if not against and told:
            settled[field] = (value, told)
    if against:
        conflicts[field] = against


def _doubt(field: str, claims: list[Claim], settled: Settled, conflicts: Contradicted) -> None:
    """A seller who wavers between two values, or doubts the title, makes a conflict.

    One doubted value gives nothing, and none stands against what the text says without doubt.
    """
    wavering = [claim for claim in claims if claim.doubt == "words"]
    if field in _FIRST or field in _JOINED or not wavering:
        return
    known = [settled[field][1]] if field in settled and settled[field][1].source == "title" else []
    _, _, against = _RULES.get(field, _one)([*known, *wavering]) if field != "turn" else (None, None, [])
    if against:
        conflicts[field] = against
        settled.pop(field, None)


def agree(one: Claim, two: Claim) -> bool:
    """Say whether two claims on one field can both be true."""
    if one.field == "turn":
        return not settle_turn([one, two])[1]
    return not _RULES.get(one.field, _one)([one, two])[2]


Answer = tuple[object, Claim | None, list[Claim]]


def _one(claims: list[Claim]) -> Answer:
    """All must agree; numbers within 2 % (shafts within 0.005 in) do, and the more exact one counts."""
    best = claims[0]
    for claim in claims[1:]:
        if not _agree(best.value, claim.value, claim.field):
            return None, None, [best, claim]
        best = _more_exact(best, claim)
    return best.value, best, []


def _agree(one: object, two: object, field: str) -> bool:
    if isinstance(one, float) and isinstance(two, (int, float)):
        close = 0.005 if field in _SHAFTS else 0.02 * max(abs(one), abs(two))
        return abs(one - two) <= close
    return one == two


def _more_exact(one: Claim, two: Claim) -> Claim:
    """Return the claim whose figure has more digits."""
    return two if len(str(two.value)) > len(str(one.value)) else one


def _first(claims: list[Claim]) -> Answer:
    """Names and numbers: the first one in the text counts, else the title's."""
    best = min(claims, key=lambda claim: (claim.source == "title", claim.span))
    return best.value, best, []


def _joined(claims: list[Claim]) -> Answer:
    """Lists that several places add to."""
    values: list[object] = []
    for claim in claims:
        more = claim.value if isinstance(claim.value, tuple) else (claim.value,)
        values += [value for value in more if value not in values]
    return tuple(values), claims[0], []


def _volts(claims: list[Claim]) -> Answer:
    """`230` against `208-230` is one fact, the fuller counts."""
    best = claims[0]
    for claim in claims[1:]:
        one, two = str(best.value), str(claim.value)
        if _covers(one, two):
            continue
        if _covers(two, one):
            best = claim
        else:
            return None, None, [best, claim]
    return best.value, best, []


def _covers(full: str, part: str) -> bool:
    return set(_figures(part)) <= set(_figures(full)) or (
        all(
            any(low * 0.9 <= figure <= high * 1.1 for low, high in _ranges(full)) for figure in _figures(part)
        )
        and len(_figures(part)) <= len(_figures(full))
        and len(_ranges(part)) <= len(_ranges(full))
        and "-" in full
    )


def _figures(volts: str) -> list[float]:
    return [float(figure) for figure in volts.replace("-", "/").split("/")]


def _ranges(volts: str) -> list[tuple[float, float]]:
    return [(float(rating.split("-")[0]), float(rating.split("-")[-1])) for rating in volts.split("/")]


def _fuller_list(claims: list[Claim]) -> Answer:
    """rpm, amps: a list that holds the other one counts."""
    best = claims[0]
    for claim in claims[1:]:
        one, two = best.value, claim.value
        if not isinstance(one, tuple) or not isinstance(two, tuple):
            return _one(claims)
        if _within(two, one):
            fresher = claim.source == "text" and best.source == "title" and _digits(two) == _digits(one)
            if len(one) == len(two) and (_digits(two) > _digits(one) or fresher):
                best = claim
            continue
        if claim.source == best.source and 0 <= claim.span[0] - best.span[1] <= _JOINT:
            both = tuple(sorted({*one, *two}, reverse=True))
            best = replace(best, value=both, span=(best.span[0], claim.span[1]))
            continue
        if _within(one, two):
            best = claim
        else:
            return None, None, [best, claim]
    return best.value, best, []


def _digits(values: tuple[float, ...]) -> int:
    """Count the figures that aren't trailing noughts: 1390 says more than 1400."""
    return sum(len(f"{value:g}".rstrip("0")) for value in values)


def _within(part: tuple[float, ...], whole: tuple[float, ...]) -> bool:
    return all(any(abs(value - other) <= 0.02 * other for other in whole) for value in part)


def _frame(claims: list[Claim]) -> Answer:
    """`56 frame` in a title, `56C` on the tag: the fuller one counts."""
    best = max(claims, key=lambda claim: len(str(claim.value)))
    against = next((claim for claim in claims if not str(best.value).startswith(str(claim.value))), None)
    return (best.value, best, []) if against is None else (None, None, [best, against])


def _position(claims: list[Claim]) -> Answer:
    """`Shaft up or shaft down or sideways, it is marked all position`: any of them."""
    return _one([claim for claim in claims if claim.value == "any"] or claims)


def _hertz(claims: list[Claim]) -> Answer:
    both = [claim for claim in claims if claim.value == "50/60"]
    return _one(both or claims)


def _condition(claims: list[Claim]) -> Answer:
    """`used, tested` is used_tested, `used, for parts` is for_parts; new against used is a conflict."""
    said = {claim.value: claim for claim in reversed(claims)}
    if {"new", "open_box"} <= said.keys() and said["new"].source != said["open_box"].source:
        return None, None, [said["new"], said["open_box"]]
    if "new" in said and len(said) > 1:
        other = next(claim for value, claim in said.items() if value != "new")
        against = next((said[value] for value in ("used", "for_parts", "rebuilt") if value in said), None)
        if against:
            return None, None, [said["new"], against]
        if other.value == "used_tested":
            return "new", said["new"], []
    for value in (*_RANK, "new"):
        if value in said:
            return value, said[value], []
    return None, None, []


def _motor_type(claims: list[Claim]) -> Answer:
    """`ecm` beside an exact kind of it is the exact one."""
    exact = [claim for claim in claims if claim.value in _ECM]
    if exact and all(claim.value in (*_ECM, "ecm") for claim in claims):
        return _one(exact)
    return _one(claims)


_RULES: dict[str, Callable[[list[Claim]], Answer]] = {
    **dict.fromkeys(_FIRST, _first),
    **dict.fromkeys(_JOINED, _joined),
    "volts": _volts,
    "rpm": _fuller_list,
    "amps": _fuller_list,
    "frame": _frame,
    "hertz": _hertz,
    "shaft_position": _position,
    "condition": _condition,
    "motor_type": _motor_type,
}
