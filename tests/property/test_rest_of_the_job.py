"""Laws of the rest of the job: whatever is entered, nothing breaks and nothing of it becomes markup."""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from markup import PRINTED, tags

from matcher.airflow.curve import FanCurve, SystemCurve, operating_point
from matcher.airflow.entries import proof_entries
from matcher.airflow.fan_laws import FanPoint, at_speed
from matcher.airflow.heat_rise import airflow_cfm
from matcher.airflow.proof import prove
from matcher.arrival import Entries, stand
from matcher.arrival.deadline import deadline
from matcher.dossier import record_page, substitution_note
from matcher.job import Job, Listing
from matcher.job.listing import Reading
from matcher.motor import MOTOR_FIELDS, Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.rest import rest_of
from matcher.sheet import Swap, as_html, swap_sheet
from matcher.triage import bench_for, diagnose
from matcher.verdict import judge
from matcher.worth import reckon, worth_entries

pytestmark = pytest.mark.property
TODAY = date(2030, 4, 20)

motors = st.fixed_dictionaries(
    {},
    optional={
        "motor_type": st.sampled_from(
            ["psc", "split_phase", "ecm", "ecm_torque", "ecm_airflow", "polyphase"]
        ),
        "volts": st.sampled_from(["115", "208-230", "115/230", "230/460", "120/240"]),
        "phase": st.sampled_from([1, 3]),
        "amps": st.sampled_from([[3.4], [6.8, 3.4]]),
        "rpm": st.sampled_from([[1075], [1075, 825]]),
        "speeds": st.integers(1, 6),
        "turn": st.sampled_from(["cw", "ccw", "either"]),
        "seen_from": st.sampled_from(["lead_end", "shaft_end"]),
        "mounting": st.sampled_from([["band"], ["studs"], ["lugs"], ["cradle"], ["rigid_base"], ["face"]]),
        "shaft_ends": st.sampled_from([1, 2]),
        "shaft_length_in": st.sampled_from([3.0, 5.0, 8.0]),
        "shaft_flats": st.sampled_from([0, 1, 2]),
        "capacitor_uf": st.sampled_from([5.0, 7.5]),
        "plug_pins": st.sampled_from([[4], [5, 16]]),
        "module": st.sampled_from(["with", "without", "module_only"]),
        "enclosure": st.sampled_from(["ODP", "OAO", "TEAO", "TENV"]),
        "protector": st.sampled_from(["auto", "manual", "none"]),
        "brand": st.text(min_size=1, max_size=20),
    },
)
sites = st.fixed_dictionaries(
    {},
    optional={
        "outdoors": st.booleans(),
        "module_health": st.sampled_from(["good", "bad", "unknown"]),
        "supply_volts": st.sampled_from([115.0, 230.0, 460.0]),
        "taps_in_use": st.integers(1, 5),
    },
)
words = st.text(max_size=30) | st.sampled_from(
    ["0", "-1", "1e400", "nan", "inf", "9,600", "0,35", "½", "1/0"]
)


@given(motors, motors, sites)
@settings(max_examples=80, deadline=None)
def test_every_sheet_has_its_cautions_and_no_open_word(
    old: dict[str, object], new: dict[str, object], site: dict[str, object]
) -> None:
    wanted = Wanted(motor=Motor.model_validate(old), site=Site.model_validate(site))
    chosen = Record("x", Offer.model_validate(new))
    sheet = swap_sheet(Swap.of(wanted, chosen, judge(wanted, chosen)))
    names = sheet.names()
    assert {"dead", "two_supplies", "licensed", "ground", "under_load"} <= set(names)
    assert names.index("bench_check") < names.index("ground")
    assert ("module_charge" in names) == ("calibration" in names)
    text = sheet.as_text().replace(str(new.get("brand", "")), "").replace(str(old.get("brand", "")), "")
    assert "{" not in text
    assert tags(as_html(sheet)) <= PRINTED


@given(st.dictionaries(st.sampled_from([entry.name for entry in proof_entries()]), words, max_size=8))
@settings(max_examples=150, deadline=None)
def test_a_proof_run_takes_any_words(texts: dict[str, str]) -> None:
    proof = prove(texts, Offer(volts="208-230", amps=(3.2,), rpm=(1075, 825)))
    assert set(proof.faults) <= {entry.name for entry in proof_entries()}
    assert all(result.value == result.value and abs(result.value) < 1e12 for result in proof.results)


@given(
    st.dictionaries(st.sampled_from(MOTOR_FIELDS), words, max_size=6),
    words,
    words,
    words,
    motors,
)
@settings(max_examples=80, deadline=None)
def test_an_arrival_takes_any_words(
    measured: dict[str, str], bought: str, delivered: str, transit: str, motor: dict[str, object]
) -> None:
    entries = Entries(bought=bought, delivered=delivered, transit_days=transit, measured=measured)
    offer = Offer.model_validate(motor | {"return_days": 30})
    standing = stand(Wanted(motor=Motor.model_validate(motor)), Record("x", offer), entries, TODAY)
    assert standing.window_says
    assert set(standing.values) | set(standing.faults) >= {
        name for name, text in measured.items() if text.strip()
    }


@given(st.dictionaries(st.sampled_from([entry.name for entry in worth_entries()]), words))
@settings(max_examples=80, deadline=None)
def test_a_reckoning_takes_any_words(texts: dict[str, str]) -> None:
    worth = reckon(texts, (Motor(), Offer(price=5, currency="USD"), Site()))
    assert worth.spent is not None
    assert worth.spent >= 0


@given(st.text(max_size=60), st.text(max_size=200), st.text(max_size=40))
@settings(max_examples=60, deadline=None)
def test_papers_hold_any_words_as_words(title: str, text: str, name: str) -> None:
    listing = Listing(
        title=title, text=text, reading=Reading(facts=Offer(brand="<u>x", price=5, currency="USD"))
    )
    job = Job(name=name, listings=(listing,), arrival={"listing": listing.id})
    rest = rest_of(job, TODAY)
    for page in (record_page(rest, TODAY), substitution_note(rest, TODAY)):
        assert tags(page) <= PRINTED
        assert "\u202e" not in page


@given(motors, st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_the_order_of_the_answers_does_not_matter(motor: dict[str, object], chance) -> None:  # type: ignore[no-untyped-def]
    failed = Motor.model_validate(motor)
    answers = {test.name: chance.choice(test.choices) for test in bench_for(failed) if test.choices}
    shuffled = dict(sorted(answers.items(), key=lambda _: chance.random()))
    assert diagnose(failed, answers) == diagnose(failed, shuffled)


@given(st.integers(1, 400), st.integers(0, 60), st.integers(0, 500))
def test_the_last_safe_day_is_a_working_day_from_which_it_is_back_in_time(
    days: int, transit: int, since: int
) -> None:
    delivered = date(2030, 4, 8)
    found = deadline(
        bought=delivered,
        delivered=delivered,
        return_days=days,
        today=delivered + timedelta(days=since),
        transit_days=transit,
    )
    assert found is not None
    if not found.is_tight:
        assert found.send_by.weekday() < 5
        assert found.send_by + timedelta(days=transit) <= found.window_ends
        assert (found.window_ends - found.send_by).days - transit <= 2  # no more lost than a weekend
    assert found.days_left == (found.send_by - delivered).days - since


@given(st.floats(100, 5000), st.floats(0.05, 2), st.floats(0.3, 3))
def test_fan_laws_keep_to_the_system_curve_and_go_back(cfm: float, static: float, ratio: float) -> None:
    system = SystemCurve.through(cfm, static)
    here = FanPoint(1000, cfm, static, 0.5)
    there = at_speed(here, 1000 * ratio)
    assert there.static_in_wc == pytest.approx(system.static_in_wc(there.cfm))
    back = at_speed(there, 1000)
    assert (back.cfm, back.power_hp) == (pytest.approx(cfm), pytest.approx(0.5))


@given(st.floats(500, 3000), st.floats(0.1, 1.5), st.floats(0.5, 2))
def test_fan_and_system_meet_where_both_say(cfm: float, static: float, ratio: float) -> None:
    fan = FanCurve.of([(0, 2 * static), (cfm, static), (2 * cfm, 0)])
    system = SystemCurve.through(cfm, static)
    meeting = operating_point(fan.at_speed_ratio(ratio), system)
    assert meeting == pytest.approx((cfm * ratio, static * ratio**2))


@given(st.floats(1000, 200_000), st.floats(5, 150), st.floats(0, 12_000))
def test_more_heat_more_air_and_thin_air_more_of_it(heat: float, rise: float, altitude: float) -> None:
    assert airflow_cfm(2 * heat, rise) == pytest.approx(2 * airflow_cfm(heat, rise))
    assert airflow_cfm(heat, rise, altitude) >= airflow_cfm(heat, rise)
