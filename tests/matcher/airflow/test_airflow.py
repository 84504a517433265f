"""Airflow from what was measured, and refusals of what can't be."""

import pytest

from matcher.airflow.curve import FanCurve, SystemCurve, operating_point
from matcher.airflow.heat_rise import airflow_cfm, electric_heat_btu_h, furnace_heat_btu_h
from matcher.airflow.static import total_external_static_in_wc
from matcher.airflow.traverse import traverse_cfm
from matcher.errors import BadValue


def test_volts_and_amps_are_watts_and_three_phases_count_root_three() -> None:
    assert electric_heat_btu_h(volts=240, amps=40) == electric_heat_btu_h(watts=9600)
    assert electric_heat_btu_h(volts=240, amps=40, phase=3) == pytest.approx(9600 * 3**0.5 * 3.412)


def test_a_furnace_gives_its_output_or_its_share_of_the_input() -> None:
    assert furnace_heat_btu_h(output=64_000) == furnace_heat_btu_h(input_rate=80_000, efficiency=0.8)


def test_thin_air_needs_more_of_itself() -> None:
    assert airflow_cfm(30_000, 40, altitude_ft=5000) == pytest.approx(
        airflow_cfm(30_000, 40) / 0.832, rel=1e-3
    )


@pytest.mark.parametrize("back", [-0.3, 0.3])
def test_the_return_counts_with_or_without_its_minus(back: float) -> None:
    assert total_external_static_in_wc(0.2, back) == pytest.approx(0.5)


def test_a_traverse_is_the_mean_velocity_times_the_area() -> None:
    assert traverse_cfm([700, 800, 900], 1.5) == pytest.approx(1200)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        pytest.param(lambda: airflow_cfm(40_000, 0), "heat rise: 0 F can't be", id="no rise"),
        pytest.param(lambda: airflow_cfm(40_000, -5), "heat rise: -5 F can't be", id="falling"),
        pytest.param(lambda: total_external_static_in_wc(40, 0.2), "supply static: 40", id="40 in."),
        pytest.param(lambda: traverse_cfm([], 1), "no velocities", id="empty traverse"),
        pytest.param(lambda: airflow_cfm(float("nan"), 30), "heat: nan", id="not a number"),
        pytest.param(
            lambda: airflow_cfm(1000, 30, altitude_ft=90_000), "altitude: 90000", id="above the weather"
        ),
        pytest.param(lambda: FanCurve.of([(100, 1)]), "at least two points", id="one point is no curve"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(call: object, words: str) -> None:
    with pytest.raises(BadValue, match=words):
        call()  # type: ignore[operator]


def test_fan_and_system_meet_on_both_curves() -> None:
    fan = FanCurve.of([(800, 0.9), (1000, 0.7), (1200, 0.4)])
    meeting = operating_point(fan, SystemCurve.through(1000, 0.7))
    assert meeting == pytest.approx((1000, 0.7))


def test_at_another_speed_they_meet_where_the_fan_laws_say() -> None:
    fan = FanCurve.of([(800, 0.9), (1000, 0.7), (1200, 0.4)])
    meeting = operating_point(fan.at_speed_ratio(0.9), SystemCurve.through(1000, 0.7))
    assert meeting == pytest.approx((900, 0.7 * 0.81))


def test_a_system_too_open_for_the_table_has_no_point() -> None:
    assert operating_point(FanCurve.of([(800, 0.9), (1000, 0.7)]), SystemCurve.through(2000, 0.1)) is None
