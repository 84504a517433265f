"""From answers to the part that failed: the first answer that settles it counts, in the tests' order."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from matcher.errors import UnknownField
from matcher.motor import Health, Motor
from matcher.tables import rows
from matcher.triage.bench import BenchTest, bench_for, kind_of
from matcher.triage.readings import word_for


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """What the tests say so far."""

    part: str
    """`motor`, `module`, `capacitor`, `wiring`, `other`, or empty while nothing is settled."""
    settled: bool
    why: tuple[str, ...]
    module_health: Health
    motor_health: Health
    next_test: BenchTest | None
    """The test to do next; `None` when all is settled."""
    suspected: str = ""
    """A part that an answer points to without settling it."""


@dataclass(frozen=True, slots=True)
class _Rule:
    part: str
    settles: bool
    motor_health: str
    module_health: str
    why: str


@cache
def _rules() -> dict[tuple[str, str], _Rule]:
    return {
        (row["test"], row["answer"]): _Rule(
            row["part"], row["settles"] == "yes", row["motor_health"], row["module_health"], row["why"]
        )
        for row in rows("triage_rules")
    }


def diagnose(motor: Motor, answers: Mapping[str, str], capacitor_tolerance: float | None = None) -> Diagnosis:
    """Return what the answers settle for this motor, and which test comes next.

    `answers` maps names of tests to words or readings; tests that this motor doesn't take are ignored, so
    that answers survive a correction of its type. Raises UnknownField for a name that is no test, BadValue
    for an answer that a test can't have.
    """
    _check_names(answers)
    why: list[str] = []
    suspected = ""
    next_test: BenchTest | None = None
    for test in bench_for(motor):
        if test.name not in answers:
            next_test = next_test or test
            continue
        rule = _rules().get((test.name, word_for(test, answers[test.name], motor, capacitor_tolerance)))
        if rule is None:
            continue
        why.append(rule.why)
        if rule.settles:
            return _settled(rule, why, answers, motor)
        suspected = rule.part
    if next_test is None:
        rule = _rules()[(f"all_clear_{kind_of(motor)}", "")]
        return _settled(rule, [*why, rule.why], answers, motor)
    return Diagnosis("", False, tuple(why), "unknown", "unknown", next_test, suspected)


def _check_names(answers: Mapping[str, str]) -> None:
    from matcher.triage.bench import bench_tests

    known = [test.name for test in bench_tests()]
    for name in answers:
        if name not in known:
            raise UnknownField(f"{name!r:.60} is no bench test; the tests are {', '.join(known)}")


def _settled(rule: _Rule, why: list[str], answers: Mapping[str, str], motor: Motor) -> Diagnosis:
    module = rule.module_health or "unknown"
    if rule.part == "motor" and not rule.module_health and kind_of(motor) == "ecm" and _worked(answers):
        module = "good"
        why = [
            *why,
            "The module worked until now, so it is probably good (common practice): it can move over.",
        ]
    return Diagnosis(
        part=rule.part,
        settled=True,
        why=tuple(why),
        module_health=_health(module),
        motor_health=_health(rule.motor_health or "unknown"),
        next_test=None,
    )


def _worked(answers: Mapping[str, str]) -> bool:
    return answers.get("ran_until_now") == "yes" and answers.get("smell") != "module"


def _health(word: str) -> Health:
    return "good" if word == "good" else "bad" if word == "bad" else "unknown"
