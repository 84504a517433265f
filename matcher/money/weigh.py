"""One candidate judged and weighed: the record that commands and pages show."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from matcher.money.chance import fit_chance, proviso
from matcher.money.cost import Cost, cost_of, needs_mask
from matcher.money.plan import Gamble
from matcher.motor import Offer, Wanted
from matcher.record import Record
from matcher.settings import Settings
from matcher.verdict import Judgement, judge, judged_again, rank_key


@dataclass(frozen=True, slots=True)
class Weighed:
    """A judgement with its chance and its money."""

    judgement: Judgement
    offer: Offer
    fit_chance: float
    """Chance, 0 to 1, that it fits and works."""
    cost: Cost | None
    """`None` when the listing names no price."""
    contradicted: frozenset[str] = frozenset()
    """Names of the facts that the listing says twice and differently."""

    @property
    def id(self) -> str:
        """The candidate's id."""
        return self.judgement.id

    @property
    def proviso(self) -> str:
        """What the chance takes as given and nobody has tested, `if the old module is good`; mostly empty."""
        return proviso(self.judgement)

    @property
    def landed_cost(self) -> float | None:
        """Price, shipping and what the swap needs, in the offer's currency."""
        return self.cost.landed if self.cost else None

    @property
    def gamble(self) -> Gamble | None:
        """The candidate as the buying plan sees it; `None` without a price."""
        return Gamble(self.id, self.fit_chance, self.cost.landed, self.cost.lost) if self.cost else None


def gamble_in(weighed: Weighed, currency: str | None, settings: Settings) -> Gamble | None:
    """Return a candidate as a plan in one currency sees it.

    `None` without a price, or where the settings give no rate for its money; without a `currency` every
    price is taken as it stands.
    """
    gamble = weighed.gamble
    rate = 1.0 if currency is None else settings.rate(weighed.offer.currency, currency)
    if gamble is None or rate is None:
        return None
    return replace(gamble, landed=gamble.landed * rate, lost=gamble.lost * rate)


def weigh(wanted: Wanted, candidate: Record, settings: Settings | None = None) -> Weighed:
    """Judge one candidate and put chance and money to the judgement."""
    settings = settings or Settings.shipped()
    judgement = judge(wanted, candidate, settings)
    return _with_money(judgement, candidate.facts, candidate.contradicted, settings)


def weighed_again(weighed: Weighed, settings: Settings) -> Weighed:
    """Return what `weigh` would with other settings, from the findings that are there."""
    judgement = judged_again(weighed.judgement, settings)
    return _with_money(judgement, weighed.offer, weighed.contradicted, settings)


def _with_money(
    judgement: Judgement, offer: Offer, contradicted: frozenset[str], settings: Settings
) -> Weighed:
    chance = fit_chance(judgement, offer.condition, settings)
    cost = cost_of(offer, needs_mask(judgement.findings), settings, contradicted)
    return Weighed(judgement, offer, chance, cost, contradicted)


def ranked(wanted: Wanted, candidates: Iterable[Record], settings: Settings | None = None) -> list[Weighed]:
    """Weigh every candidate and return them best first."""
    settings = settings or Settings.shipped()
    return sorted((weigh(wanted, candidate, settings) for candidate in candidates), key=place)


def place(weighed: Weighed) -> tuple[int, float, float]:
    """Return the key that sorts best first: verdict, then the low score, then the landed cost.

    The cost counts in the offer's own currency, as `rank_key` says.
    """
    return rank_key(weighed.judgement.verdict, weighed.judgement.score_low, weighed.landed_cost)
