"""Two windows changed one job: what each changed is taken over, the same thing changed twice is shown.

A three-way merge over leaves. `base` is what I started from, `theirs` what the store holds now, `mine`
what I want to save.
"""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import cast

from pydantic import JsonValue

from matcher.store.leaves import ABSENT, GIVEN, Leaves, Path


@dataclass(frozen=True, slots=True)
class Clash:
    """One thing that both windows changed, each differently; the store keeps `theirs`."""

    path: Path
    mine: JsonValue
    """What this window wanted to save; `None` where it took the thing away."""
    theirs: JsonValue
    """What stands in the store; `None` where the other window took the thing away."""

    @property
    def listing(self) -> str:
        """Id of the listing, or number of the offer of stock, that it belongs to; else empty."""
        return self.path[1] if self.path[0] in ("listings", "offer") else ""

    @property
    def field(self) -> str:
        """Name of the field: `"volts"`, `"place"`, `"arrival.delivered"`; empty for a whole listing."""
        rest = self.path[2:] if self.listing else self.path
        return ".".join(rest[1:] if rest and rest[0] in (*GIVEN, "corrections") else rest)


@dataclass(slots=True)
class Merged:
    """The leaves to keep, the paths whose value differs from `theirs`, and what clashed."""

    leaves: Leaves
    changed: dict[Path, object]
    """The old value of each changed path, `ABSENT` where there was none."""
    clashes: tuple[Clash, ...]


def _shown(value: object) -> JsonValue:
    return None if value is ABSENT else cast("JsonValue", value)


def same(left: object, right: object) -> bool:
    """Whether two leaves are the same.

    The type counts: JSON's `1`, `1.0` and `true` are three values, though Python calls them equal.
    """
    if type(left) is not type(right):
        return False
    if isinstance(left, (dict, list)):
        return json.dumps(left, sort_keys=True) == json.dumps(right, sort_keys=True)
    return left == right


def agree(left: object, right: object) -> bool:
    """Whether two leaves say the same; the moment at which a value was given doesn't count."""
    if isinstance(left, dict) and isinstance(right, dict) and "origin" in left and "origin" in right:
        return same({**left, "when": ""}, {**right, "when": ""})
    return same(left, right)


def differing(one: Leaves, other: Leaves) -> list[Path]:
    """Return the paths that aren't the same in both, those of `other` first."""
    paths = dict.fromkeys([*other.values, *one.values])
    return [p for p in paths if not same(one.values.get(p, ABSENT), other.values.get(p, ABSENT))]


def _near(path: Path, others: Iterable[Path]) -> Path | None:
    """Return the path among `others` that is the same, holds this one, or lies inside it."""
    for other in others:
        shorter = min(len(path), len(other))
        if path[:shorter] == other[:shorter]:
            return other
    return None


def _removed(listing: str, leaves: Leaves) -> bool:
    return ("listings", listing, "body") not in leaves.values


def _by_listing(paths: Iterable[Path]) -> dict[str, list[Path]]:
    groups: dict[str, list[Path]] = {}
    for path in paths:
        groups.setdefault(path[1] if path[0] == "listings" else "", []).append(path)
    return groups


def merge(base: Leaves, theirs: Leaves, mine: Leaves) -> Merged:
    """Lay what I changed since `base` over `theirs`; whatever both changed differently is a clash."""
    merged = Merged(Leaves(dict(theirs.values), dict(theirs.readings)), {}, ())
    my_changes = _by_listing(differing(base, mine))
    their_changes = _by_listing(differing(base, theirs)) if base is not theirs else {}
    clashes: list[Clash] = []
    for listing, paths in my_changes.items():
        others = their_changes.get(listing, [])
        if listing and others and _removed(listing, mine) != _removed(listing, theirs):
            clashes.append(_whole_listing(listing, mine, theirs))
            continue
        for path in paths:
            clash = _settle(path, others, mine, merged)
            if clash is not None:
                clashes.append(clash)
    _readings(mine, theirs, merged)
    return Merged(merged.leaves, merged.changed, tuple(clashes))


def _whole_listing(listing: str, mine: Leaves, theirs: Leaves) -> Clash:
    at: Path = ("listings", listing)
    body = (*at, "body")
    return Clash(at, mine.values.get(body), theirs.values.get(body))


def _settle(path: Path, others: list[Path], mine: Leaves, merged: Merged) -> Clash | None:
    want = mine.values.get(path, ABSENT)
    kept = merged.leaves.values
    have = kept.get(path, ABSENT)
    near = _near(path, others) if others else None
    if same(want, have) or (near is not None and agree(want, have)):
        return None
    if near is not None and path[-1:] != ("place",):
        theirs = kept.get(near, ABSENT)
        return Clash(path, _shown(want), _shown(theirs))
    merged.changed[path] = have
    if want is ABSENT:
        del kept[path]
    else:
        kept[path] = _shown(want)
    return None


def _readings(mine: Leaves, theirs: Leaves, merged: Merged) -> None:
    """Keep for each listing the reading of the very text that is kept, or none, so that it is read anew."""
    for listing in merged.leaves.listing_ids():
        body = ("listings", listing, "body")
        text = merged.leaves.values[body]
        of_it = [side.readings.get(listing) for side in (mine, theirs) if side.values.get(body) == text]
        merged.leaves.readings[listing] = next(filter(None, of_it), None)
