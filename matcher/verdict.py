"""From findings to a score, its range, a verdict, and what to ask; the sums stand in `tally.py`."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isnan

from matcher.checks import CHECKS
from matcher.finding import Finding, Outcome, Verdict
from matcher.judging.asking import Question, questions
from matcher.judging.deciding import deciding, minds, reason
from matcher.judging.pair import Pair
from matcher.judging.presume import BY_NUMBER, prepare
from matcher.judging.resemblance import resemblances
from matcher.judging.saying import both, cut, fact
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.tally import LAST_USEFUL, VERDICT_ORDER, VERDICTS, Counted, Points, Tally, tally

FITTING = frozenset({Verdict.FITS, Verdict.FITS_WITH_WORK})
"""Verdicts of candidates that can go in."""
USELESS = frozenset(VERDICT_ORDER[LAST_USEFUL + 1 :])
"""Verdicts of candidates that nobody should buy; None is a part that is no motor."""
_OF_A_MODULE = frozenset({"voltage", "phase", "frequency", "drive", "hazard", "connector", "module"})
MODULE_CHECKS = tuple(check for check in CHECKS if check.name in _OF_A_MODULE)


@dataclass(frozen=True, slots=True)
class Judgement:
    """Everything that the rules say of one candidate."""

    id: str
    verdict: Verdict | None
    """None for a part that is no motor."""
    score: float | None
    """0 .. 100, to one decimal."""
    score_low: float | None
    score_high: float | None
    findings: tuple[Finding, ...] = ()
    deciding: Finding | None = None
    """The finding that decides the verdict."""
    reason: str = ""
    """The one sentence that matters most."""
    notes: tuple[str, ...] = ()
    """Numbers that nearly match, and what was presumed by number."""
    questions: tuple[Question, ...] = ()
    """What to ask, the plate photo first where something was presumed by number."""
    presumed: tuple[str, ...] = ()
    """Names of the facts that were taken over because maker and number are equal."""

    @property
    def minds(self) -> int:
        """How many small losses stand under a "fits": by the rules it fits, yet each wants a hand."""
        return minds(self.verdict, self.findings)


def judge(wanted: Wanted, candidate: Record, settings: Settings | None = None) -> Judgement:
    """Judge one candidate against the failed motor and the place where it must run."""
    if is_no_motor(candidate.facts.item):
        reason = f"Not a motor or its module, but a part: {_called(candidate)}"
        return Judgement(candidate.id, None, None, None, None, reason=reason)
    pair = prepare(wanted, candidate)
    return judge_pair(pair, settings or Settings.shipped(), candidate.id)


def is_no_motor(item: str | None) -> bool:
    """Say whether an offer's `item` is neither a motor nor its module, so that nothing is judged."""
    return item == "part"


MOST_CALLED = 80
"""Characters of what a listing calls its thing; a longer one is cut after a whole word."""


def _called(candidate: Record) -> str:
    """Return what a listing calls its thing: the title, else its first line, with its full stop."""
    first, *_ = (candidate.title.strip() or candidate.text.strip()[:200]).splitlines() or [""]
    short = cut(first, MOST_CALLED)
    return short if short != first else f"{first.strip(' .') or 'something else'}."


def judge_pair(pair: Pair, settings: Settings, candidate: str = "") -> Judgement:
    """Judge a pair that is prepared already."""
    judgement = Judgement(
        id=candidate,
        verdict=None,
        score=None,
        score_low=None,
        score_high=None,
        findings=findings_of(pair, settings),
        notes=resemblances(pair),
        presumed=presumed_by_number(pair),
    )
    return _tallied(judgement, settings)


def judged_again(judgement: Judgement, settings: Settings) -> Judgement:
    """Return a judgement with other settings, from the findings that are there; no check is called anew."""
    if judgement.verdict is None:
        return judgement
    findings = tuple(weighed(finding, settings) for finding in judgement.findings)
    return _tallied(replace(judgement, findings=findings), settings)


def _tallied(judgement: Judgement, settings: Settings) -> Judgement:
    """Put in all that follows from a judgement's findings."""
    findings = judgement.findings
    points = tally_of(findings, settings)
    verdict = VERDICTS[int(points.verdict)]
    decider = deciding(verdict, findings, settings.priors)
    return replace(
        judgement,
        verdict=verdict,
        score=_shown(points.score),
        score_low=_shown(points.low),
        score_high=_shown(points.high),
        deciding=decider,
        reason=reason(verdict, decider, findings),
        questions=questions(findings),
    )


def presumed_by_number(pair: Pair) -> tuple[str, ...]:
    """Return the names of the facts that were taken over because maker and number are equal."""
    return tuple(name for name, why in pair.presumed_new.items() if why == BY_NUMBER)


def applies_to_module_alone(pair: Pair) -> bool:
    """Say whether only the checks of a module apply."""
    return is_module_for_good_motor(pair.new.module, pair.site.motor_health)


def is_module_for_good_motor(module: str | None, motor_health: str | None) -> bool:
    """Say whether a module alone is offered for an old motor that is good itself."""
    return module == "module_only" and motor_health == "good"


def findings_of(pair: Pair, settings: Settings) -> tuple[Finding, ...]:
    """Return the findings of all checks that apply, each with its weight."""
    checks = MODULE_CHECKS if applies_to_module_alone(pair) else CHECKS
    found = (check.judge(pair) for check in checks)
    return tuple(weighed(_named_twice(finding, pair), settings) for finding in found if finding is not None)


def _named_twice(finding: Finding, pair: Pair) -> Finding:
    """Say of a fact that is told twice and differently that it is so, not that it isn't told at all."""
    if finding.outcome is not Outcome.UNKNOWN:
        return finding
    new = [name for name in finding.questions if name in pair.contradicted_new]
    asked_at_home = [name.removeprefix("old.") for name in finding.questions if name.startswith("old.")]
    old = [name for name in asked_at_home if name in pair.contradicted_old]
    if not new and not old:
        return finding
    where, names = ("The listing", new) if new else ("The old plate", old)
    why = f"{where} says two different things about its {both(map(fact, names))}. Which holds?"
    is_all = len(names) == len(finding.questions)
    return replace(finding, why=why if is_all else f"{why} {finding.why}")


def weighed(finding: Finding, settings: Settings) -> Finding:
    """Put in the weight of a finding; a hard one weighs only where it is a loss."""
    if finding.hard and finding.outcome is not Outcome.LOSS:
        return finding
    return replace(finding, weight=settings.weights[finding.check])


def tally_of(findings: Sequence[Finding], settings: Settings) -> Tally:
    """Return score, range and verdict, unrounded, from all findings."""
    return tally([Counted.of(finding, settings.weights[finding.check]) for finding in findings])


def _shown(points: Points) -> float | None:
    return None if isnan(points) else round(float(points), 1)


def rank_key(
    verdict: Verdict | None, score_low: float | None, landed_cost: float | None
) -> tuple[int, float, float]:
    """Return the key that sorts best first: verdict, then the low score, then the landed cost.

    Costs are compared as they stand, each in its own offer's currency: a ranking converts no money, as it
    need not know any rate. Only a plan, which adds sums up, does (`matcher.money.weigh.gamble_in`).
    """
    low = -1.0 if score_low is None else score_low
    cost = float("inf") if landed_cost is None else landed_cost
    return VERDICT_ORDER.index(verdict), -low, cost
