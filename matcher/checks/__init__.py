"""The rules of fit: one file a check, found by its place in this folder, its name the check's name.

A check module declares `HARD`, `READS` (the facts it reads on each side, and nothing else is read),
where needed `SETTLED` (facts whose mere contradiction makes it unknown), `ASKS` (a soft check whose unknown
alone makes the verdict `ask`) and `IN_PASSING` (facts that it only looks at in special cases), and
`judge(pair)`, which returns a `Finding`, or None where the check does not apply. A check knows neither ids
nor weights.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from importlib import import_module
from pkgutil import iter_modules
from typing import cast

from matcher import tables
from matcher.finding import Finding, Outcome
from matcher.judging import saying
from matcher.judging.pair import Pair, Reads
from matcher.judging.presume import BY_NUMBER


@dataclass(frozen=True, slots=True)
class Check:
    """One check: its name, whether it is hard, what it reads, and its rule."""

    name: str
    hard: bool
    reads: Reads
    settled: Reads
    asks: bool
    """Whether an unknown of this check alone makes the verdict `ask`, though it is soft."""
    in_passing: tuple[str, ...]
    """Facts of the new motor that it only looks at in special cases; no decision waits for them."""
    rule: Callable[[Pair], Finding | None]

    def judge(self, pair: Pair) -> Finding | None:
        """Return the finding on a pair with what was presumed marked; None when it does not apply."""
        found = self.settle(pair)
        if found is not None and (pair.presumed_old or pair.presumed_new):
            return self._marked(found, pair)
        return found

    def settle(self, pair: Pair) -> Finding | None:
        """Return the finding as `judge` does, of equal figures, but without words on what was presumed."""
        found = self.rule(pair)
        if found is not None and (pair.contradicted_old or pair.contradicted_new):
            return self._unsettled(found, pair)
        return found

    def _unsettled(self, found: Finding, pair: Pair) -> Finding:
        """Turn an answer that rests on a contradicted fact into unknown; a fail stays a fail.

        A soft check's known loss stays too: it beats a half that isn't known.
        """
        old = [name for name in self.settled.old if name in pair.contradicted_old]
        new = [name for name in self.settled.new if name in pair.contradicted_new]
        final = (Outcome.FAIL,) if found.hard else (Outcome.FAIL, Outcome.LOSS)
        if not (old or new) or found.outcome in final:
            return found
        side = "listing" if new else "old plate"
        names = saying.both(saying.fact(name) for name in new or old)
        return replace(
            found,
            outcome=Outcome.UNKNOWN,
            loss=0.0,
            at_best_poor=False,
            asks=found.hard or self.asks,
            needs=(),
            why=f"The {side} says the {names} twice and differently. Ask which one is true.",
            questions=(*new, *(f"old.{name}" for name in old), *found.questions),
        )

    def _marked(self, found: Finding, pair: Pair) -> Finding:
        """Say which of the facts behind a finding were presumed, and why."""
        old = {name: pair.presumed_old[name] for name in self.reads.old if name in pair.presumed_old}
        new = {name: pair.presumed_new[name] for name in self.reads.new if name in pair.presumed_new}
        if not old and not new:
            return found
        presumed = tuple(dict.fromkeys((*found.presumed, *old, *new)))
        photo = ("plate_photo",) if BY_NUMBER in new.values() else ()
        why = " ".join([found.why, *_presumptions("", new), *_presumptions(" of the old one", old)])
        return replace(found, why=why, presumed=presumed, questions=(*photo, *found.questions))


def _presumptions(whose: str, reasons: Mapping[str, str]) -> list[str]:
    """Say what was presumed, one sentence for each reason."""
    named = {
        reason: saying.both(saying.fact(name) for name in reasons if reasons[name] == reason)
        for reason in dict.fromkeys(reasons.values())
    }
    return [f"Presumed{whose}, {reason}: {names}." for reason, names in named.items()]


def _check(name: str) -> Check:
    module = import_module(f"{__name__}.{name}")
    return Check(
        name=name,
        hard=cast("bool", module.HARD),
        reads=cast("Reads", module.READS),
        settled=cast("Reads", getattr(module, "SETTLED", Reads())),
        asks=cast("bool", getattr(module, "ASKS", False)),
        in_passing=cast("tuple[str, ...]", getattr(module, "IN_PASSING", ())),
        rule=cast("Callable[[Pair], Finding | None]", module.judge),
    )


def _place(check: Check) -> tuple[bool, int, str]:
    order = [row["check"] for row in tables.rows("weights")]
    known = order.index(check.name) if check.name in order else len(order)
    return not check.hard, known, check.name


CHECKS: tuple[Check, ...] = tuple(
    sorted((_check(found.name) for found in iter_modules(__path__)), key=_place)
)
"""All checks, hard ones first, then as in `data/weights.tsv`; a new file in this folder joins by itself."""
BY_NAME: Mapping[str, Check] = {check.name: check for check in CHECKS}
