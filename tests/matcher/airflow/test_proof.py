"""A proof run: entries become results held against their limits; what can't be is named and kept."""

import pytest

from matcher.airflow.chart import chart_of
from matcher.airflow.entries import proof_entries, texts_in, values_in, with_reading
from matcher.airflow.proof import Proof, prove
from matcher.airflow.result import limits
from matcher.job import Job
from matcher.motor import Motor, Offer, Site

NEW = Offer(motor_type="psc", volts="208-230", amps=(3.2,), rpm=(1075, 825), speeds=2, phase=1, hertz="60")
ECM = Offer(motor_type="ecm_torque", volts="120/240", amps=(7.0, 4.0), rpm_range=(300, 1300))


def outcome(proof: Proof, name: str) -> str:
    return next(result.outcome for result in proof.results if result.name == name)


def says(proof: Proof, name: str) -> str:
    return next(result.says for result in proof.results if result.name == name)


@pytest.mark.parametrize(
    ("entries", "cfm"),
    [
        pytest.param({"heater_watts": "9600", "rise_f": "25"}, 9600 * 3.412 / (1.08 * 25), id="watts"),
        pytest.param(
            {"heater_volts": "240", "heater_amps": "40", "rise_f": "25"},
            9600 * 3.412 / (1.08 * 25),
            id="volts and amps",
        ),
        pytest.param(
            {"heater_volts": "240", "heater_amps": "40", "heater_phase": "3", "rise_f": "25"},
            9600 * 3**0.5 * 3.412 / (1.08 * 25),
            id="three phases",
        ),
        pytest.param(
            {"heat_source": "furnace", "furnace_output": "64,000", "supply_f": "120", "return_f": "70"},
            64_000 / (1.08 * 50),
            id="furnace output, rise worked out",
        ),
        pytest.param(
            {"heat_source": "furnace", "furnace_input": "80000", "rise_f": "50"},
            64_000 / (1.08 * 50),
            id="furnace input at 80 %",
        ),
        pytest.param({"traverse_fpm": "700 800 900", "area_ft2": "1.5"}, 1200, id="traverse"),
        pytest.param({"unit_cfm": "1180"}, 1180, id="the unit's own reading"),
        pytest.param({"rise_f": "25"}, None, id="no heat known"),
        pytest.param(
            {"heat_source": "furnace", "heater_watts": "9600", "rise_f": "25"}, None, id="other source"
        ),
    ],
)
def test_airflow_by_every_way(entries: dict[str, str], cfm: float | None) -> None:
    proof = prove(entries, NEW)
    assert proof.faults == {}
    assert proof.cfm == (None if cfm is None else pytest.approx(cfm))


def test_the_altitude_of_the_place_counts_unless_entered() -> None:
    heat = {"heater_watts": "9600", "rise_f": "25"}
    sea, high = prove(heat, NEW), prove(heat, NEW, site=Site(altitude_ft=5000))
    assert sea.cfm is not None
    assert high.cfm == pytest.approx(sea.cfm / 0.832, rel=1e-3)
    assert prove(heat | {"altitude_ft": "0"}, NEW, site=Site(altitude_ft=5000)).cfm == sea.cfm


@pytest.mark.parametrize(
    ("entries", "name", "expected"),
    [
        ({"unit_cfm": "1400", "tons": "4"}, "cfm_per_ton", "good"),  # right at the low end
        ({"unit_cfm": "1399", "tons": "4"}, "cfm_per_ton", "watch"),
        ({"unit_cfm": "1800", "tons": "4"}, "cfm_per_ton", "good"),
        ({"unit_cfm": "1801", "tons": "4"}, "cfm_per_ton", "watch"),
        ({"supply_static": "0.2", "return_static": "-0.3"}, "external_static", "good"),
        ({"supply_static": "0.21", "return_static": "-0.3"}, "external_static", "watch"),
        ({"supply_static": "0.5", "return_static": "0.5"}, "external_static", "watch"),
        ({"supply_static": "0.6", "return_static": "-0.41"}, "external_static", "bad"),
        ({"filter_drop": "0.2"}, "filter_drop", "good"),
        ({"filter_drop": "0.21"}, "filter_drop", "watch"),
        ({"coil_drop": "0.3"}, "coil_drop", "good"),
        ({"watts": "580", "unit_cfm": "1000"}, "watts_per_cfm", "good"),
        ({"watts": "600", "unit_cfm": "1000"}, "watts_per_cfm", "watch"),
        ({"volts": "253"}, "voltage", "good"),
        ({"volts": "254"}, "voltage", "bad"),
        ({"volts": "187.2"}, "voltage", "good"),
        ({"volts": "187"}, "voltage", "bad"),
        ({"amps": "3.2", "volts": "230"}, "amps", "good"),
        ({"amps": "3.3", "volts": "230"}, "amps", "bad"),
        ({"rpm": "1021.25"}, "speed", "good"),
        ({"rpm": "1000"}, "speed", "watch"),
        ({"rpm": "810"}, "speed", "good"),  # the plate's lower speed
        ({"rpm": "1150"}, "speed", "watch"),
        ({"volts": "460 467 450"}, "voltage_unbalance", "watch"),
        ({"volts": "230 230 231"}, "voltage_unbalance", "good"),
        ({"volts": "200 230 230"}, "voltage_unbalance", "bad"),
        ({"unit_cfm": "1100", "traverse_fpm": "1000", "area_ft2": "1"}, "airflow_unit_agrees", "good"),
        ({"unit_cfm": "1101", "traverse_fpm": "1000", "area_ft2": "1"}, "airflow_unit_agrees", "watch"),
    ],
)
def test_each_result_is_held_against_its_limit(entries: dict[str, str], name: str, expected: str) -> None:
    assert outcome(prove(entries, NEW), name) == expected


def test_a_service_factor_only_allows_a_warning() -> None:
    motor = NEW.model_copy(update={"service_factor": 1.15})
    assert outcome(prove({"amps": "3.6", "volts": "230"}, motor), "amps") == "watch"
    assert outcome(prove({"amps": "3.7", "volts": "230"}, motor), "amps") == "bad"


def test_a_dual_plate_s_amps_count_at_the_measured_voltage() -> None:
    assert "4 A on the plate" in says(prove({"amps": "3.8", "volts": "238"}, ECM), "amps")
    assert "7 A on the plate" in says(prove({"amps": "3.8", "volts": "118"}, ECM), "amps")
    assert outcome(prove({"amps": "3.8"}, ECM), "amps") == "note"  # which supply isn't known


def test_a_variable_speed_motor_is_held_against_its_range() -> None:
    assert outcome(prove({"rpm": "1290"}, ECM), "speed") == "good"
    assert outcome(prove({"rpm": "1500"}, ECM), "speed") == "watch"


@pytest.mark.parametrize(
    ("entries", "key", "words"),
    [
        ({"heater_watts": "9600", "rise_f": "0"}, "rise_f", "0 F can't be"),
        ({"heater_watts": "9600", "rise_f": "-5"}, "rise_f", "-5 F can't be"),
        ({"heater_watts": "9600", "rise_f": "8", "supply_f": "105", "return_f": "70"}, "rise_f", "35 F"),
        ({"heater_watts": "9600", "supply_f": "68", "return_f": "70"}, "supply_f", "is no rise"),
        ({"supply_static": "40", "return_static": "0.1"}, "supply_static", "40 in. w.c. can't be"),
        ({"supply_static": "-0.2", "return_static": "0.3"}, "supply_static", "hoses are swapped"),
        ({"amps": "lots"}, "amps", "is no number"),
        ({"rpm": "1000000000"}, "rpm", "can't be"),
        ({"unit_cfm": "nan"}, "unit_cfm", "is no number"),
        ({"supply_f": "25 C"}, "supply_f", "is no number"),
        ({"rise_f": "25,500"}, "rise_f", "may mean two things"),
        ({"watts": "9" * 500}, "watts", "is no number"),
        ({"heat_source": "stove"}, "heat_source", "electric or furnace"),
        ({"fan_table": "800 0.9 1000"}, "fan_table", "at least two pairs"),
        ({"fan_table": "800 0.9 800 0.7"}, "fan_table", "at least two pairs"),
        ({"fan_table": "0.9 800 0.7 1000"}, "fan_table", "at least two pairs"),
        ({"volts": "0"}, "volts", "can't be"),
        ({"wind": "3"}, "wind", "is no entry"),
    ],
)
def test_what_cannot_be_is_refused_with_its_reason_and_the_rest_stands(
    entries: dict[str, str], key: str, words: str
) -> None:
    proof = prove({"tons": "3", "filter_drop": "0.1", **entries}, NEW)
    assert words in proof.faults[key]
    assert outcome(proof, "filter_drop") == "good"


@pytest.mark.parametrize(
    ("entry", "text", "number"),
    [
        ("furnace_output", "9,600", 9600),
        ("furnace_output", "9 600", 9600),
        ("furnace_output", "0,35", 0.35),
        ("furnace_output", "1,200.5", 1200.5),
        ("furnace_output", "1,200,000", 1_200_000),
        ("furnace_output", " 25 ", 25),
        ("furnace_output", "12,0", 12),
        ("supply_static", "0,125", 0.125),
        ("supply_static", "0,350", 0.35),
        ("supply_static", "+0.35", 0.35),
        ("return_static", "-0,25", -0.25),
        ("filter_drop", "1/8", 0.125),
        ("area_ft2", "1 1/2", 1.5),
    ],
)
def test_numbers_as_people_type_them(entry: str, text: str, number: float) -> None:
    assert values_in({entry: text})[0][entry] == (pytest.approx(number),)


def test_other_speeds_are_those_of_the_plate_or_those_asked_for() -> None:
    entries = {
        "unit_cfm": "1000",
        "rpm": "1075",
        "supply_static": "0.25",
        "return_static": "0.25",
        "watts": "400",
    }
    (slow,) = prove(entries, NEW).others
    assert (slow.rpm, slow.cfm) == (825, pytest.approx(767.4, abs=0.1))
    assert slow.static_in_wc == pytest.approx(0.2945, abs=1e-4)
    assert slow.watts == pytest.approx(400 * 0.4520, abs=0.1)
    asked = prove(entries | {"other_rpm": "900 1200"}, NEW).others
    assert [point.rpm for point in asked] == [900, 1200]


def test_the_chart_s_spots_lie_on_the_system_curve() -> None:
    entries = {"unit_cfm": "1000", "rpm": "1075", "supply_static": "0.25", "return_static": "0.25"}
    chart = chart_of(prove(entries, NEW))
    assert chart is not None
    k = 0.5 / 1000**2
    assert all(spot.point[1] == pytest.approx(k * spot.point[0] ** 2) for spot in chart.spots)
    assert [spot.is_measured for spot in chart.spots] == [True, False]
    assert all(static <= chart.most_in_wc for curve in chart.curves[1:] for _, static in curve.points)


def test_a_sketched_fan_says_so_and_a_table_is_drawn_as_it_is() -> None:
    entries = {"unit_cfm": "1000", "supply_static": "0.35", "return_static": "0.35"}
    sketch = chart_of(prove(entries, NEW))
    table = chart_of(prove(entries | {"fan_table": "800 0.9 1000 0.7 1200 0.4"}, NEW))
    assert sketch is not None
    assert table is not None
    assert sketch.curves[1].is_sketch
    assert "shape only" in sketch.curves[1].label
    assert table.curves[1].points == ((800, 0.9), (1000, 0.7), (1200, 0.4))
    assert "0.00 % off" in table.notes[1]


def test_nothing_to_draw_without_airflow_and_static() -> None:
    assert chart_of(prove({"unit_cfm": "1000"}, NEW)) is None
    assert chart_of(prove({"unit_cfm": "1000", "supply_static": "0", "return_static": "0"}, NEW)) is None


def test_an_electronic_motor_is_reminded_of_its_calibration() -> None:
    assert any("airflow calibration" in line for line in prove({}, ECM).reminders)
    assert not any("airflow calibration" in line for line in prove({}, NEW).reminders)
    assert any("airflow calibration" in line for line in prove({}, NEW, Motor(module="with")).reminders)
    assert not any("registers" in line for line in prove({}, NEW, site=Site(outdoors=True)).reminders)


def test_the_run_in_one_line() -> None:
    assert prove({}, NEW).says == "nothing measured yet"
    assert prove({"unit_cfm": "1180"}, NEW).says == "measured, 1,180 CFM"
    assert prove({"unit_cfm": "1180", "tons": "3"}, NEW).says == "proved, 1,180 CFM"
    assert prove({"unit_cfm": "1180", "tons": "5"}, NEW).says == "look at it again, 1,180 CFM"
    assert prove({"volts": "100"}, NEW).says == "not right yet"


def test_entries_stay_in_the_job_as_typed() -> None:
    job = with_reading(with_reading(Job(), "rise_f", "0"), "tons", "3")
    assert texts_in(job.proof) == {"rise_f": "0", "tons": "3"}
    assert texts_in(with_reading(job, "tons", " ").proof) == {"rise_f": "0"}
    assert texts_in({"entries": {"rise_f": 3, "x": "y"}}) == {}
    assert texts_in({"entries": "x"}) == {}


def test_tables_hold_what_the_code_reads() -> None:
    names = [entry.name for entry in proof_entries()]
    assert len(set(names)) == len(names)
    assert {entry.group for entry in proof_entries()} == {"heat", "flow", "static", "motor", "other"}
    assert all(entry.low < entry.high and entry.how and entry.source for entry in proof_entries())
    assert {"cfm_per_ton", "external_static", "amps_ratio", "speed_ratio", "voltage_unbalance"} <= set(
        limits()
    )


@pytest.mark.parametrize(
    ("entries", "says"),
    [
        (
            {"rise_f": "64", "rated_rise_f": "35-60"},
            "Heat rise 64 F: too little air (its plate says 35 to 60 F).",
        ),
        (
            {"rise_f": "30", "rated_rise_f": "35 – 65"},
            "Heat rise 30 F: too much air (its plate says 35 to 65 F).",
        ),
        ({"rise_f": "65", "rated_rise_f": "35 65"}, "Heat rise 65 F: right (its plate says 35 to 65 F)."),
        (
            {"supply_f": "130", "return_f": "70", "rated_rise_f": "35 - 65"},
            "Heat rise 60 F: right (its plate says 35 to 65 F).",
        ),
        ({"rise_f": "64"}, ""),
        ({"rated_rise_f": "35-65"}, ""),
    ],
)
def test_a_rise_is_held_to_the_furnace_s_own_plate(entries: dict[str, str], says: str) -> None:
    proof = prove(entries, NEW)
    assert proof.faults == {}
    found = [result for result in proof.results if result.name == "rated_rise"]
    assert [result.says for result in found] == ([says] if says else [])
    assert [result.outcome for result in found] == ([("good" if "right" in says else "bad")] if says else [])


@pytest.mark.parametrize("source", [{}, {"heat_source": "electric"}], ids=["not chosen", "electric"])
def test_electric_heat_is_not_held_to_a_furnace_s_plate(source: dict[str, str]) -> None:
    entries = {"heater_volts": "238", "heater_amps": "20", "supply_f": "98", "return_f": "70", "tons": "2"}
    proof = prove(entries | source | {"rated_rise_f": "35-65"}, NEW)
    said = " ".join(result.says for result in proof.results)
    assert "too little air" in said
    assert "too much air" not in said
    assert "choose furnace under Heat from" in proof.faults["rated_rise_f"]


def test_a_furnace_chosen_is_held_to_its_plate_whatever_else_is_entered() -> None:
    entries = {"heat_source": "furnace", "heater_amps": "20", "rise_f": "28", "rated_rise_f": "35-65"}
    proof = prove(entries, NEW)
    assert "Heat rise 28 F: too much air" in " ".join(result.says for result in proof.results)
    assert not proof.faults


@pytest.mark.parametrize("typed", ["65-35", "35", "35 45 65", "-5", "35-65 C"])
def test_a_rated_rise_is_two_figures_the_lowest_first(typed: str) -> None:
    assert set(prove({"rise_f": "50", "rated_rise_f": typed}, NEW).faults) == {"rated_rise_f"}
