"""What somebody found out at home about the old motor or its place, as people type it."""

from matcher.job.document import Job
from matcher.job.typed import typed
from matcher.motor import Offer
from matcher.record import Origin


def with_found(job: Job, key: str, text: str, *, metric: bool = False) -> Job:
    """Return the job with the answer to a question of `data/questions.tsv`: `old.FACT` or `site.FACT`.

    The answer is typed as in a form, or in the words of a plate: `1/2`, `CCWLE`, `belly band`. Lengths
    without a unit are inches, with `metric` millimetres. Raises `UnknownField` or `BadValue`.
    """
    where, _, field = key.partition(".")
    if where == "site":
        from matcher.entry import entered

        return job.with_site(field, entered(field, text, metric=metric), origin=Origin.MEASURED)
    for name, value in typed(field, text, _read, metric=metric).items():
        job = job.with_given(name, value, origin=Origin.MEASURED)
    return job


def _read(text: str) -> Offer:
    from matcher.reading import read_plate

    return read_plate(text[:2000]).facts
