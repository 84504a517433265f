"""All that follows from a job: what its plate and listings say, and how each candidate stands.

This runs on a worker; it only calls the engine. Records of listings that did not change and findings
for an unchanged old motor are taken over from the last time: a changed figure only weighs them again.
"""

from collections.abc import Callable, Mapping
from contextlib import nullcontext
from dataclasses import dataclass, field

from matcher.arrival.section import decided
from matcher.job import Job
from matcher.missing import Missing, missing
from matcher.money.buying import Buying, buying
from matcher.money.decided import still_to_try
from matcher.money.questions import Worth
from matcher.money.weigh import Weighed, place, weigh, weighed_again
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings
from ui.asked import NOTHING, Asking, asking_of
from ui.called import name_of
from ui.pauses import without_pauses

MANY = 500
"""Listings from which the answers are so many objects that collecting cycles stops the window."""


@dataclass(frozen=True)
class Answers:
    """What the engine says about one state of a job."""

    job: Job
    old: Record
    wanted: Wanted
    settings: Settings
    records: dict[str, Record] = field(default_factory=dict)
    weighed: dict[str, Weighed] = field(default_factory=dict)
    """Every candidate by its id, best first; none while nothing is known of the old motor."""

    missing: tuple[Missing, ...] = ()
    """Facts of the old motor and its place that would change an answer, the most telling first."""

    buying: Buying | None = None
    """What to try in which order; `None` until it is known what the fallback costs."""

    asking: Asking = NOTHING
    """What is still to be asked, of sellers and at home."""

    decided: Mapping[str, str] = field(default_factory=dict)
    """By the ids of those that were bought: `keep` or `send_back`."""

    @property
    def has_plate(self) -> bool:
        """Whether anything is known of the old motor; against nothing, nothing is judged."""
        return bool(self.wanted.motor.said())

    @property
    def worths(self) -> tuple[Worth, ...]:
        """Return the open questions with what their answers are worth, dearest first."""
        return self.buying.worths if self.buying else ()

    @property
    def best_first(self) -> tuple[Weighed, ...]:
        """Return the candidates, best first."""
        return tuple(self.weighed.values())

    @property
    def to_try(self) -> tuple[Weighed, ...]:
        """Return the candidates that are still something to try, best first."""
        return still_to_try(self.best_first, self.decided)


def settings_of(job: Job) -> Settings:
    """Return the shipped weights, priors and costs with the job's own changes."""
    return Settings.shipped().with_changes(job.settings_changes)


def answer(tick: Callable[[float], None], job: Job, before: Answers | None = None) -> Answers:
    """Work out everything about a job; `before` spares the work on what did not change."""
    with without_pauses() if len(job.listings) > MANY else nullcontext():
        return _answer(tick, job, before)


def _answer(tick: Callable[[float], None], job: Job, before: Answers | None) -> Answers:
    old, wanted, settings = job.old_motor(), job.wanted(), settings_of(job)
    known = _still_good(job, wanted, settings, before)
    records: dict[str, Record] = {}
    weighed: list[Weighed] = []
    for done, listing in enumerate(job.listings):
        tick(done / len(job.listings))
        record, one = known.get(listing.id) or (listing.record(), None)
        records[listing.id] = record
        weighed.append(one or weigh(wanted, record, settings))
    weighed.sort(key=place)
    absent = missing(wanted, [one.judgement for one in weighed])
    if not wanted.motor.said():
        return Answers(job, old, wanted, settings, records, missing=absent)
    ranked = {one.id: one for one in weighed}
    names = {listing.id: name_of(listing) for listing in job.listings}
    bought = decided(job)
    plan = buying(weighed, job.fallback, settings, names, bought) if job.fallback else None
    tick(1.0)
    left = {one.id: one for one in still_to_try(weighed, bought)}
    asking = asking_of(job.listings, left, plan.worths if plan else ())
    return Answers(job, old, wanted, settings, records, ranked, absent, plan, asking, bought)


def _still_good(
    job: Job, wanted: Wanted, settings: Settings, before: Answers | None
) -> dict[str, tuple[Record, Weighed | None]]:
    """Return the records, and the answers where the old motor is unchanged too, that still hold."""
    if before is None:
        return {}
    then = {listing.id: listing for listing in before.job.listings}
    kept = [listing.id for listing in job.listings if then.get(listing.id) is listing]
    if before.wanted != wanted:
        return {one: (before.records[one], None) for one in kept}
    weighed = before.weighed
    if before.settings != settings:
        weighed = {one: weighed_again(weighed[one], settings) for one in kept if one in weighed}
    return {one: (before.records[one], weighed.get(one)) for one in kept}
