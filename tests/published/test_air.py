"""Airflow, pressure and fan laws against published worked examples, each beside its source."""

import pytest

from matcher.airflow.air import density_ratio
from matcher.airflow.fan_laws import FanPoint, at_speed
from matcher.airflow.heat_rise import airflow_cfm, electric_heat_btu_h
from matcher.airflow.proof import prove
from matcher.airflow.unbalance import derating, unbalance_percent
from matcher.motor import Offer

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("altitude_ft", "over_standard"),
    # psychrolib 2.5.0: dry air at 70 F and standard-atmosphere pressure, over 0.075 lb/ft3.
    [
        (1000, 0.963),
        (2000, 0.928),
        (3000, 0.895),
        (5000, 0.831),
        (7000, 0.771),
        (8000, 0.742),
        (10000, 0.687),
    ],
)
def test_density_at_altitude_and_constant_temperature(altitude_ft: float, over_standard: float) -> None:
    # Sea-level air of 70 F is 0.07489 lb/ft3 in the same library, and not quite 0.075.
    assert density_ratio(altitude_ft) * 0.07489 / 0.075 == pytest.approx(over_standard, abs=0.001)


def test_density_at_5000_ft_is_the_trade_s_083() -> None:
    assert density_ratio(5000) == pytest.approx(0.83, abs=0.005)  # ASHRAE Fundamentals, from memory


@pytest.mark.parametrize(
    ("point", "rpm", "cfm", "static", "power"),
    [
        # ASHRAE Handbook HVAC Systems and Equipment, chapter Fans, worked example (from memory; arithmetic 1.3262).
        pytest.param(FanPoint(600, 6000, 1.13), 650, 6500, 1.326, None, id="600 to 650 rpm"),
        # A published fan-law calculator's worked example.
        pytest.param(FanPoint(1200, 10000, 2.0, 5.0), 1500, 12500, 3.125, 9.766, id="1200 to 1500 rpm"),
        # A fan representative's teaching page: 5 hp becomes 10 hp (9.77 before rounding to a rating).
        pytest.param(FanPoint(1000, 1000, 1.0, 5.0), 1250, 1250, 1.5625, 9.766, id="1000 to 1250 rpm"),
        # The same law as percentages, on two fan engineering pages: +10 % speed, +21 % pressure, +33 % power.
        pytest.param(FanPoint(1000, 100, 1.0, 1.0), 1100, 110, 1.21, 1.331, id="ten per cent faster"),
        # Computed from the law: a 1075 rpm blower on an 825 rpm motor.
        pytest.param(FanPoint(1075, 1000, 0.50, 0.25), 825, 767.4, 0.2945, 0.1130, id="1075 to 825 rpm"),
    ],
)
def test_fan_laws(point: FanPoint, rpm: float, cfm: float, static: float, power: float | None) -> None:
    found = at_speed(point, rpm)
    assert found.cfm == pytest.approx(cfm, rel=1e-3)
    assert found.static_in_wc == pytest.approx(static, rel=1e-3)
    assert found.power_hp == (None if power is None else pytest.approx(power, rel=1e-3))


def test_airflow_from_heat_rise() -> None:
    # CFM = Btu/h / (1.08 dT): 40,000 Btu/h over 50 F is 740.7 CFM (computed from the trade formula).
    assert airflow_cfm(40_000, 50) == pytest.approx(740.7, abs=0.05)


def test_a_watt_is_3_412_btu_an_hour() -> None:
    # scipy.constants: 1 W = 3.412141633 Btu(IT)/h.
    assert electric_heat_btu_h(watts=1000) == pytest.approx(3412.14, rel=1e-4)


@pytest.mark.parametrize(
    ("volts", "percent", "factor"),
    [
        # NEMA MG 1 14.36.2, its own example (numbers seen on a calculator page, the attribution from memory).
        pytest.param((460, 467, 450), 1.96, 0.95, id="460/467/450"),
        # DOE motor tip sheet on voltage unbalance, as quoted on a public page.
        pytest.param((462, 463, 455), 1.09, 1.00, id="462/463/455"),
    ],
)
def test_voltage_unbalance(volts: tuple[float, ...], percent: float, factor: float) -> None:
    found = unbalance_percent(volts)
    assert found == pytest.approx(percent, abs=0.005)
    assert derating(found) == pytest.approx(factor, abs=0.02)  # read off the graph Fig. 14-1


@pytest.mark.parametrize(
    ("percent", "factor"),
    # NEMA MG 1 Fig. 14-1 as tabulated on a public page; the graph reads to +-0.02.
    [
        (0, 1),
        (1, 1),
        (1.5, 0.97),
        (2, 0.95),
        (2.5, 0.93),
        (3, 0.89),
        (3.5, 0.85),
        (4, 0.82),
        (4.5, 0.78),
        (5, 0.76),
    ],
)
def test_derating_for_unbalance(percent: float, factor: float) -> None:
    assert derating(percent) == pytest.approx(factor)


def test_above_five_per_cent_it_must_not_run() -> None:
    assert derating(5.01) is None  # NEMA MG 1 14.36


def test_a_four_ton_unit_at_1400_cfm_is_right_at_its_low_end() -> None:
    # Common practice, 350 to 450 CFM a ton; California Title 24 (2008-2016) has 350 as its floor.
    (result,) = [
        one for one in prove({"unit_cfm": "1400", "tons": "4"}, Offer()).results if one.name == "cfm_per_ton"
    ]
    assert (result.value, result.outcome) == (350, "good")


def test_a_furnace_at_altitude_against_the_trade_s_figures() -> None:
    # 40,000 Btu/h over 50 F: 740.7 CFM at sea level; at 5,000 ft over 0.83 (ASHRAE Fundamentals, from memory).
    entries = {"heat_source": "furnace", "furnace_output": "40000", "rise_f": "50", "altitude_ft": "5000"}
    assert prove(entries, Offer()).cfm == pytest.approx(740.7 / 0.83, rel=0.005)
