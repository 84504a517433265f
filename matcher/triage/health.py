"""What the bench tests make of a job: answers kept as they were typed, and the health that follows.

`Job.triage` holds `{"answers": {test: text}, "capacitor_tolerance_pct": text}`. The two healths go into
the site, so that every verdict changes at once; they are taken back when the tests no longer say so.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from matcher.errors import SamespinError
from matcher.job import Job
from matcher.job.section import texts, with_text
from matcher.motor import Motor, Site
from matcher.record import Origin
from matcher.triage.bench import bench_tests
from matcher.triage.conclude import Diagnosis, diagnose

NOTE = "bench tests"
"""The note on a health that the tests set; one that a person typed is left alone."""
TOLERANCE = "capacitor_tolerance_pct"


@dataclass(frozen=True, slots=True)
class Bench:
    """The bench of one job: its answers, what they say, and the answers that can't be."""

    answers: Mapping[str, str]
    diagnosis: Diagnosis
    faults: Mapping[str, str]
    """By test, one line on why its answer doesn't count; the answer itself is kept."""


def answers_in(job: Job) -> dict[str, str]:
    """Return the answers as they were typed, by test; other things in the section are passed over."""
    return texts(job.triage.get("answers"), {test.name for test in bench_tests()})


def bench_of(job: Job, motor: Motor) -> Bench:
    """Return what the bench tests of a job say; an answer that can't be is left out with its reason."""
    answers, faults = answers_in(job), {}
    tolerance, fault = _tolerance(job)
    if fault:
        faults[TOLERANCE] = fault
    good: dict[str, str] = {}
    for name, text in answers.items():
        try:
            diagnose(motor, {name: text}, tolerance)
        except SamespinError as refused:
            faults[name] = str(refused)
        else:
            good[name] = text
    return Bench(answers, diagnose(motor, good, tolerance), faults)


def _tolerance(job: Job) -> tuple[float | None, str]:
    text = str(job.triage.get(TOLERANCE) or "").strip().rstrip("%")
    if not text:
        return None, ""
    try:
        per_cent = float(text)
    except ValueError:
        per_cent = 0.0
    if not 0 < per_cent <= 50:
        return None, f"tolerance: {text!r:.40} can't be; a run capacitor prints 3 to 15 %, such as 5"
    return per_cent / 100, ""


def with_answer(job: Job, motor: Motor, name: str, text: str) -> Job:
    """Return the job with one answer (or the tolerance) as typed, and the healths that follow from all."""
    if name == TOLERANCE:
        section = {**job.triage, TOLERANCE: text}
    else:
        section = {**job.triage, "answers": with_text(answers_in(job), name, text)}
    changed = job.edited(triage=section)
    return with_health(changed, bench_of(changed, motor).diagnosis)


def with_health(job: Job, diagnosis: Diagnosis) -> Job:
    """Return the job with the two healths of its site as the tests say; a typed one is left alone."""
    for field, health in _healths(diagnosis).items():
        given = job.site.get(field)
        if given is not None and given.note != NOTE:
            continue
        if health != "unknown":
            job = job.with_site(field, health, origin=Origin.MEASURED, note=NOTE)
        elif given is not None:
            job = job.without_site(field)
    return job


def site_with(site: Site, diagnosis: Diagnosis) -> Site:
    """Return a site with the healths that the tests settled; what they leave open stays as it was."""
    known = {field: health for field, health in _healths(diagnosis).items() if health != "unknown"}
    return site.model_copy(update=known)


def _healths(diagnosis: Diagnosis) -> dict[str, str]:
    return {"module_health": diagnosis.module_health, "motor_health": diagnosis.motor_health}
