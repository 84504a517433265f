"""The figures that people may change: weights, priors, chances by condition, swap costs."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from functools import cache
from math import isfinite
from types import MappingProxyType
from typing import Self

from matcher import tables
from matcher.errors import BadValue, UnknownField


@dataclass(frozen=True, slots=True)
class Settings:
    """A complete and checked set of figures; never changed, only replaced.

    Raises `UnknownField` for a name that is missing or unknown, `BadValue` for a figure out of range.
    """

    weights: Mapping[str, float]
    """Points of each check, 0 or more."""
    priors: Mapping[str, float]
    """Chance (0 .. 1) that a fact which is not known matches, by check; and `same_maker_and_number`."""
    condition_chances: Mapping[str, float]
    """Chance (0 .. 1) that the part works, by its condition; `not_said` where the listing is silent."""
    swap_costs: Mapping[str, float]
    """Price (USD) of what a swap needs; `shipping_not_said` where the listing is silent."""

    def __post_init__(self) -> None:
        for name, (table, column, most) in _TABLES.items():
            figures = getattr(self, name)
            _check(table, figures, shipped(table, column), most)
            object.__setattr__(self, name, MappingProxyType(dict(figures)))

    @classmethod
    def shipped(cls) -> "Settings":
        """Return the figures of the tables under `data/`."""
        return _shipped()

    def changed(
        self,
        *,
        weights: Mapping[str, float] | None = None,
        priors: Mapping[str, float] | None = None,
        condition_chances: Mapping[str, float] | None = None,
        swap_costs: Mapping[str, float] | None = None,
    ) -> Self:
        """Return these figures with some of them changed; raises as the class does."""
        return replace(
            self,
            weights={**self.weights, **(weights or {})},
            priors={**self.priors, **(priors or {})},
            condition_chances={**self.condition_chances, **(condition_chances or {})},
            swap_costs={**self.swap_costs, **(swap_costs or {})},
        )


_TABLES: Mapping[str, tuple[str, str, float]] = {
    "weights": ("weights", "weight", float("inf")),
    "priors": ("priors", "chance", 1.0),
    "condition_chances": ("conditions", "chance", 1.0),
    "swap_costs": ("swap_costs", "price", float("inf")),
}
"""Field of `Settings` -> its table, the column of figures, the highest figure allowed."""


@cache
def shipped(table: str, column: str) -> Mapping[str, float]:
    """Return one shipped table as a mapping from its first column to its figure."""
    found = tables.rows(table)
    key = next(iter(found[0]))
    items = [(row[key], tables.number(row, column, table)) for row in found]
    return {str(name): figure for name, figure in tables.frozen(items, table).items()}


@cache
def _shipped() -> Settings:
    return Settings(**{name: shipped(table, column) for name, (table, column, _) in _TABLES.items()})


def _check(table: str, figures: Mapping[str, float], known: Mapping[str, float], most: float) -> None:
    for name, figure in figures.items():
        if name not in known:
            meant = get_close_matches(name, known, n=1)
            hint = f"; did you mean {meant[0]}?" if meant else f"; known are {', '.join(known)}"
            raise UnknownField(f"{table}: {name!r} is no name here{hint}")
        if not _is_number(figure) or not 0 <= figure <= most:
            limit = "from 0 to 1" if most == 1 else "0 or more"
            raise BadValue(f"{table}: {name} must be a number {limit}, not {figure!r}")
    missing = [name for name in known if name not in figures]
    if missing:
        raise UnknownField(f"{table}: {', '.join(missing)} missing; give each a figure")


def _is_number(figure: object) -> bool:
    return isinstance(figure, (int, float)) and not isinstance(figure, bool) and isfinite(figure)
