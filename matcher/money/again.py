"""Weighing again with changed settings: no check is called anew, only tallies, chances and costs change."""

from collections.abc import Iterable

from matcher.money.chance import fit_chance
from matcher.money.cost import cost_of, needs_mask
from matcher.money.weigh import Weighed, place
from matcher.settings import Settings
from matcher.verdict import judged_again


def weighed_again(weighed: Weighed, settings: Settings) -> Weighed:
    """Return what `weigh` would return with other settings, from the findings that are there."""
    judgement = judged_again(weighed.judgement, settings)
    offer = weighed.offer
    chance = fit_chance(judgement, offer.condition, settings)
    cost = cost_of(offer, needs_mask(judgement.findings), settings, weighed.contradicted)
    return Weighed(judgement, offer, chance, cost, weighed.contradicted)


def ranked_again(candidates: Iterable[Weighed], settings: Settings) -> list[Weighed]:
    """Weigh every candidate again and return them best first."""
    return sorted((weighed_again(one, settings) for one in candidates), key=place)
