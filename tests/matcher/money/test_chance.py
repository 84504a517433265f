"""The chance of a fit: the product of the priors it hangs on and of the condition's risk."""

from math import prod

import pytest
from plates import PLATE

from matcher.command.answers import as_json, explanation
from matcher.money.chance import fit_chance, open_doubts
from matcher.money.weigh import weigh
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.settings import Settings

SETTINGS = Settings.shipped()
NAMED = PLATE | {"brand": "Hexmoor", "part_number": "HX-100", "body_diameter_in": 5.6}
OLD = Wanted(motor=Motor(**NAMED))


def offer(*, without: tuple[str, ...] = (), **also: object) -> Record:
    said = {name: value for name, value in NAMED.items() if name not in (*without, "part_number")}
    return Record("a", Offer(**(said | also)))


@pytest.mark.parametrize(
    ("record", "doubts"),
    [
        pytest.param(offer(), (), id="nothing open"),
        pytest.param(offer(without=("turn",)), ("rotation",), id="turn"),
        pytest.param(offer(without=("seen_from",)), ("rotation",), id="from which end"),
        pytest.param(
            offer(without=("turn", "shaft_diameter_in")), ("rotation", "shaft"), id="turn and shaft"
        ),
        pytest.param(offer(without=("power_hp",)), ("power",), id="power, a soft fact nobody buys without"),
        pytest.param(offer(without=("bearing",)), (), id="a soft fact alone hangs nothing"),
        pytest.param(
            offer(without=("turn", "seen_from"), part_number="hx 100"),
            ("same_maker_and_number",),
            id="presumed by number",
        ),
        pytest.param(
            offer(without=("turn", "seen_from", "volts", "hertz", "mounting"), part_number="HX100"),
            ("same_maker_and_number",),
            id="one prior however much is presumed",
        ),
        pytest.param(
            offer(part_number="HX-100"), ("same_maker_and_number",), id="little said is presumed too"
        ),
    ],
)
@pytest.mark.parametrize("condition", [None, "new", "used", "for_parts"])
def test_the_product_of_what_it_hangs_on(
    record: Record, doubts: tuple[str, ...], condition: str | None
) -> None:
    said = Record("a", record.facts.model_copy(update={"condition": condition}))
    weighed = weigh(OLD, said)
    if doubts != ("same_maker_and_number",) or weighed.judgement.presumed:
        assert open_doubts(weighed.judgement) == doubts
        expected = prod((SETTINGS.priors[doubt] for doubt in doubts), start=1.0)
        assert weighed.fit_chance == pytest.approx(
            expected * SETTINGS.condition_chances[condition or "not_said"]
        )


@pytest.mark.parametrize(
    ("also", "verdict"),
    [
        ({"turn": "ccw"}, "wont_fit"),
        ({"power_hp": 0.25}, "poor"),
        ({"item": "part"}, None),
    ],
)
def test_what_nobody_should_buy_has_no_chance(also: dict[str, object], verdict: str | None) -> None:
    weighed = weigh(OLD, offer(condition="new", **also))
    assert weighed.judgement.verdict == verdict
    assert weighed.fit_chance == 0
    assert fit_chance(weighed.judgement, "new", SETTINGS) == 0


def test_changed_priors_change_the_chance() -> None:
    changed = SETTINGS.changed(priors={"rotation": 0.9}, condition_chances={"used": 0.5})
    assert weigh(OLD, offer(without=("turn",), condition="used"), changed).fit_chance == pytest.approx(0.45)


ELECTRONIC = NAMED | {"motor_type": "ecm_torque", "program_number": "R31180", "speeds": None}


@pytest.mark.parametrize(
    ("new", "health", "said"),
    [
        ({"module": "with", "program_number": "R99"}, None, "if the old module is good"),
        ({"module": "without"}, "unknown", "if the old module is good"),
        ({"module": "with", "program_number": "R99"}, "good", ""),
        ({"module": "with", "program_number": "R31180"}, None, ""),
        ({"module": "without"}, "bad", ""),  # poor: no chance is left to speak of
        ({"module": "module_only"}, None, ""),
    ],
)
def test_a_chance_says_that_it_takes_an_untested_module_as_good(
    new: dict[str, str], health: str | None, said: str
) -> None:
    old = {name: value for name, value in ELECTRONIC.items() if value is not None}
    site = Site(module_health=health) if health else Site()
    facts = {name: value for name, value in old.items() if name not in ("part_number", "program_number")}
    one = weigh(Wanted(motor=Motor(**old), site=site), Record("a", Offer(**(facts | new))), SETTINGS)
    assert one.proviso == said
    assert (f"The chance holds {said}." in as_json(one)["notes"]) is bool(said)
    assert (f"chance {one.fit_chance:.0%}{' ' + said if said else ''}, landed") in "\n".join(explanation(one))
