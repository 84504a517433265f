"""What somebody found out at home about the old motor or its place, as people type it."""

from matcher.errors import BadValue
from matcher.job.document import Job
from matcher.record import Origin


def with_found(job: Job, key: str, text: str, *, metric: bool = False) -> Job:
    """Return the job with the answer to a question of `data/questions.tsv`: `old.FACT` or `site.FACT`.

    The answer is typed as in a form, or in the words of a plate: `1/2`, `CCWLE`, `belly band`. Lengths
    without a unit are inches, with `metric` millimetres. Raises `UnknownField` or `BadValue`.
    """
    from matcher.entry import entered

    where, _, field = key.partition(".")
    if where == "site":
        return job.with_site(field, entered(field, text, metric=metric), origin=Origin.MEASURED)
    try:
        return job.with_given(field, entered(field, text, metric=metric), origin=Origin.MEASURED)
    except BadValue:
        from matcher.reading import read_plate

        read = read_plate(text.strip()[:2000]).facts
        value = getattr(read, field, None)
        if value is None:
            raise
    told = job.with_given(field, value, origin=Origin.MEASURED)
    if field == "turn" and read.seen_from:
        return told.with_given("seen_from", read.seen_from, origin=Origin.MEASURED)
    return told
