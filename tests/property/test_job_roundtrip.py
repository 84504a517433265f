"""Laws of the job's document: whatever is put in comes out, and merging loses nothing."""

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from matcher.job import Attachment, Fallback, Given, Job, Listing, Reading
from matcher.motor import Motor, Offer, Site
from matcher.record import Conflict, Mark, Origin
from matcher.store import Store
from matcher.store.job_file import dump_job, parse_job
from matcher.store.leaves import places, put_together, take_apart
from matcher.store.merge import merge

pytestmark = pytest.mark.property

ANY_TEXT = st.text(st.characters(exclude_categories=()), max_size=40)
STAMP = st.just("2030-01-31T23:59:59Z")
VALUES: dict[str, st.SearchStrategy[Any]] = {
    "brand": st.text(st.characters(exclude_categories=("Cs",)), min_size=1, max_size=20),
    "part_number": st.text("AZ09-=+@'", min_size=1, max_size=12),
    "other_numbers": st.lists(st.text("AZ09-", min_size=1, max_size=8), max_size=3),
    "power_hp": st.floats(0.01, 100),
    "volts": st.sampled_from(["115", "208-230", "115/208-230", 460]),
    "amps": st.lists(st.floats(0.1, 50), min_size=1, max_size=3),
    "rpm": st.lists(st.integers(300, 3600), min_size=1, max_size=3),
    "turn": st.sampled_from(["cw", "ccw", "either"]),
    "shaft_flats": st.sampled_from([0, 1, 2]),
    "leads": st.booleans(),
    "mounting": st.lists(st.sampled_from(["band", "studs", "face"]), min_size=1, max_size=3),
}
SITE = {
    "supply_volts": st.floats(1, 500),
    "outdoors": st.booleans(),
    "module_health": st.sampled_from(["good", "bad"]),
}
MORE = {
    "price": st.floats(0, 1e6),
    "currency": st.sampled_from(["USD", "EUR"]),
    "return_days": st.integers(0, 90),
}


def _givens(values: dict[str, st.SearchStrategy[Any]]) -> st.SearchStrategy[dict[str, Given]]:
    def one(value: st.SearchStrategy[Any]) -> st.SearchStrategy[Given]:
        return st.builds(
            Given, value=value | st.none(), origin=st.sampled_from(Origin), note=ANY_TEXT, when=STAMP
        )

    return st.fixed_dictionaries({}, optional={name: one(value) for name, value in values.items()})


def _facts(model: type[Offer] = Offer) -> st.SearchStrategy[Offer]:
    return st.fixed_dictionaries({}, optional=VALUES | MORE).map(model.model_validate)


MARKS = st.builds(
    Mark,
    st.sampled_from(Origin),
    st.sampled_from(["", "title", "text"]),
    st.tuples(st.integers(0, 9), st.integers(0, 9)),
    ANY_TEXT,
)
CONFLICTS = st.builds(
    Conflict,
    st.just("rpm"),
    st.tuples(st.just((1075, 850)), st.integers()),
    st.tuples(ANY_TEXT),
    st.tuples(MARKS),
)
READINGS = st.builds(
    Reading,
    facts=_facts(),
    where=st.dictionaries(st.sampled_from(list(VALUES)), MARKS, max_size=2),
    conflicts=st.tuples(CONFLICTS) | st.just(()),
)
ATTACHMENTS = st.lists(
    st.builds(Attachment, name=ANY_TEXT, digest=st.just("a" * 64), note=ANY_TEXT), max_size=1
).map(tuple)
LISTINGS = st.builds(
    Listing,
    title=ANY_TEXT,
    text=ANY_TEXT,
    source_name=ANY_TEXT,
    reading=READINGS | st.none(),
    corrections=_givens(VALUES | MORE),
    pictures=ATTACHMENTS,
    decision=ANY_TEXT,
    note=ANY_TEXT,
)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | ANY_TEXT,
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(ANY_TEXT, inner, max_size=2),
    max_leaves=5,
)
SECTIONS = st.dictionaries(ANY_TEXT, JSON, max_size=2)
JOBS = st.builds(
    Job,
    name=ANY_TEXT,
    place=ANY_TEXT,
    note=ANY_TEXT,
    plate_text=ANY_TEXT,
    given=_givens(VALUES),
    site=_givens(SITE),
    listings=st.lists(LISTINGS, max_size=3).map(tuple),
    fallback=st.none() | st.builds(Fallback, price=st.floats(0, 1e6), what=ANY_TEXT),
    settings_changes=SECTIONS,
    pictures=ATTACHMENTS,
    arrival=SECTIONS,
    proof=SECTIONS,
)
FEW = settings(max_examples=40, deadline=None)


@FEW
@given(JOBS)
def test_export_then_import_gives_equal_jobs(job: Job) -> None:
    back, files = parse_job(dump_job(job, {}))
    assert back == job
    assert files == {}
    assert dump_job(back, {}) == dump_job(job, {})


@FEW
@given(JOBS)
def test_save_then_load_gives_equal_jobs(job: Job) -> None:
    with Store.in_memory() as store:
        store.save(job)
        loaded = store.load(job.id).job
        assert loaded.edited(changed=job.changed) == job


@FEW
@given(JOBS, JOBS)
def test_any_job_can_become_any_other(one: Job, other: Job) -> None:
    other = other.edited(id=one.id, created=one.created)
    with Store.in_memory() as store:
        version = store.save(one).version
        saved = store.save(other, version)
        assert saved.clashes == ()
        assert store.load(one.id).job.edited(changed=other.changed) == other
        back = store.save(one, saved.version)
        assert back.job.edited(changed=one.changed) == one


@FEW
@given(JOBS)
def test_taking_apart_and_putting_together_is_nothing(job: Job) -> None:
    head = {"id": job.id, "created": job.created, "changed": job.changed}
    assert Job.model_validate(json.loads(json.dumps(put_together(take_apart(job), head)))) == job


@FEW
@given(JOBS, JOBS, JOBS)
def test_a_merge_keeps_all_that_was_changed_or_shows_it(base: Job, theirs: Job, mine: Job) -> None:
    start = take_apart(base)
    them, me = take_apart(theirs, places(start)), take_apart(mine, places(start))
    merged = merge(start, them, me)
    clashed = [clash.path for clash in merged.clashes]
    for path, value in them.values.items():
        if path not in merged.changed:
            assert merged.leaves.values[path] == value
    for path, value in me.values.items():
        shown = any(path[: len(at)] == at[: len(path)] for at in clashed)
        if path not in start.values and not shown and path[-1] != "place":
            assert merged.leaves.values[path] == value


@FEW
@given(JOBS, JOBS)
def test_nobody_else_changed_anything_means_no_clash(base: Job, mine: Job) -> None:
    start = take_apart(base)
    me = take_apart(mine, places(start))
    merged = merge(start, start, me)
    assert merged.clashes == ()
    assert merged.leaves.values == me.values


@FEW
@given(_givens(VALUES), _givens(SITE))
def test_what_is_given_is_what_is_wanted(motor: dict[str, Given], site: dict[str, Given]) -> None:
    wanted = Job(given=motor, site=site).wanted()
    assert wanted.motor == Motor.model_validate({name: one.value for name, one in motor.items()})
    assert wanted.site == Site.model_validate({name: one.value for name, one in site.items()})
