"""Laws of judging: the one promise, what fits itself, and that a check sees no more than it declares."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from matcher.checks import CHECKS, Check
from matcher.judging.pair import RELATIONS, Pair
from matcher.judging.presume import prepare
from matcher.motor import MOTOR_FIELDS, OFFER_FIELDS, SITE_FIELDS, Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record
from matcher.verdict import applies_to_module_alone, judge

pytestmark = pytest.mark.property
FIT = ("fits", "fits_with_work")
ELECTRONIC = ("ecm", "ecm_torque", "ecm_airflow")

COMMON: dict[str, Any] = {
    "phase": 1, "hertz": "60", "insulation_class": "B", "ambient_c": 40, "service_factor": 1.0,
    "duty": "continuous", "protector": "auto", "power_hp": 0.5, "turn": "cw", "seen_from": "lead_end",
    "shaft_diameter_in": 0.5, "shaft_length_in": 5.0, "shaft_flats": 1, "shaft_keyed": False, "shaft_ends": 1,
    "body_diameter_in": 5.6, "body_length_in": 5.0, "mounting": ("band",), "enclosure": "ODP",
    "bearing": "sleeve", "shaft_position": "horizontal", "brand": "Plenquist", "part_number": "PL-1",
    "volts": "115", "amps": (6.0,), "rpm": (1075,), "speeds": 3, "explosion_proof": False,
}  # fmt: skip
FULL: dict[str, dict[str, Any]] = {
    "psc": COMMON
    | {"motor_type": "psc", "capacitor_uf": 5.0, "capacitor_vac": 370, "leads": True, "lead_length_in": 30.0},
    "split_phase": COMMON
    | {"motor_type": "split_phase", "volts": "115/230", "amps": (9.0, 4.5), "frame": "56", "leads": True}
    | {"mounting": ("cradle",), "turn": "either", "seen_from": None},
    "ecm_airflow": COMMON
    | {"motor_type": "ecm_airflow", "rpm": None, "rpm_range": (500, 1250), "plug_pins": (4, 16)}
    | {"control_signal": "serial", "module": "with", "module_number": "M1", "program_number": "P1"},
    "polyphase": COMMON
    | {"motor_type": "polyphase", "phase": 3, "volts": "230/460", "amps": (6.2, 3.1), "frame": "145T"}
    | {"mounting": ("rigid_base",), "leads": True, "shaft_keyed": True, "shaft_flats": 0, "turn": "either"},
}
SITES: dict[str, dict[str, Any]] = {
    "psc": {"supply_volts": 120, "supply_phase": 1, "supply_hertz": 60, "in_airstream": True},
    "split_phase": {"supply_volts": 240, "in_airstream": True},
    "ecm_airflow": {"supply_volts": 120, "module_health": "bad", "in_airstream": True},
    "polyphase": {"supply_volts": 460, "supply_phase": 3},
}
OTHERS: dict[str, list[Any]] = {
    "brand": ["Orvandel", "plenquist"], "part_number": ["PL1", "PL-2"], "phase": [1, 3], "hertz": ["50", "50/60"],
    "power_hp": [0.25, 0.3333, 0.75, 1.0], "volts": ["208-230", "230", "115/230", "120", "460"],
    "amps": [(9.0,), (9.0, 4.5), (3.0,)], "rpm": [(1100,), (825,), (1625,)], "rpm_range": [(400, 1300)],
    "speeds": [1, 4], "turn": ["ccw", "either"], "seen_from": ["shaft_end"], "shaft_diameter_in": [0.501, 0.625],
    "shaft_length_in": [4.2, 2.0, 7.0], "shaft_flats": [0, 2], "shaft_keyed": [True], "shaft_ends": [2],
    "body_diameter_in": [5.7, 6.0, 7.0], "body_length_in": [5.8, 8.0], "bolt_circle_in": [4.0, 5.0],
    "mounting": [("studs",), ("lugs", "band"), ("rigid_base",), ("face",)], "frame": ["48Y", "143T", "56C", "IEC71"],
    "enclosure": ["OAO", "TEAO", "TENV"], "bearing": ["ball"], "shaft_position": ["up", "any"],
    "insulation_class": ["F"], "ambient_c": [50], "service_factor": [1.35], "duty": ["intermittent"],
    "protector": ["manual", "none"], "capacitor_uf": [7.5], "capacitor_vac": [440],
    "motor_type": ["psc", "split_phase", "shaded_pole", "ecm", "ecm_torque", "ecm_airflow", "polyphase"],
    "module": ["with", "without", "module_only"], "module_number": ["M2"], "program_number": ["P2"],
    "plug_pins": [(16,), (5,)], "control_signal": ["pwm", "serial"], "explosion_proof": [True],
    "leads": [True], "lead_length_in": [20.0], "currency": ["EUR", "USD"], "item": ["module"],
}  # fmt: skip
SITE_FACTS: dict[str, list[Any]] = {
    "supply_volts": [120, 208, 240], "measured_volts": [118.0], "supply_phase": [1, 3], "supply_hertz": [50, 60],
    "taps_in_use": [2], "room_length_in": [6.0], "shaft_length_min_in": [2.5], "circuit_amps": [15.0],
    "outdoors": [True, False], "in_airstream": [True, False], "module_health": ["good", "bad", "unknown"],
    "motor_health": ["good", "bad"],
}  # fmt: skip


def changes(values: dict[str, list[Any]], most: int) -> st.SearchStrategy[list[tuple[str, Any]]]:
    """Draw a few facts with other values, half of them hidden."""
    one = st.sampled_from(sorted(values)).flatmap(
        lambda name: st.tuples(st.just(name), st.none() | st.sampled_from(values[name]))
    )
    return st.lists(one, max_size=most)


def known(facts: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in facts.items() if value is not None}


@st.composite
def pairs(draw: st.DrawFn) -> tuple[Wanted, Record]:
    """Draw a full motor against a changed one, facts hidden and contradicted on either side."""
    kind = draw(st.sampled_from(sorted(FULL)))
    base = FULL[kind]
    old = base | dict(draw(changes(OTHERS, 2)))
    new = base | {"part_number": "X-9"} | dict(draw(changes(OTHERS, 4)))
    site = SITES[kind] | dict(draw(changes(SITE_FACTS, 3)))
    twice = draw(st.frozensets(st.sampled_from(sorted(MOTOR_FIELDS)), max_size=2))
    twice_old = draw(st.frozensets(st.sampled_from(sorted(MOTOR_FIELDS)), max_size=1))
    for facts, gone in ((old, twice_old), (new, twice)):
        facts.update(dict.fromkeys(gone))
    motor = known({name: value for name, value in old.items() if name in MOTOR_FIELDS})
    wanted = Wanted(motor=Motor(**motor), site=Site(**known(site)), contradicted=twice_old)
    conflicts = tuple(Conflict(name, (), ()) for name in sorted(twice))
    return wanted, Record("c", Offer(**known(new)), conflicts=conflicts)


def lead_end(motor: Motor) -> str | None:
    if motor.seen_from == "shaft_end" and motor.turn in ("cw", "ccw"):
        return "ccw" if motor.turn == "cw" else "cw"
    return motor.turn


@settings(max_examples=400, deadline=None)
@given(pairs())
def test_never_fits_while_a_hard_fact_is_missing_or_contradicted(drawn: tuple[Wanted, Record]) -> None:
    wanted, candidate = drawn
    judgement = judge(wanted, candidate)
    if judgement.verdict not in FIT:
        return
    pair = prepare(*drawn)
    old, new, site = pair.old, pair.new, pair.site
    assert not any(found.hard and found.outcome in ("unknown", "fail") for found in judgement.findings)
    twice = pair.contradicted_new
    assert not twice & {"volts", "phase", "motor_type"}
    if not applies_to_module_alone(pair):  # a module alone has neither power nor speed
        assert not twice & {"power_hp", "rpm"}
    assert new.volts is not None
    assert new.phase == (site.supply_phase or old.phase)
    assert (site.supply_volts, site.measured_volts, old.volts) != (None, None, None)
    if new.module == "module_only" and site.motor_health == "good":
        return
    assert not twice & {"shaft_diameter_in", "shaft_ends", "shaft_flats", "shaft_keyed", "mounting", "frame"}
    assert abs((new.shaft_diameter_in or 0) - (old.shaft_diameter_in or 9)) <= 0.0021
    assert new.mounting is not None or old.mounting is not None
    if new.turn != "either" and new.motor_type != "polyphase":
        assert "turn" not in twice
        assert lead_end(new) == lead_end(old) or (pair.same_number and new.turn == old.turn)
    assert new.power_hp is not None
    assert new.rpm is not None or new.rpm_range is not None
    if old.explosion_proof:
        assert new.explosion_proof


@pytest.mark.parametrize("kind", sorted(FULL))
@pytest.mark.parametrize("number", [True, False])
def test_a_fully_said_motor_fits_itself(kind: str, number: bool) -> None:
    facts = known(FULL[kind])
    offered = facts if number else facts | {"part_number": "X-9"}
    judgement = judge(
        Wanted(motor=Motor(**facts), site=Site(**SITES[kind])), Record("c", Offer(**offered, currency="USD"))
    )
    assert (judgement.verdict, judgement.score) == ("fits", 100.0), judgement.reason
    assert not judgement.presumed


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(sorted(FULL)), st.data())
def test_hiding_a_hard_fact_never_leaves_a_fit(kind: str, data: st.DataObject) -> None:
    facts = known(FULL[kind])
    name = data.draw(
        st.sampled_from(["volts", "shaft_diameter_in", "power_hp", "rpm", "rpm_range", "mounting"])
    )
    assume(name in facts and not (name == "mounting" and facts["mounting"] == ("band",)))
    hidden = {key: value for key, value in facts.items() if key != name} | {"part_number": "X-9"}
    judgement = judge(Wanted(motor=Motor(**facts), site=Site(**SITES[kind])), Record("c", Offer(**hidden)))
    assert judgement.verdict == "ask"


@settings(max_examples=100, deadline=None)
@given(pairs())
def test_the_range_holds_the_score(drawn: tuple[Wanted, Record]) -> None:
    judgement = judge(*drawn)
    if judgement.score is not None:
        assert judgement.score_low is not None
        assert judgement.score_high is not None
        assert 0 <= judgement.score_low <= judgement.score <= judgement.score_high <= 100
    assert len({found.check for found in judgement.findings}) == len(judgement.findings)
    assert judgement.reason


@pytest.mark.parametrize("ends", [("lead_end", "shaft_end"), ("shaft_end", "lead_end")])
@pytest.mark.parametrize("old", ["cw", "ccw"])
@pytest.mark.parametrize("new", ["cw", "ccw"])
def test_walking_round_both_motors_changes_nothing(ends: tuple[str, str], old: str, new: str) -> None:
    """IEC 60034-8 looks at the shaft, NEMA MG 1 from the other end; both tell the same turn."""
    other = {"cw": "ccw", "ccw": "cw", "lead_end": "shaft_end", "shaft_end": "lead_end"}
    facts = known(FULL["psc"])

    def verdict(one: str, two: str, views: tuple[str, str]) -> str | None:
        was = facts | {"turn": one, "seen_from": views[0]}
        now = facts | {"turn": two, "seen_from": views[1], "part_number": "X-9"}
        return judge(Wanted(motor=Motor(**was), site=Site(**SITES["psc"])), Record("c", Offer(**now))).verdict

    around = verdict(other[old], other[new], (other[ends[0]], other[ends[1]]))
    assert verdict(old, new, ends) == around
    assert verdict(old, new, ends) == verdict(new, old, (ends[1], ends[0]))


def mixed(check: Check, one: Pair, other: Pair) -> Pair:
    """Return `one` with every fact that the check does not declare taken from `other`."""
    reads = check.reads

    def facts(mine: Any, its: Any, names: tuple[str, ...], fields: tuple[str, ...]) -> dict[str, Any]:
        return {name: getattr(mine if name in names else its, name) for name in fields}

    def named(mine: Any, its: Any, names: tuple[str, ...]) -> Any:
        if isinstance(mine, frozenset):
            return frozenset(n for n in mine if n in names) | frozenset(n for n in its if n not in names)
        return {n: w for n, w in mine.items() if n in names} | {
            n: w for n, w in its.items() if n not in names
        }

    relations = {name: getattr(one if name in reads.pair else other, name) for name in RELATIONS}
    return replace(
        one,
        old=Motor.model_construct(**facts(one.old, other.old, reads.old, MOTOR_FIELDS)),
        new=Offer.model_construct(**facts(one.new, other.new, reads.new, OFFER_FIELDS)),
        site=Site.model_construct(**facts(one.site, other.site, reads.site, SITE_FIELDS)),
        presumed_old=named(one.presumed_old, other.presumed_old, reads.old),
        presumed_new=named(one.presumed_new, other.presumed_new, reads.new),
        contradicted_old=named(one.contradicted_old, other.contradicted_old, reads.old),
        contradicted_new=named(one.contradicted_new, other.contradicted_new, reads.new),
        **relations,
    )


@settings(max_examples=150, deadline=None)
@given(pairs(), pairs())
def test_a_check_depends_on_nothing_that_it_does_not_declare(
    one: tuple[Wanted, Record], other: tuple[Wanted, Record]
) -> None:
    mine, its = prepare(*one), prepare(*other)
    for check in CHECKS:
        assert check.judge(mixed(check, mine, its)) == check.judge(mine), check.name
