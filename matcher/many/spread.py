"""Answers spread back over pairs: a few array operations for each old motor, whatever the rules say."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import cast

import numpy as np

from matcher.checks import CHECKS, Check
from matcher.many.columns import Codes, Pile
from matcher.many.groups import (
    Answers,
    Flags,
    New,
    Old,
    answers,
    group_new,
    group_old,
    relation_codes,
    relations_of,
)
from matcher.money.chance import NOT_SAID, fit_chance
from matcher.money.cost import cost_of, needs_cost, needs_mask
from matcher.motor import Wanted
from matcher.settings import Settings
from matcher.tally import ASK, PART, Counted, Points, Tally, tally
from matcher.verdict import MODULE_CHECKS, judge, tally_of


@dataclass(frozen=True, slots=True)
class Row:
    """One old motor against some candidates of a pile: arrays in the order of `places`."""

    places: Codes
    tally: Tally
    chance: Points
    landed: Points
    """NaN where the listing names no price."""


@dataclass(frozen=True, slots=True)
class _Layer:
    """One check with its answers for all groups of both sides."""

    check: Check
    new: New
    old: Old
    answers: Answers
    relations: tuple[str, ...]

    def places(self, old: int, candidates: Codes, related: dict[str, Codes]) -> Codes:
        """Return where in the answers each candidate's one lies."""
        at = int(self.old.group[old]) * len(self.new.first) + self.new.group[candidates]
        for name in self.relations:
            at = at * 3 + related[name][candidates]
        return at


class Spread:
    """All checks called once for each distinct combination, ready for any of the old motors."""

    def __init__(self, wanted: Sequence[Wanted], pile: Pile, settings: Settings) -> None:
        self.wanted, self.pile, self.settings = wanted, pile, settings
        self._layers = [self._layer(check) for check in CHECKS]

    def _layer(self, check: Check) -> _Layer:
        new, old = group_new(check, self.pile), group_old(check, self.wanted)
        return _Layer(check, new, old, answers(check, self.wanted, old, self.pile, new), relations_of(check))

    def row(self, old: int, *, prune: bool = False) -> Row:
        """Return one old motor's row; with `prune` candidates that a hard check excludes are left out."""
        places = np.arange(len(self.pile))
        related = self._related(old)
        if prune:
            places = self._not_excluded(old, related)
        counted, asks, needs = self._counted(old, places, related)
        chance = self._chance(counted, asks, places)
        row = Row(places, counted, chance, self._landed(needs, places))
        self._one_by_one(old, row)
        return row

    def _related(self, old: int) -> dict[str, Codes]:
        names = dict.fromkeys(name for layer in self._layers for name in layer.relations)
        return {name: relation_codes(name, self.wanted[old].motor, self.pile) for name in names}

    def _not_excluded(self, old: int, related: dict[str, Codes]) -> Codes:
        """Return the candidates that no hard check fails, and those of equal number, which it can't tell."""
        places = np.arange(len(self.pile))
        alike = np.isin(places, self.pile.same_number(self.wanted[old].motor))
        for layer in self._layers:
            if layer.check.hard:
                fails = (
                    layer.answers.fails.take(layer.places(old, places, related))
                    & self._applies(layer, old)[places]
                )
                places = places[~fails | alike[places]]
        return places

    def _applies(self, layer: _Layer, old: int) -> Flags:
        """Tell for each candidate whether a check takes part: a module alone is judged by some only."""
        if layer.check in MODULE_CHECKS or self.wanted[old].site.motor_health != "good":
            return np.ones(len(self.pile), bool)
        return ~self._module_alone

    @cached_property
    def _module_alone(self) -> Flags:
        column, implied = self.pile.column("module"), self.pile.kinds
        said = np.array([value == "module_only" for value in column.values])[column.codes]
        alone = ("module", "module_only")
        presumed = [alone in cast("tuple[object, ...]", one) for one in implied.values]
        return np.asarray(said | np.array(presumed)[implied.codes])

    @cached_property
    def _part(self) -> Flags:
        column = self.pile.column("item")
        return np.array([value == "part" for value in column.values])[column.codes]

    def _counted(
        self, old: int, places: Codes, related: dict[str, Codes]
    ) -> tuple[Tally, dict[str, Flags], Codes]:
        counted: list[Counted] = []
        needs = np.zeros(len(places), np.int64)
        motors = ~self._part[places]
        for layer in self._layers:
            at = layer.places(old, places, related)
            takes_part = self._applies(layer, old)[places] & motors
            counted.append(
                _only(layer.answers.counted(self.settings.weights[layer.check.name], at), takes_part)
            )
            needs |= np.where(takes_part, layer.answers.needs.take(at), 0)
        whole = tally(counted)
        asks = {layer.check.name: one.asks for layer, one in zip(self._layers, counted, strict=True)}
        return _without_parts(whole, ~motors), asks, needs

    def _chance(self, whole: Tally, asks: dict[str, Flags], places: Codes) -> Points:
        chance = np.ones(len(places))
        for name, asked in asks.items():
            if asked.any():
                chance = chance * np.where(asked, self.settings.priors[name], 1.0)
        chance = chance * self._works[places]
        return np.where(whole.verdict <= ASK, chance, 0.0)

    @cached_property
    def _works(self) -> Points:
        column = self.pile.column("condition")
        chances = [self.settings.condition_chances[str(value or NOT_SAID)] for value in column.values]
        return np.array(chances)[column.codes]

    @cached_property
    def _without_needs(self) -> Points:
        """Price and shipping of each candidate, from the same lines that serve one."""
        costs = [cost_of(record.facts, 0, self.settings) for record in self.pile.records]
        return np.array([cost.landed if cost else np.nan for cost in costs])

    def _landed(self, needs: Codes, places: Codes) -> Points:
        masks, inverse = np.unique(needs, return_inverse=True)
        prices = np.array([needs_cost(int(mask), self.settings) for mask in masks])
        landed: Points = self._without_needs[places] + prices[inverse]
        return landed

    def _one_by_one(self, old: int, row: Row) -> None:
        """Put in what single judging says of candidates whose maker and number equal the old motor's."""
        for place in self.pile.same_number(self.wanted[old].motor):
            at = int(np.searchsorted(row.places, place))
            record = self.pile.records[place]
            if record.facts.item == "part":
                continue
            judgement = judge(self.wanted[old], record, self.settings)
            alone = tally_of(judgement.findings, self.settings)
            for name in ("score", "low", "high", "verdict"):
                getattr(row.tally, name)[at] = getattr(alone, name)
            row.chance[at] = fit_chance(judgement, record.facts.condition, self.settings)
            row.landed[at] = self._without_needs[place] + needs_cost(
                needs_mask(judgement.findings), self.settings
            )


def _only(one: Counted, takes_part: Flags) -> Counted:
    """Return what a check adds, nothing where it takes no part."""
    if takes_part.all():
        return one
    return Counted(
        one.weight,
        np.where(takes_part, one.loss, 0.0),
        one.weighs & takes_part,
        one.open & takes_part,
        one.fails & takes_part,
        one.poor & takes_part,
        one.asks & takes_part,
    )


def _without_parts(whole: Tally, part: Flags) -> Tally:
    if not part.any():
        return whole
    score, low, high = (np.where(part, np.nan, points) for points in (whole.score, whole.low, whole.high))
    return Tally(score, low, high, np.where(part, PART, whole.verdict).astype(np.int8))
