"""From answers to the part that failed: the first answer that settles it counts, in the tests' order."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from matcher.errors import UnknownField
from matcher.judging.presume import is_electronic
from matcher.motor import Health, Motor
from matcher.tables import rows
from matcher.triage.bench import BenchTest, bench_for, bench_tests, kind_of
from matcher.triage.readings import SKIPPED, word_for

PARTS = {
    "motor": "The motor has failed.",
    "module": "The module has failed; the motor is sound.",
    "capacitor": "The run capacitor has failed.",
    "wiring": "The wiring or the control is at fault, not the motor.",
    "other": "It is neither the motor nor its module, as far as these tests go.",
    "": "Not settled yet.",
}
"""What a diagnosis says first, by the part it names."""


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
    sources: tuple[str, ...] = ()
    """What the reasons rest on, each once."""

    @property
    def says(self) -> str:
        """Return the answer as one line: the part, or the test to do next."""
        if self.settled or self.next_test is None:
            return PARTS[self.part]
        return f"Not settled, next test: {self.next_test.question}"


@dataclass(frozen=True, slots=True)
class _Rule:
    part: str
    settles: bool
    motor_health: str
    module_health: str
    why: str
    source: str


@cache
def _rules() -> dict[tuple[str, str], _Rule]:
    return {
        (row["test"], row["answer"]): _Rule(
            row["part"],
            row["settles"] == "yes",
            row["motor_health"],
            row["module_health"],
            row["why"],
            row["source"],
        )
        for row in rows("triage_rules")
    }


def diagnose(motor: Motor, answers: Mapping[str, str], capacitor_tolerance: float | None = None) -> Diagnosis:
    """Return what the answers settle for this motor, and which test comes next.

    `answers` maps names of tests to words or readings; `skip` leaves a test out for now. Tests that this
    motor doesn't take are ignored, so that answers survive a correction of its type. Raises UnknownField
    for a name that is no test, BadValue for an answer that a test can't have.
    """
    _check_names(answers)
    bench = bench_for(motor)
    words = {
        test.name: word_for(test, answers[test.name], motor, capacitor_tolerance)
        for test in bench
        if test.name in answers
    }
    open_tests = [test for test in bench if words.get(test.name, SKIPPED) == SKIPPED]
    found: list[_Rule] = []
    for place, test in enumerate(bench):
        rule = _rule(test, words.get(test.name, ""), motor)
        if rule is None:
            continue
        found.append(rule)
        if rule.settles:
            sound = not any(earlier in open_tests for earlier in bench[:place])
            return _settled(found, answers, motor, sound=sound)
    suspected = next((rule.part for rule in reversed(found)), "")
    if open_tests:
        return _open(found, suspected, _next(open_tests, words))
    return _settled([*found, _all_clear(motor, suspected)], answers, motor, sound=not suspected)


def _rule(test: BenchTest, answer: str, motor: Motor) -> _Rule | None:
    """Return what an answer means for this kind of motor, if anything."""
    own = _rules().get((f"{test.name}_{kind_of(motor)}", answer))
    return own or _rules().get((test.name, answer))


def _next(open_tests: Sequence[BenchTest], words: Mapping[str, str]) -> BenchTest:
    """Return the first test without an answer; one that was skipped comes last."""
    return next((test for test in open_tests if test.name not in words), open_tests[0])


def _open(found: Sequence[_Rule], suspected: str, next_test: BenchTest) -> Diagnosis:
    return Diagnosis(
        part="",
        settled=False,
        why=tuple(rule.why for rule in found),
        module_health="unknown",
        motor_health="unknown",
        next_test=next_test,
        suspected=suspected,
        sources=tuple(dict.fromkeys(rule.source for rule in found)),
    )


def _all_clear(motor: Motor, suspected: str) -> _Rule:
    kind = kind_of(motor)
    special = _rules().get((f"all_clear_{kind}", suspected))
    return special or _rules()[(f"all_clear_{kind}", "")]


def _check_names(answers: Mapping[str, str]) -> None:
    known = [test.name for test in bench_tests()]
    for name in answers:
        if name not in known:
            raise UnknownField(f"{name!r:.60} is no bench test; the tests are {', '.join(known)}")


def _settled(found: Sequence[_Rule], answers: Mapping[str, str], motor: Motor, *, sound: bool) -> Diagnosis:
    """Make the answer of the last rule; `sound` tells whether every test before it was done and good."""
    rule = found[-1]
    why = [one.why for one in found]
    module, motor_health = rule.module_health or "unknown", rule.motor_health or "unknown"
    if motor_health == "good" and not sound:
        motor_health = "unknown"
        why.append("Some tests of the motor are left out, so it isn't known to be good.")
    if rule.part == "motor" and not rule.module_health and is_electronic(motor) and _worked(answers):
        module = "good"
        why.append("The module worked until now, so it is probably good (common practice): it can move over.")
    return Diagnosis(
        part=rule.part,
        settled=bool(rule.part),
        why=tuple(why),
        module_health=_health(module),
        motor_health=_health(motor_health),
        next_test=None,
        sources=tuple(dict.fromkeys(one.source for one in found)),
    )


def _worked(answers: Mapping[str, str]) -> bool:
    return answers.get("ran_until_now") == "yes" and answers.get("smell") != "module"


def _health(word: str) -> Health:
    return "good" if word == "good" else "bad" if word == "bad" else "unknown"
