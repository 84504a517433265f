"""What the bench makes of a job: healths set, taken back, and never over a person's own word."""

import pytest

from matcher.job import Job
from matcher.motor import Site
from matcher.record import Record
from matcher.triage import bench_of, diagnose, site_with, with_answer
from matcher.triage.health import TOLERANCE, answers_in
from matcher.verdict import judge

ECM = Job().with_given("motor_type", "ecm_airflow").with_given("brand", "Velmarrow")
WORN = {"ran_until_now": "yes", "grinds": "yes"}


def answered(job: Job, answers: dict[str, str]) -> Job:
    for name, text in answers.items():
        job = with_answer(job, job.wanted().motor, name, text)
    return job


def health(job: Job) -> tuple[str | None, str | None]:
    site = job.wanted().site
    return site.motor_health, site.module_health


def test_worn_bearings_leave_a_good_module() -> None:
    assert health(answered(ECM, WORN)) == ("bad", "good")


def test_an_answer_taken_back_takes_its_health_back() -> None:
    job = answered(ECM, WORN)
    assert health(answered(job, {"grinds": ""})) == (None, None)
    assert answers_in(answered(job, {"grinds": ""})) == {"ran_until_now": "yes"}


def test_a_typed_health_is_left_alone() -> None:
    assert health(answered(ECM.with_site("module_health", "bad"), WORN)) == ("bad", "bad")


def test_the_verdict_of_a_motor_without_module_changes_at_once() -> None:
    def module_loss(job: Job) -> float:
        offer = job.with_given("module", "without").old_motor().facts
        found = judge(job.wanted(), Record("x", offer))
        return next(finding.loss for finding in found.findings if finding.check == "module")

    assert module_loss(answered(ECM, WORN)) < module_loss(ECM)


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("windings_ohm", "2.1 minus", "isn't 3 reading"),
        ("spins", "sideways", "choose free"),
        (TOLERANCE, "900", "can't be"),
        (TOLERANCE, "five", "can't be"),
    ],
)
def test_an_answer_that_cannot_be_is_kept_with_its_reason(name: str, text: str, words: str) -> None:
    job = answered(ECM, {**WORN, name: text})
    bench = bench_of(job, job.wanted().motor)
    assert words in bench.faults[name]
    assert bench.diagnosis.part == "motor"
    assert name == TOLERANCE or bench.answers[name] == text


def test_strange_sections_are_passed_over() -> None:
    job = Job(triage={"answers": {"spins": 3, "nonsense": "x", "grinds": "yes"}, TOLERANCE: ["5"]})
    assert answers_in(job) == {"grinds": "yes"}
    assert answers_in(Job(triage={"answers": [1]})) == {}


def test_the_printed_tolerance_counts() -> None:
    job = Job().with_given("motor_type", "psc").with_given("capacitor_uf", 10)
    wide = answered(job, {"capacitor_uf": "9.2"})
    assert bench_of(wide, wide.wanted().motor).diagnosis.part == ""
    tight = answered(wide, {TOLERANCE: "5"})
    assert bench_of(tight, tight.wanted().motor).diagnosis.part == "capacitor"


def test_a_site_takes_what_is_settled_alone() -> None:
    site = Site(module_health="good", supply_volts=230)
    worn = diagnose(ECM.wanted().motor, {"grinds": "yes"})
    assert site_with(site, worn) == Site(module_health="good", motor_health="bad", supply_volts=230)
