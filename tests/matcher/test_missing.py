"""What is missing at home is named, the most telling first."""

from matcher.missing import missing
from matcher.motor import Motor, Offer, Wanted
from matcher.record import Record
from matcher.verdict import judge

KNOWN = Motor(
    power_hp=0.5,
    volts="208-230",
    phase=1,
    hertz="60",
    rpm=(1075,),
    turn="ccw",
    seen_from="lead_end",
    shaft_diameter_in=0.5,
    mounting=("band",),
    motor_type="psc",
)


def fields_of(motor: Motor) -> set[str]:
    return {one.field for one in missing(Wanted(motor=motor), []) if one.decides}


def test_nothing_that_decides_is_missing_when_the_hard_facts_are_known():
    assert fields_of(KNOWN) == set()


def test_each_hard_fact_is_missed_when_it_is_not_there():
    for field in ("turn", "shaft_diameter_in", "mounting", "rpm", "power_hp", "seen_from"):
        facts = {name: value for name, value in KNOWN.said().items() if name != field}
        assert field in fields_of(Motor.model_validate(facts)), field


def test_what_a_candidate_waits_for_is_counted():
    facts = KNOWN.said() | {"brand": "Orvandel"}
    old = Wanted(motor=Motor.model_validate({k: v for k, v in KNOWN.said().items() if k != "turn"}))
    candidate = judge(old, Record("a", Offer.model_validate(facts)))
    first = missing(old, [candidate])[0]
    assert (first.field, first.check, first.waiting, first.decides) == ("turn", "rotation", 1, True)


def test_a_loss_counted_without_a_fact_of_the_place_names_it():
    old = Wanted(motor=Motor.model_validate(KNOWN.said() | {"speeds": 4}))
    short = judge(old, Record("a", Offer.model_validate(KNOWN.said() | {"speeds": 3})))
    assert [(one.field, one.waiting) for one in missing(old, [short]) if one.check == "taps"] == [
        ("taps_in_use", 1)
    ]
