import pytest

from matcher.finding import Finding, Outcome
from matcher.judging import saying
from matcher.motor import Motor, Offer, Wanted
from matcher.record import Record
from matcher.tally import VERDICT_ORDER
from matcher.verdict import judge


@pytest.mark.parametrize(
    ("value", "said"),
    [(0.5, "1/2 in"), (5.625, "5 5/8 in"), (5.6, "5.6 in"), (4.0, "4 in"), (0.4995, "0.4995 in"), (None, "")],
)
def test_inches(value: float | None, said: str) -> None:
    assert saying.inches(value) == said


@pytest.mark.parametrize(
    ("value", "said"), [(0.3333, "1/3 hp"), (1.5, "1 1/2 hp"), (0.4, "0.4 hp"), (7.5, "7 1/2 hp"), (None, "")]
)
def test_horsepower(value: float | None, said: str) -> None:
    assert saying.horsepower(value) == said


def test_turns() -> None:
    assert saying.turn("cw", "lead_end") == "clockwise seen from the lead end"
    assert saying.turn("ccw") == "counter-clockwise"
    assert saying.turn("either", "lead_end") == "either way"
    assert saying.turn(None) == ""


def test_lists() -> None:
    assert saying.both(["a", "b", "c"]) == "a, b and c"
    assert saying.either(["a", "b"]) == "a or b"
    assert saying.both([]) == ""
    assert saying.mounting(("band", "studs")) == "a belly band or studs"


def test_names_of_facts() -> None:
    assert saying.fact("shaft_diameter_in") == "shaft diameter"
    assert saying.fact("no_such_fact") == "no such fact"


def test_every_verdict_and_outcome_has_its_word() -> None:
    assert tuple(saying.VERDICTS) == VERDICT_ORDER
    assert set(saying.OUTCOMES) == set(Outcome)


@pytest.mark.parametrize(
    ("outcome", "old", "new", "said"),
    [
        (Outcome.OK, "sleeve bearings", "ball bearings", "differs, harmless"),
        (Outcome.OK, "", "", "nothing against it"),
        (Outcome.OK, "a permanent split capacitor motor", "", "nothing against it"),
        (Outcome.OK, "", "explosion-proof", "nothing against it"),
        (Outcome.SAME, "", "", "same"),
        (Outcome.UNKNOWN, "", "", "not known"),
        (Outcome.FAIL, "", "", "does not fit"),
    ],
)
def test_only_what_is_known_to_differ_is_said_to(outcome: Outcome, old: str, new: str, said: str) -> None:
    assert saying.outcome(Finding("drive", outcome, "why", "source", old=old, new=new)) == said


@pytest.mark.parametrize("check", ["drive", "hazard"])
def test_a_kind_or_marking_that_nobody_gave_is_not_called_different(check: str) -> None:
    judged = judge(Wanted(motor=Motor(power_hp=0.5)), Record("a", Offer(power_hp=0.5)))
    found = next(one for one in judged.findings if one.check == check)
    assert (found.outcome, saying.outcome(found)) == (Outcome.OK, "nothing against it")
