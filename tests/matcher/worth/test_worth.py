"""Money, hours and energy, and plain words where something isn't known."""

import pytest

from matcher.job import Fallback, Job
from matcher.motor import Motor, Offer, Site
from matcher.worth import Worth, reckon, texts_in, with_worth

OLD = Motor(motor_type="psc", volts="230", phase=1, hertz="60", amps=(3.4,))
NEW = Offer(
    motor_type="psc", volts="208-230", phase=1, hertz="60", amps=(2.4,), price=55, shipping=12, currency="USD"
)
SITE = Site(supply_volts=240)
QUOTE = Fallback(price=1180)
YEAR = {"run_hours": "2000", "price_kwh": "0.15"}


def reckoned(texts: dict[str, str], new: Offer = NEW, old: Motor = OLD, **more: object) -> Worth:
    return reckon(texts, (old, new, SITE), QUOTE, **more)  # type: ignore[arg-type]


def test_price_and_shipping_against_the_quote() -> None:
    worth = reckoned({"hours": "3", "extras": "14"})
    assert (worth.spent, worth.saved) == (81, 1099)
    assert worth.per_hour == pytest.approx(1099 / 3)
    assert "1,099.00 USD less than the quote of 1,180.00" in worth.says[0]


def test_what_was_paid_goes_before_the_listing() -> None:
    worth = reckoned({"paid": "$ 1250"})
    assert (worth.spent, worth.saved) == (1250, -70)
    assert "70.00 USD more than" in worth.says[0]


def test_energy_from_both_plates_shows_its_assumptions() -> None:
    worth = reckoned(YEAR)
    assert worth.energy is not None
    assert worth.energy.saved_kwh == pytest.approx(240 * 0.92 * (3.4 - 2.4) * 2000 / 1000)
    assert worth.energy.saved == pytest.approx(worth.energy.saved_kwh * 0.15)
    assert any("power factor assumed" in line for line in worth.assumed)
    assert "reckoned" in worth.says[-1]


def test_measured_watts_of_both_go_before_the_plates() -> None:
    worth = reckoned(YEAR | {"old_watts": "700"}, proof_watts=500.0)
    assert worth.energy is not None
    assert (worth.energy.saved_kwh, worth.energy.is_measured) == (400, True)
    assert not any("power factor" in line for line in worth.assumed)


def test_one_measurement_is_never_held_against_the_other_plate() -> None:
    worth = reckoned(YEAR, proof_watts=500.0)
    assert worth.energy is not None
    assert not worth.energy.is_measured
    assert any("Only one motor's watts" in line for line in worth.assumed)


def test_an_electronic_motor_s_plate_is_said_to_be_no_true_figure() -> None:
    worth = reckoned(YEAR, new=NEW.model_copy(update={"motor_type": "ecm_torque"}))
    assert any("seldom runs at full load" in line for line in worth.assumed)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"amps": None}, "missing: its amps"),
        ({"motor_type": None}, "missing: what kind it is"),
    ],
)
def test_input_that_is_not_known_is_said_so(change: dict[str, object], words: str) -> None:
    worth = reckoned(YEAR, new=NEW.model_copy(update=change))
    assert worth.energy is None
    assert any(words in line for line in worth.missing)


def test_three_phases_count_root_three() -> None:
    motor = {"motor_type": "polyphase", "volts": "230", "phase": 3, "hertz": "60"}
    old, new = Motor.model_validate(motor | {"amps": [4]}), Offer.model_validate(motor | {"amps": [3]})
    worth = reckoned(YEAR, new=new, old=old)
    assert worth.energy is not None
    assert worth.energy.saved_kwh == pytest.approx(240 * 0.75 * 3**0.5 * 2)


def test_without_hours_and_price_there_is_no_energy_and_it_is_said() -> None:
    worth = reckoned({})
    assert worth.energy is None
    assert any("hours a year" in line for line in worth.missing)
    assert any("price of a kWh" in line for line in worth.missing)


def test_two_currencies_are_not_subtracted() -> None:
    worth = reckoned({}, new=NEW.model_copy(update={"currency": "EUR"}))
    assert worth.saved is None
    assert any("The quote is in USD" in line for line in worth.missing)


def test_nothing_bought_and_nothing_known() -> None:
    worth = reckon({}, None)
    assert (worth.spent, worth.saved, worth.energy, worth.says) == (None, None, None, ())
    assert len(worth.missing) == 2


@pytest.mark.parametrize(
    ("texts", "name"),
    [({"hours": "-3"}, "hours"), ({"price_kwh": "15"}, "price_kwh"), ({"run_hours": "9000"}, "run_hours")],
)
def test_what_cannot_be_is_refused(texts: dict[str, str], name: str) -> None:
    worth = reckoned(texts)
    assert name in worth.faults
    assert worth.spent == 67


def test_entries_stay_as_typed() -> None:
    job = with_worth(with_worth(Job(), "hours", "three"), "quote", "1180")
    assert texts_in(job.worth) == {"hours": "three", "quote": "1180"}
    assert texts_in(with_worth(job, "hours", "").worth) == {"quote": "1180"}
    assert texts_in({"hours": 3, "x": "y"}) == {}
