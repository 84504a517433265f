"""Which missing facts of the old motor and its place would change an answer.

Two ways to tell. Candidates' unknown findings name what is missing at home. And a motor is judged against
itself: it would surely fit, so whatever stays unknown there is missing on the old side.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from matcher.finding import Finding, Outcome
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.verdict import Judgement, judge

_NUMBERS = ("brand", "part_number")
_OPEN = frozenset({Outcome.UNKNOWN, Outcome.LOSS})
"""What a fact found at home may still change: an open answer, or a loss that was counted without it."""


@dataclass(frozen=True, slots=True)
class Missing:
    """One missing fact of the old motor or the site."""

    field: str
    check: str
    """The check that can't be settled without it."""
    waiting: int
    """How many candidates' answers wait for it."""
    decides: bool
    """Whether a verdict can't be given without it."""


def missing(wanted: Wanted, judgements: Iterable[Judgement]) -> tuple[Missing, ...]:
    """Return what is missing, the most telling first: what decides, then what most candidates wait for."""
    findings = [(finding, 1) for one in judgements for finding in one.findings if finding.outcome in _OPEN]
    findings += [(finding, 0) for finding in _itself(wanted).findings if finding.outcome is Outcome.UNKNOWN]
    waiting: Counter[str] = Counter()
    checks: dict[str, tuple[str, bool]] = {}
    for finding, weight in findings:
        for field in _at_home(finding, wanted, itself=not weight):
            waiting[field] += weight
            known = checks.get(field, (finding.check, False))
            checks[field] = (known[0], known[1] or finding.asks)
    found = [Missing(field, check, waiting[field], asks) for field, (check, asks) in checks.items()]
    return tuple(sorted(found, key=lambda one: (not one.decides, -one.waiting)))


def _itself(wanted: Wanted) -> Judgement:
    """Judge the old motor as if it were for sale, without its numbers, so that nothing is presumed."""
    facts = {name: value for name, value in wanted.motor.said().items() if name not in _NUMBERS}
    return judge(wanted, Record("", Offer.model_validate(facts)))


def _at_home(finding: Finding, wanted: Wanted, *, itself: bool) -> Iterator[str]:
    """Return the facts that a finding misses on the old side."""
    for question in finding.questions:
        side, _, field = question.rpartition(".")
        if side == "site" and field in Site.model_fields:
            model: Motor | Site = wanted.site
        elif (side == "old" or itself) and field in Motor.model_fields:
            model = wanted.motor
        else:
            continue
        if getattr(model, field) is None:
            yield field
