"""Sellers who correct themselves: `3/4 hp. Edit: it is 1/2 hp`, `230 not 115`, `title is wrong`.

What the correcting words bring counts, and what it contradicts is dropped. A figure that is denied in so
many words is dropped as well; a bare figure before its denial is of the same kind (`it's 230 not 115`).
"""

from collections.abc import Sequence

from matcher.reading.claim import Claim
from matcher.reading.items import Items
from matcher.reading.owner import LENGTHS
from matcher.reading.quantities import READERS
from matcher.reading.settle import agree

_QUANTITIES = {
    "hp": "power_hp",
    "v": "volts",
    "rpm": "rpm",
    "a": "amps",
    "uf": "capacitor_uf",
    "spd": "speeds",
}
_SIZES = frozenset({"shaft_diameter_in", "shaft_length_in", "body_diameter_in", "body_length_in"})
_NEVER = frozenset({"brand", "part_number", "other_numbers", "mounting", "item", "module_alone", "quantity"})
_FAR = 30  # items
_MOST = 16  # corrections; nobody makes more, and the work stays linear


def corrected(parts: Sequence[Items], claims: list[Claim]) -> list[Claim]:
    """Return the claims without those that the seller takes back, and with the figures put in their place."""
    for items in parts:
        for i in items.turned[:_MOST]:
            if items.has(i, "not"):
                claims = _denied(items, i, claims)
            elif items.said(i, "corrects") == "title":
                claims = _without_title(claims)
            else:
                claims = _put_right(items, i, claims)
    return claims


def _without_title(claims: list[Claim]) -> list[Claim]:
    """`Title is wrong`: the text counts wherever both say something."""
    told = {claim.field for claim in claims if claim.source == "text" and not claim.doubt}
    return [claim for claim in claims if claim.source != "title" or claim.field not in told]


def _put_right(items: Items, i: int, claims: list[Claim]) -> list[Claim]:
    """Drop what the first claims behind a correcting word contradict."""
    start, end = _reach(items, i)
    told: dict[str, Claim] = {}
    for claim in claims:
        here = claim.source == items.source and start <= claim.span[0] < end and not claim.doubt
        if here and claim.field not in _NEVER:
            told.setdefault(claim.field, claim)
    return [claim for claim in claims if not _is_taken_back(claim, told.get(claim.field), start)]


def _is_taken_back(old: Claim, new: Claim | None, start: int) -> bool:
    if new is None or old is new:
        return False
    before = old.span[0] < start if old.source == new.source else old.source == "title"
    return before and not agree(old, new)


def _reach(items: Items, i: int) -> tuple[int, int]:
    """Return the span that a correcting word speaks of: its sentence, or the next where it is all of it."""
    start = items.span(i, i)[0]
    segment, further = items.segment[i], True
    end = i
    for j in range(i + 1, min(len(items), i + _FAR)):
        if items.segment[j] != segment:
            if not further:
                break
            segment = items.segment[j]
        further = further and not items.word(j)[:1].isalnum()
        end = j
    return start, items.span(end, end)[1]


def _denied(items: Items, i: int, claims: list[Claim]) -> list[Claim]:
    """`not 115`: drop the claims on that figure; `230 not 115` puts another one in their place."""
    j = items.skip(i + 1, 1)
    if not items.has(j, "num"):
        return claims
    unit = items.said(j + 1, "unit") or items.said(j + 1, "after")
    gone = [claim for claim in claims if _is_figure(items, j, unit, claim)]
    if not gone:
        return claims
    kept = [claim for claim in claims if claim not in gone]
    new = _bare_before(items, i)
    field = gone[0].field
    quantity = next((name for name, of in _QUANTITIES.items() if of == field), None)
    given = READERS[quantity](items.numbers[new]) if quantity and new is not None else None
    if new is not None and field in _SIZES:
        given = {field: items.numbers[new].value}
    if new is not None and given and given.get(field) is not None:
        span, clause = items.span(new, new), items.clause[new]
        kept.append(Claim(field, given[field], items.source, span, clause, gone[0].strength))
    return kept


def _bare_before(items: Items, i: int) -> int | None:
    """Return the figure right before a denial that nothing else has claimed."""
    k = i - 1
    if items.word(k) in (",", "(", "-"):
        k -= 1
    return k if items.has(k, "num") and not items.used[k] else None


def _is_figure(items: Items, j: int, unit: str | None, claim: Claim) -> bool:
    """Say whether a claim is on the denied figure, by its unit or where nothing speaks against it."""
    number = items.numbers[j]
    if claim.field in _SIZES:
        return unit in (None, *LENGTHS) and number.value is not None and claim.value == number.value
    quantity = next((name for name, field in _QUANTITIES.items() if field == claim.field), None)
    if quantity is None or unit not in (None, quantity, quantity.upper()):
        return False
    given = READERS[quantity](number)
    return bool(given) and given is not None and given.get(claim.field) == claim.value
