"""How likely a candidate fits and works: priors for what isn't known, and its condition's risk.

The priors are common practice, editable, and stand in `data/priors.tsv`; the chance that a part works as
its condition says stands in `data/conditions.tsv`.
"""

from collections.abc import Iterable, Sequence

from matcher.finding import Finding, Outcome
from matcher.settings import Settings
from matcher.tally import Figure
from matcher.verdict import USELESS, Judgement

SAME_NUMBER = "same_maker_and_number"
"""The prior that two motors of one maker and number agree in what was presumed."""

NOT_SAID = "not_said"
"""The row for an offer that doesn't say its condition."""


def open_doubts(judgement: Judgement) -> tuple[str, ...]:
    """Return the names of the priors that the chance hangs on, each once.

    Those are the checks whose unknown answer makes the verdict `ask`, and `same_maker_and_number` when any
    fact was presumed from the old motor.
    """
    return doubts(judgement.findings, presumed=bool(judgement.presumed))


def doubts(findings: Sequence[Finding], *, presumed: bool) -> tuple[str, ...]:
    """Return the same from the findings, and from whether any fact was presumed by number."""
    asking = tuple(finding.check for finding in findings if finding.asks)
    return (*asking, SAME_NUMBER) if presumed else asking


def fit_chance(judgement: Judgement, condition: str | None, settings: Settings) -> float:
    """Return the chance, 0 to 1, that the candidate fits and works."""
    if judgement.verdict in USELESS:
        return 0.0
    return chance_of(open_doubts(judgement), condition, settings)


PROVISOS = {"site.module_health": "if the old module is good"}
"""What a chance takes as given while nobody has looked at home, by what is to be looked at."""


def proviso(judgement: Judgement) -> str:
    """Return what the chance takes as given and nobody has tested; empty when nothing is.

    A loss is no doubt to the rules, so no prior stands for it: the words must say what the figure leaves out.
    """
    if judgement.verdict in USELESS:
        return ""
    losses = [finding for finding in judgement.findings if finding.outcome is Outcome.LOSS]
    asked = dict.fromkeys(field for finding in losses for field in finding.questions)
    return " and ".join(PROVISOS[field] for field in asked if field in PROVISOS)


def chance_of(doubts: Sequence[str], condition: str | None, settings: Settings) -> float:
    """Return the chance that all of some doubts come out well and that the part works."""
    works = settings.condition_chances[row_of_condition(condition)]
    return float(all_well((settings.priors[doubt] for doubt in doubts), works))


def row_of_condition(condition: str | None) -> str:
    """Return the name of the row that says how likely a part of this condition works."""
    return condition or NOT_SAID


def all_well(priors: Iterable[Figure], works: Figure) -> Figure:
    """Return the chance that everything in doubt comes out well and that the part works.

    Each figure is a chance for one candidate, or an array of one for each of many.
    """
    chance: Figure = 1.0
    for prior in priors:
        chance = chance * prior
    return chance * works
