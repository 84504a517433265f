"""What a candidate costs: every way of saying shipping and returns, and everything that says it twice."""

from dataclasses import replace

import pytest

from matcher.finding import Finding, Outcome
from matcher.money.cost import cost_of, needs_mask
from matcher.money.weigh import weigh
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record
from matcher.settings import Settings

SETTINGS = Settings.shipped().changed(
    swap_costs={
        "capacitor": 14,
        "harness": 25,
        "band_kit": 22,
        "isolators": 12,
        "set_screw": 2,
        "shipping_not_said": 20,
        "way_back": 17,
    }
)
NEEDS = Finding("capacitor", Outcome.LOSS, "why", "source", needs=("capacitor",))
HARNESS = Finding("connector", Outcome.LOSS, "why", "source", needs=("harness",))


def test_a_module_that_must_be_bought_is_charged() -> None:
    ecm = {"motor_type": "ecm_airflow", "brand": "Hexmoor", "volts": "115"}
    wanted = Wanted(motor=Motor(**ecm), site=Site(module_health="bad"))
    bare = Offer(**ecm, module="without", price=100, shipping=10)
    cost = weigh(wanted, Record("a", bare)).cost
    assert cost
    assert cost.needs == (("module", 180),)
    assert cost.landed == 290


@pytest.mark.parametrize(
    ("terms", "lost"),
    [
        pytest.param({}, 110, id="returns not said: all is lost"),
        pytest.param({"return_days": 0}, 110, id="no returns"),
        pytest.param({"return_days": 30}, 27, id="who pays the way back isn't said: the buyer"),
        pytest.param({"return_days": 30, "return_shipping": "buyer"}, 27, id="the buyer pays the way back"),
        pytest.param({"return_days": 30, "return_shipping": "seller"}, 10, id="the seller pays the way back"),
        pytest.param(
            {"return_days": 14, "return_shipping": "seller", "restocking_pct": 15},
            25,
            id="restocking, the seller pays",
        ),
        pytest.param(
            {"return_days": 14, "return_shipping": "buyer", "restocking_pct": 15},
            42,
            id="restocking, the buyer pays",
        ),
        pytest.param(
            {"return_days": 14, "restocking_pct": 100}, 110, id="all kept: never more than all is lost"
        ),
        pytest.param(
            {"return_days": 14, "restocking_pct": 90}, 110, id="the way back costs more than comes back"
        ),
        pytest.param(
            {"return_days": 0, "return_shipping": "seller"}, 110, id="no returns, yet terms for them"
        ),
        pytest.param({"restocking_pct": 15, "return_shipping": "seller"}, 110, id="terms without days"),
    ],
)
def test_what_is_lost_by_the_return_terms(terms: dict[str, object], lost: float) -> None:
    cost = cost_of(Offer(price=100, shipping=10, **terms), 0, SETTINGS)
    assert cost is not None
    assert cost.lost == pytest.approx(lost)
    assert cost.landed == 110


@pytest.mark.parametrize(
    ("shipping", "landed", "lost", "presumed"),
    [
        pytest.param(None, 120, 120, True, id="not said: the table's figure"),
        pytest.param(0, 100, 100, False, id="free"),
        pytest.param(7.5, 107.5, 107.5, False, id="said"),
    ],
)
def test_shipping(shipping: float | None, landed: float, lost: float, presumed: bool) -> None:
    cost = cost_of(Offer(price=100, shipping=shipping), 0, SETTINGS)
    assert cost is not None
    assert (cost.landed, cost.lost, cost.shipping_presumed) == (landed, lost, presumed)
    assert any("Shipping isn't said; 20.00" in note for note in cost.notes) is presumed


@pytest.mark.parametrize(
    ("findings", "needs", "landed"),
    [
        pytest.param([], (), 105, id="nothing"),
        pytest.param([NEEDS], (("capacitor", 14),), 119, id="a capacitor"),
        pytest.param(
            [HARNESS, NEEDS], (("capacitor", 14), ("harness", 25)), 144, id="both, in the table's order"
        ),
        pytest.param([NEEDS, NEEDS], (("capacitor", 14),), 119, id="twice the same is bought once"),
    ],
)
def test_what_the_swap_needs_joins_the_landed_cost(
    findings: list[Finding], needs: tuple[tuple[str, float], ...], landed: float
) -> None:
    cost = cost_of(Offer(price=100, shipping=5), needs_mask(findings), SETTINGS)
    assert cost is not None
    assert (cost.needs, cost.landed, cost.lost) == (needs, landed, 105)


def test_needs_come_from_the_checks() -> None:
    old = Wanted(motor=Motor(motor_type="psc", capacitor_uf=5, leads=True))
    weighed = weigh(
        old, Record("a", Offer(motor_type="psc", capacitor_uf=10, plug_pins=(4,), price=50, shipping=0))
    )
    assert weighed.cost is not None
    assert dict(weighed.cost.needs) == {"capacitor": 14, "harness": 25}
    assert weighed.landed_cost == 89


def test_no_price_no_cost() -> None:
    assert cost_of(Offer(shipping=5), 0, SETTINGS) is None
    assert weigh(Wanted(), Record("a", Offer(shipping=5))).gamble is None


def test_a_price_of_nothing_is_a_price() -> None:
    cost = cost_of(Offer(price=0, shipping=12, return_days=30), 0, SETTINGS)
    assert cost is not None
    assert (cost.landed, cost.lost) == (12, 12)


@pytest.mark.parametrize(
    ("terms", "note"),
    [
        ({"return_days": 0, "return_shipping": "seller"}, "Says no returns, yet names terms for them"),
        ({"return_days": 0, "restocking_pct": 20}, "Says no returns, yet names terms for them"),
        ({"restocking_pct": 20}, "not for how many days"),
        ({"return_shipping": "buyer"}, "not for how many days"),
        ({"return_days": 30}, "Who pays the way back isn't said"),
        ({"return_days": 30, "restocking_pct": 100}, "keeps all of the price"),
        ({"currency": "EUR"}, "taken as EUR"),
    ],
)
def test_what_contradicts_or_was_presumed_is_said_in_one_line(terms: dict[str, object], note: str) -> None:
    cost = cost_of(Offer(price=100, **terms), 0, SETTINGS)
    assert cost is not None
    (said,) = [line for line in cost.notes if note in line]
    assert "\n" not in said


@pytest.mark.parametrize("terms", [{"return_days": 0}, {}, {"return_days": 30, "return_shipping": "seller"}])
def test_clear_terms_need_no_line(terms: dict[str, object]) -> None:
    cost = cost_of(Offer(price=100, shipping=0, item="module", **terms), 0, SETTINGS)
    assert cost is not None
    assert cost.notes == ()


@pytest.mark.parametrize(
    "field", ["shipping", "return_days", "return_shipping", "restocking_pct", "condition"]
)
def test_terms_said_twice_and_differently_are_named(field: str) -> None:
    record = Record("a", Offer(price=100), conflicts=(Conflict(field, (), ()),))
    cost = weigh(Wanted(), record).cost
    assert cost is not None
    assert sum("The listing says two different" in note for note in cost.notes) == 1


@pytest.mark.parametrize(
    ("offer", "on", "landed"),
    [
        pytest.param({}, False, 100, id="shown beside, not counted in"),
        pytest.param({}, True, 114, id="counted in where the settings say so"),
        pytest.param({"module": "module_only"}, True, 100, id="a module alone takes nothing apart"),
        pytest.param({"item": "part"}, True, 100, id="nor does a part"),
    ],
)
def test_wise_parts(offer: dict[str, object], on: bool, landed: float) -> None:
    cost = cost_of(Offer(price=90, shipping=10, **offer), 0, SETTINGS.changed(wise_parts=on))
    assert cost is not None
    assert (cost.landed, cost.lost) == (landed, 100)
    assert sum(price for _, price in cost.wise) == (0 if offer else 14)
    said = [note for note in cost.notes if note.startswith("Wise to replace while it is apart")]
    assert len(said) == (0 if offer else 1)
    assert all(("not counted in" in note) is not on for note in said)


def test_a_finding_without_needs_costs_nothing() -> None:
    assert needs_mask([replace(NEEDS, needs=())]) == 0
