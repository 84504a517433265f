"""One job laid over another: what a window still has to save over what the store holds meanwhile."""

from pydantic import JsonValue

from matcher.job import Job
from matcher.store.leaves import ABSENT, Absent, Leaves, Path, places, put_together, take_apart
from matcher.store.merge import Clash, differing, merge


def rebase(base: Job, theirs: Job, mine: Job) -> tuple[Job, tuple[Clash, ...]]:
    """Return `theirs` with what `mine` changed since `base`, and what both changed differently.

    What clashes stays as it is in `theirs`. All three are states of one job.
    """
    if mine is base:
        return theirs, ()
    start = take_apart(base)
    other = take_apart(theirs, places(start))
    own = take_apart(mine, places(start) | places(other))
    merged = merge(start, other, own)
    return _job(merged.leaves, theirs), merged.clashes


def says_the_same(one: Job, other: Job) -> bool:
    """Whether two states of one job would be saved alike, whenever they were saved."""
    if one == other:
        return True
    first = take_apart(one)
    return not differing(first, take_apart(other, places(first)))


def with_value_of(job: Job, source: Job, path: Path) -> Job:
    """Return the job with the one thing at a clash's path as it is in `source`, absent where it is there."""
    if path[0] == "listings" and len(path) == 2:
        there = [one for one in source.listings if one.id == path[1]]
        return job.with_listing(there[0]) if there else job.without_listing(path[1])
    leaves = take_apart(job)
    value: JsonValue | Absent = take_apart(source).values.get(path, ABSENT)
    if path[0] == "listings" and path[1] not in leaves.readings:
        return job
    for near in [one for one in leaves.values if one[: len(path)] == path or path[: len(one)] == one]:
        del leaves.values[near]
    if not isinstance(value, Absent):
        leaves.values[path] = value
    if path[-1] == "body":
        leaves.readings[path[1]] = take_apart(source).readings.get(path[1])
    return _job(leaves, job)


def _job(leaves: Leaves, head: Job) -> Job:
    return Job.model_validate(
        put_together(leaves, {"id": head.id, "created": head.created, "changed": head.changed})
    )
