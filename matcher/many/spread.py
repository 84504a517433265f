"""Answers spread back over pairs: a few array operations for each old motor, whatever the rules say."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from matcher.checks import CHECKS
from matcher.judging.presume import prepare
from matcher.many.book import NO_ENTRY, RELATED, Book, OldSide, relation_codes
from matcher.many.codes import Codes, distinct
from matcher.many.columns import Block
from matcher.money.chance import all_well, chance_of, doubts, row_of_condition
from matcher.money.cost import SHIPPING, comes_apart, landed_cost, needs_cost, needs_mask, wise_mask
from matcher.motor import Motor, Wanted
from matcher.settings import Settings
from matcher.tally import ASK, LAST_USEFUL, PART, POOR, WONT_FIT, Counted, Points, Tally, tally
from matcher.trade.numbers import compact, same_brand
from matcher.verdict import (
    MODULE_CHECKS,
    findings_of,
    is_module_for_good_motor,
    is_no_motor,
    presumed_by_number,
    tally_of,
)

Flags = npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Row:
    """One old motor against some candidates of a block: arrays in the order of `places`."""

    places: Codes
    """Places in the block."""
    tally: Tally
    chance: Points
    landed: Points
    """NaN where the listing names no price."""


class Spread:
    """Some old motors with a book for each check, ready for any candidates and any settings."""

    def __init__(self, wanted: Sequence[Wanted]) -> None:
        self.wanted = wanted
        sides = [OldSide.of(one) for one in wanted]
        self._books = [Book(check, sides) for check in CHECKS]

    def row(self, old: int, block: Block, settings: Settings, *, worst: int = PART) -> Row:
        """Return one old motor's row.

        Only candidates whose verdict is no worse than `worst`, a place in `VERDICT_ORDER`, must be in it:
        a check that rules more out ends the work on the others early.
        """
        return _RowMaker(self.wanted[old], old, self._books, block, settings).row(worst)


@dataclass
class _RowMaker:
    """The work on one row; `places` shrinks as checks rule candidates out."""

    wanted: Wanted
    old: int
    books: Sequence[Book]
    block: Block
    settings: Settings

    def __post_init__(self) -> None:
        self.places: Codes = np.arange(len(self.block))
        self.entries: dict[str, Codes] = {}
        self.related = {name: relation_codes(name, self.wanted.motor, self.block) for name in RELATED}

    def row(self, worst: int) -> Row:
        if worst < PART:
            self._keep(~self.part)
        # Hard ones first, those with few answers before those with many: they rule out at little cost.
        for book in sorted(self.books, key=lambda book: (not book.check.hard, book.size)):
            self._answer(book, worst)
        counted, needs = self._counted()
        whole = _without_parts(tally(counted), self.part[self.places])
        row = Row(self.places, whole, self._chance(whole, counted), self._landed(needs, self.places))
        self._one_by_one(row)
        return row

    def _answer(self, book: Book, worst: int) -> None:
        """Take down the answers of a check and drop the candidates that they rule out."""
        found = book.answers(self.old, self.block, self.places, self.related)
        silent = self.part
        if book.check not in MODULE_CHECKS:
            silent = silent | self.module_alone
        found = np.where(silent[self.places], NO_ENTRY, found)
        self.entries[book.check.name] = found
        ruled_out = np.zeros(len(found), bool)
        for limit, figure in ((WONT_FIT, "fails"), (POOR, "poor"), (ASK, "asks")):
            if worst < limit:
                ruled_out |= book.figure(figure, found)
        if ruled_out.any():
            self._keep(~ruled_out | self.alike[self.places])

    def _keep(self, kept: Flags) -> None:
        self.places = self.places[kept]
        self.entries = {name: found[kept] for name, found in self.entries.items()}

    @cached_property
    def part(self) -> Flags:
        return self.block.columns["item"].told(is_no_motor)

    @cached_property
    def module_alone(self) -> Flags:
        """Tell which candidates are a module alone, judged by a module's checks only."""

        def alone(module: str | None) -> bool:
            return is_module_for_good_motor(module, self.wanted.site.motor_health)

        presumed = self.block.kinds.told(lambda implied: alone(dict(implied).get("module")))
        return self.block.columns["module"].told(alone) | presumed

    @cached_property
    def alike(self) -> Flags:
        """Tell which candidates have the old motor's maker and number: they are judged one by one."""
        return same_number(self.wanted.motor, self.block) & ~self.part

    def _counted(self) -> tuple[list[Counted], Codes]:
        counted = []
        needs = np.zeros(len(self.places), np.int64)
        for book in self.books:
            found = self.entries[book.check.name]
            counted.append(book.counted(self.settings.weights[book.check.name], found))
            needs |= book.figure("needs", found)
        return counted, needs

    def _chance(self, whole: Tally, counted: Sequence[Counted]) -> Points:
        priors, works = self.settings.priors, self.settings.condition_chances
        in_doubt = [
            np.where(one.asks, priors[book.check.name], 1.0)
            for book, one in zip(self.books, counted, strict=True)
            if one.asks.any()
        ]
        conditions = self.block.columns["condition"]
        of_each = np.array([works[row_of_condition(condition)] for condition in conditions.values])
        chance = all_well(in_doubt, of_each[conditions.codes[self.places]])
        return np.where(whole.verdict <= LAST_USEFUL, chance, 0.0)

    def _landed(self, needs: Codes, places: Codes) -> Points:
        """Return the landed costs at `places`; each set of needs is priced once."""
        masks = needs | np.where(self.apart[places], wise_mask(self.settings), 0)
        groups = distinct(masks)
        extras = np.array([needs_cost(mask, self.settings) for mask in masks[groups.first].tolist()])
        shipping = self.block.shipping[places]
        said = np.where(np.isnan(shipping), self.settings.swap_costs[SHIPPING], shipping)
        landed: Points = landed_cost(self.block.price[places], said, extras[groups.of])
        return landed

    @cached_property
    def apart(self) -> Flags:
        """Tell for which candidates the old motor comes apart."""
        modules, items = self.block.columns["module"], self.block.columns["item"]
        table = [[comes_apart(module, item) for item in items.values] for module in modules.values]
        return np.array(table, dtype=bool)[modules.codes, items.codes]

    def _one_by_one(self, row: Row) -> None:
        """Put in what single judging says of candidates whose maker and number equal the old motor's."""
        for at in np.flatnonzero(self.alike[row.places]).tolist():
            record = self.block.records[row.places[at]]
            pair = prepare(self.wanted, record)
            findings = findings_of(pair, self.settings)
            alone = tally_of(findings, self.settings)
            for name in ("score", "low", "high", "verdict", "minds"):
                getattr(row.tally, name)[at] = getattr(alone, name)
            open_ones = doubts(findings, presumed=bool(presumed_by_number(pair)))
            chance = chance_of(open_ones, record.facts.condition, self.settings)
            row.chance[at] = chance if alone.verdict <= LAST_USEFUL else 0.0
            needs = np.array([needs_mask(findings)])
            row.landed[at] = self._landed(needs, row.places[at : at + 1])[0]


def same_number(old: Motor, block: Block) -> Flags:
    """Tell which candidates have an old motor's maker and number, as the rules compare them."""
    alike = np.zeros(len(block), bool)
    codes = block.numbered.get(compact(old.part_number or ""), [])
    if codes:
        alike = np.isin(block.columns["part_number"].codes, codes)
        alike &= block.columns["brand"].told(lambda said: same_brand(old.brand, said) is True)
    return alike


def _without_parts(whole: Tally, part: Flags) -> Tally:
    if not part.any():
        return whole
    score, low, high = (np.where(part, np.nan, points) for points in (whole.score, whole.low, whole.high))
    verdict = np.where(part, PART, whole.verdict).astype(np.int8)
    return Tally(score, low, high, verdict, np.where(part, 0, whole.minds).astype(np.int8))
