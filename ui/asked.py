"""Which questions of a job are still to be asked, worked out beside its answers; nothing here knows Qt."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from matcher.job import Listing
from matcher.judging.asking import Question
from matcher.money.questions import ToAsk, Worth, to_ask
from matcher.money.weigh import Weighed


class Asked(NamedTuple):
    """One row: the candidate, one question about it, and what the answer is worth."""

    listing_id: str
    question: Question
    worth: float | None


class Asking(NamedTuple):
    """What a job still asks."""

    still: tuple[Asked, ...] = ()
    """Every question that can still be asked, what has a worth first."""
    first: tuple[Asked, ...] = ()
    """The few of them that matter."""


NOTHING = Asking()


def is_home(question: Question) -> bool:
    """Tell whether a question is about the old motor or its place, which no seller can answer."""
    return question.whom == "home"


def asking_of(listings: Sequence[Listing], weighed: Mapping[str, Weighed], worths: Sequence[Worth]) -> Asking:
    """Return the questions of every candidate that may still fit, in the words for its seller."""
    rows = _each_once(_by_worth(worths) + _unweighed(weighed))
    own: dict[str, list[Worth]] = {}
    for worth in worths:
        own.setdefault(worth.id, []).append(worth)
    by_id = {listing.id: listing for listing in listings}
    plans: dict[tuple[str, str], ToAsk] = {}
    still: list[Asked] = []
    first: list[Asked] = []
    for row in rows:
        key = row.listing_id, row.question.whom
        if key not in plans:
            told = by_id[row.listing_id].told_unknown()
            plans[key] = to_ask(weighed[row.listing_id], own.get(row.listing_id, ()), told, whom=key[1])
        plan = plans[key]
        asked = {one.field: one for one in (*plan.first, *plan.more)}.get(row.question.field)
        if asked is not None:
            still.append(row._replace(question=asked))
            if asked in plan.first:
                first.append(still[-1])
    return Asking(tuple(still), tuple(first))


def _each_once(rows: list[Asked]) -> list[Asked]:
    """Leave out what stands there already, and what is to be looked at home for a second candidate."""
    kept: dict[tuple[str, str], Asked] = {}
    for row in rows:  # one look at home answers for all candidates
        whose = "" if is_home(row.question) else row.listing_id
        kept.setdefault((whose, row.question.field), row)
    return list(kept.values())


def _by_worth(worths: Sequence[Worth]) -> list[Asked]:
    return [Asked(one.id, question, one.worth) for one in worths for question in one.questions]


def _unweighed(weighed: Mapping[str, Weighed]) -> list[Asked]:
    open_ones = [one for one in weighed.values() if one.fit_chance > 0]
    return [Asked(one.id, question, None) for one in open_ones for question in one.judgement.questions]
