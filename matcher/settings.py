"""The figures that people may change: weights, priors, chances by condition, swap costs, rates of exchange.

Changes stand in a TOML file with the tables `[weights]`, `[priors]`, `[condition_chances]`, `[swap_costs]`
and `[exchange]`, each `name = figure`, and above them `wise_parts = true` to count in what is only wise to
replace. What it doesn't name stays as shipped.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from math import isfinite
from pathlib import Path
from types import MappingProxyType
from typing import Self, cast

from matcher import tables
from matcher.errors import BadValue, SamespinError, UnknownField, UnreadableInput
from matcher.files import read_limited

Figures = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Settings:
    """A complete and checked set of figures; never changed, only replaced.

    Raises `UnknownField` for a name that is missing or unknown, `BadValue` for a figure out of range.
    """

    weights: Figures
    """Points of each check, 0 or more."""
    priors: Figures
    """Chance (0 .. 1) that a fact which is not known matches, by check; and `same_maker_and_number`."""
    condition_chances: Figures
    """Chance (0 .. 1) that the part works, by its condition; `not_said` where the listing is silent."""
    swap_costs: Figures
    """Price (USD) of what a swap needs; `shipping_not_said` where the listing is silent."""
    wise_parts: bool = False
    """Whether landed costs count in what is only wise to replace while the motor is apart."""
    exchange: Figures = field(default_factory=dict)
    """US dollars that one unit of another currency is worth, by its code; none is shipped or looked up."""

    def __post_init__(self) -> None:
        for name, (table, column, most) in _TABLES.items():
            figures = getattr(self, name)
            _check(table, figures, shipped(table, column), most)
            object.__setattr__(self, name, MappingProxyType(dict(figures)))
        _check_exchange(self.exchange)
        object.__setattr__(self, "exchange", MappingProxyType(dict(self.exchange)))
        if not isinstance(self.wise_parts, bool):
            raise BadValue(f"wise_parts must be true or false, not {self.wise_parts!r:.60}")

    @classmethod
    def shipped(cls) -> "Settings":
        """Return the figures of the tables under `data/`."""
        return _shipped()

    @classmethod
    def load(cls, path: Path) -> "Settings":
        """Return the shipped figures with the changes of a TOML file.

        Raises `UnreadableInput` for a file that can't be read or is no TOML, `UnknownField` for a table or
        name that isn't known, `BadValue` for a figure out of range; each is one line that names the file.
        """
        changes = read_changes(path)
        try:
            return cls.shipped().with_changes(changes)
        except SamespinError as fault:
            raise type(fault)(f"{path.name}: {fault}") from None

    def changed(
        self,
        *,
        weights: Figures | None = None,
        priors: Figures | None = None,
        condition_chances: Figures | None = None,
        swap_costs: Figures | None = None,
        exchange: Figures | None = None,
        wise_parts: bool | None = None,
    ) -> Self:
        """Return these figures with some of them changed; raises as the class does."""
        return replace(
            self,
            weights={**self.weights, **(weights or {})},
            priors={**self.priors, **(priors or {})},
            condition_chances={**self.condition_chances, **(condition_chances or {})},
            swap_costs={**self.swap_costs, **(swap_costs or {})},
            exchange={**self.exchange, **(exchange or {})},
            wise_parts=self.wise_parts if wise_parts is None else wise_parts,
        )

    def with_changes(self, changes: Mapping[str, object]) -> Self:
        """Return these figures with some changed as a file or a job names them; raises as `load` does."""
        known = _known_tables(changes)
        return self.changed(**known)  # type: ignore[arg-type] # `changed` judges what stands in the tables

    def rate(self, source: str | None, target: str) -> float | None:
        """Return what one unit of `source` is worth in `target`; `None` where no rate is given.

        A currency that isn't said is taken as the target's.
        """
        if source is None or source == target:
            return 1.0
        worth = {_BASE: 1.0, **self.exchange}
        if source not in worth or target not in worth:
            return None
        return worth[source] / worth[target]


LARGEST = 2**20
"""Bytes of a file of changes."""
_BASE = "USD"
_TABLES: Mapping[str, tuple[str, str, float]] = {
    "weights": ("weights", "weight", float("inf")),
    "priors": ("priors", "chance", 1.0),
    "condition_chances": ("conditions", "chance", 1.0),
    "swap_costs": ("swap_costs", "price", float("inf")),
}
"""Field of `Settings` -> its table, the column of figures, the highest figure allowed."""


@cache
def shipped(table: str, column: str) -> Figures:
    """Return one shipped table as a mapping from its first column to its figure."""
    found = tables.rows(table)
    key = next(iter(found[0]))
    items = [(row[key], tables.number(row, column)) for row in found]
    return {str(name): figure for name, figure in tables.frozen(items, table).items()}


@cache
def _shipped() -> Settings:
    weights, priors, chances, costs = (shipped(table, column) for table, column, _ in _TABLES.values())
    return Settings(weights, priors, chances, costs)


def _check(table: str, figures: object, known: Figures, most: float) -> None:
    for name, figure in _named(table, figures).items():
        if name not in known:
            raise UnknownField(f"{table}: {name!r:.60} is no name here{_hint(name, known)}")
        if not _is_number(figure) or not 0 <= cast("float", figure) <= most:
            limit = "from 0 to 1" if most == 1 else "0 or more"
            raise BadValue(f"{table}: {name} must be a number {limit}, not {figure!r:.60}")
    missing = [name for name in known if name not in _named(table, figures)]
    if missing:
        raise UnknownField(f"{table}: {', '.join(missing)} missing; give each a figure")


def _check_exchange(rates: object) -> None:
    for code, rate in _named("exchange", rates).items():
        if not (len(code) == 3 and code.isascii() and code.isalpha() and code.isupper()):
            raise UnknownField(f"exchange: {code!r:.60} is no currency; write its three letters, such as EUR")
        if not _is_number(rate) or not cast("float", rate) > 0:
            raise BadValue(f"exchange: {code} must be US dollars above 0 for one {code}, not {rate!r:.60}")
    if _named("exchange", rates).get(_BASE, 1) != 1:
        raise BadValue(f"exchange: {_BASE} is what the others are told in, so it must stay 1")


def _named(table: str, figures: object) -> Mapping[str, object]:
    if not isinstance(figures, Mapping):
        raise BadValue(f"{table} must be a table of name = figure, not {figures!r:.60}")
    return figures


def _hint(name: str, known: Mapping[str, object]) -> str:
    from matcher.meant import meant  # only a fault pays for it

    return meant(name, known) or f"; known are {', '.join(known)}"


def _is_number(figure: object) -> bool:
    return isinstance(figure, int | float) and not isinstance(figure, bool) and isfinite(figure)


def read_changes(path: Path) -> Mapping[str, object]:
    """Return what stands in a TOML file, not judged yet. Raises `UnreadableInput`."""
    content = read_limited(path, LARGEST)
    try:
        return tomllib.loads(content.decode())
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as fault:
        raise UnreadableInput(f"{path.name}: no TOML file: {str(fault).splitlines()[0]}") from fault


def _known_tables(changes: Mapping[str, object]) -> dict[str, object]:
    """Return the changes as arguments of `changed`, which judges their figures."""
    known = (*_TABLES, "exchange", "wise_parts")
    for name, given in changes.items():
        if name not in known:
            raise UnknownField(f"{name!r:.60} is no table here{_hint(name, dict.fromkeys(known))}")
        if name != "wise_parts":
            _named(name, given)
    return dict(changes)
