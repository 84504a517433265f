"""Sheets of six jobs as different as they come: each step stands where it is needed, and nowhere else."""

import pytest
from markup import PRINTED, tags

from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Record
from matcher.sheet import Swap, as_html, swap_sheet
from matcher.sheet.conditions import CONDITIONS, holds
from matcher.tables import rows
from matcher.verdict import judge


def swap(old: dict[str, object], new: dict[str, object], site: dict[str, object] | None = None) -> Swap:
    """Return a swap with its judgement."""
    wanted = Wanted(motor=Motor.model_validate(old), site=Site.model_validate(site or {}))
    chosen = Record("x", Offer.model_validate(new))
    return Swap.of(wanted, chosen, judge(wanted, chosen))


BLOWER: dict[str, object] = {
    "motor_type": "psc",
    "mounting": ["band"],
    "turn": "ccw",
    "seen_from": "lead_end",
    "volts": "208-230",
    "phase": 1,
    "amps": [3.4],
    "speeds": 3,
    "shaft_length_in": 5.0,
    "shaft_flats": 1,
    "shaft_ends": 1,
    "capacitor_uf": 7.5,
    "capacitor_vac": 370,
    "leads": True,
    "body_diameter_in": 5.625,
}
PSC_BAND = swap(
    BLOWER,
    BLOWER | {"turn": "either", "shaft_length_in": 7.0, "shaft_flats": 0, "amps": [3.2]},
    {"taps_in_use": 2, "supply_volts": 230},
)
CONDENSER: dict[str, object] = {
    "motor_type": "psc",
    "mounting": ["studs"],
    "bolt_circle_in": 3.4,
    "turn": "cw",
    "seen_from": "shaft_end",
    "volts": "208-230",
    "phase": 1,
    "enclosure": "TEAO",
    "shaft_position": "up",
    "leads": True,
    "capacitor_uf": 5,
}
STUD_CONDENSER = swap(CONDENSER, CONDENSER, {"outdoors": True})
AIR_HANDLER: dict[str, object] = {
    "brand": "Velmarrow",
    "motor_type": "ecm_airflow",
    "mounting": ["band"],
    "volts": "120/240",
    "plug_pins": [5, 16],
    "turn": "ccw",
    "seen_from": "lead_end",
    "program_number": "55-203",
}
ECM_WITHOUT_MODULE = swap(
    AIR_HANDLER, AIR_HANDLER | {"module": "without"}, {"module_health": "good", "supply_volts": 240}
)
BASE: dict[str, object] = {
    "motor_type": "polyphase",
    "phase": 3,
    "mounting": ["rigid_base"],
    "frame": "56",
    "volts": "230/460",
    "shaft_keyed": True,
}
POLYPHASE_BASE = swap(BASE, BASE)
DUAL: dict[str, object] = {
    "motor_type": "split_phase",
    "mounting": ["cradle"],
    "frame": "48",
    "volts": "115/230",
    "phase": 1,
    "turn": "either",
    "amps": [6.2, 3.1],
}
DUAL_VOLTAGE = swap(
    DUAL | {"turn": "cw", "protector": "manual"}, DUAL | {"protector": "auto"}, {"supply_volts": 115}
)
TWO_WHEELS: dict[str, object] = BLOWER | {"shaft_ends": 2, "mounting": ["lugs"]}
DOUBLE_SHAFT = swap(TWO_WHEELS, TWO_WHEELS | {"speeds": 1}, {"taps_in_use": 1})

JOBS = {
    "psc band": PSC_BAND,
    "stud condenser": STUD_CONDENSER,
    "ecm without module": ECM_WITHOUT_MODULE,
    "polyphase base": POLYPHASE_BASE,
    "dual voltage": DUAL_VOLTAGE,
    "double shaft": DOUBLE_SHAFT,
}

ABSENT = {
    # what must not stand on a sheet, job by job
    "psc band": "module_charge module_off module_on link tubing drain shims phases two_wheels calibration studs rings",
    "stud condenser": "inlet_gap band_position band_on wheel_on proof two_wheels module_charge rotation isolators",
    "ecm without module": "capacitor_charge capacitor colours taps_in_use unused_taps splice tubing shims phases",
    "polyphase base": "capacitor rotation clocking wheel_on torque inlet_gap taps_in_use colours wheel_off no_oil",
    "dual voltage": "capacitor_charge module_charge band_position drain phases taps_in_use two_wheels",
    "double shaft": "spare_end band_position rotation long_shaft link unused_taps",
}
PRESENT = {
    "psc band": (
        "dead two_supplies capacitor_charge fingers saw file band_position clocking inlet_gap colours taps_in_use "
        "rotation cut_shaft flat band_on capacitor wheel_on torque spins_free unused_taps ground proof"
    ),
    "stud condenser": (
        "dead tubing studs blade_depth hub_depth blade_on blade_free drain drip_loop proof_outdoors capacitor"
    ),
    "ecm without module": (
        "module_charge plug_order module_off windings module_on calibration link rotation_absent old_link plugs_in"
    ),
    "polyphase base": "phases shims pulley pulley_off pulley_on link phase_leads phase_joints phase_turn feet free unbalance old_link straight_edge",
    "dual voltage": "link old_link rotation restarts rings strap turn isolators",
    "double shaft": "two_wheels each_wheel lugs isolators capacitor taps_in_use",
}


def test_every_row_has_a_name_of_its_own_a_part_and_known_conditions() -> None:
    table = rows("sheet_steps")
    assert len({row["name"] for row in table}) == len(table)
    assert {row["part"] for row in table} == {"caution", "tool", "before", "out", "prepare", "in", "run"}
    used = {name for row in table for name in row["when"].split("+")}
    assert used == set(CONDITIONS)
    assert all(row["source"] for row in table)


@pytest.mark.parametrize("job", JOBS)
def test_steps_that_this_job_needs(job: str) -> None:
    needed = {name for name in PRESENT[job].split() if not name.endswith("_absent")}
    assert needed - set(swap_sheet(JOBS[job]).names()) == set()


@pytest.mark.parametrize("job", JOBS)
def test_steps_that_this_job_does_not_need(job: str) -> None:
    assert set(ABSENT[job].split()) & set(swap_sheet(JOBS[job]).names()) == set()


@pytest.mark.parametrize("name", CONDITIONS)
def test_every_condition_tells_jobs_apart(name: str) -> None:
    more = [
        swap(BLOWER | {"explosion_proof": True}, BLOWER),
        swap(BLOWER, BLOWER | {"shaft_ends": 2}),
        swap(BLOWER | {"mounting": ["lugs"]}, BLOWER),
        swap(BLOWER, {"motor_type": "ecm_torque", "module": "with"}),
    ]
    answers = {holds(name, one) for one in [*JOBS.values(), *more]}
    assert answers == ({True} if name == "always" else {True, False})


@pytest.mark.parametrize("job", JOBS)
def test_cautions_lead_and_no_word_is_left_open(job: str) -> None:
    text = swap_sheet(JOBS[job]).as_text()
    assert (
        text.index("Cautions")
        < text.index("Tools")
        < text.index("Before it comes apart")
        < text.index("Put back")
    )
    assert "{" not in text
    assert "verify with a meter" in text
    assert "Local code" in text


def test_link_and_rotation_are_set_before_the_wheel_goes_on() -> None:
    names = swap_sheet(DUAL_VOLTAGE).names()
    assert names.index("link") < names.index("rotation") < names.index("wheel_on")
    names = swap_sheet(PSC_BAND).names()
    assert (
        names.index("cut_shaft") < names.index("wheel_on") < names.index("torque") < names.index("spins_free")
    )


@pytest.mark.parametrize(
    ("job", "words"),
    [
        ("psc band", "Fit the capacitor that the new plate asks for: 7.5 uF, 370 VAC."),
        ("psc band", "(2 in use)"),
        ("psc band", "Shorten the shaft to 5 in"),
        ("psc band", "amps not above 3.2 A"),
        ("psc band", "The plate says counter-clockwise, seen from the lead end."),
        ("stud condenser", "out of the fan blade"),
        ("stud condenser", "slinger or rain cap"),
        ("ecm without module", "each plug (5 and 16 pins)"),
        ("ecm without module", "wait 5 minutes"),
        ("ecm without module", "nor near a module"),
        ("ecm without module", "Set the voltage link for 240 V"),
        ("polyphase base", "line up the pulley or coupling"),
        ("dual voltage", "Set the voltage link for 115 V"),
        ("dual voltage", "amps not above 6.2 A"),
        ("double shaft", "Motor, wheels and housing are heavy"),
    ],
)
def test_words_from_this_job_s_facts(job: str, words: str) -> None:
    assert words in swap_sheet(JOBS[job]).as_text()


def test_amps_that_cannot_be_placed_are_left_to_the_plate() -> None:
    unplaced = swap(DUAL, DUAL)  # 115/230 and nobody says which it is on
    assert "amps not above the plate's figure for your volts" in swap_sheet(unplaced).as_text()


def test_a_bad_module_stays_where_it_is() -> None:
    bad = swap(AIR_HANDLER, AIR_HANDLER | {"module": "without"}, {"module_health": "bad"})
    assert not {"module_off", "module_on"} & set(swap_sheet(bad).names())


def test_a_good_module_moves_when_the_new_one_carries_another_program() -> None:
    other = AIR_HANDLER | {"module": "with", "program_number": "55-999"}
    assert "module_on" in swap_sheet(swap(AIR_HANDLER, other, {"module_health": "good"})).names()
    assert "module_on" not in swap_sheet(swap(AIR_HANDLER, AIR_HANDLER | {"module": "with"})).names()


@pytest.mark.parametrize(
    ("old", "new", "step", "words", "expected"),
    [
        ({"shaft_length_in": 0.235}, {"shaft_length_in": 1.235}, "cut_shaft", "cut it", False),  # met exactly
        ({"shaft_length_in": 5.0}, {"shaft_length_in": 6.01}, "cut_shaft", "cut it", True),
        ({"shaft_flats": 2}, {"shaft_flats": 0}, "flat", "file one", True),
        ({"shaft_flats": 2}, {"shaft_flats": 0, "shaft_keyed": True}, "flat", "file one", False),
        ({"shaft_flats": 0}, {"shaft_flats": 0}, "flat", "file one", False),
    ],
)
def test_the_shaft_is_worked_on_where_its_check_says_so(
    old: dict[str, object], new: dict[str, object], step: str, words: str, expected: bool
) -> None:
    sized = BLOWER | {"shaft_diameter_in": 0.5}
    job = swap(sized | old, sized | new)
    assert (step in swap_sheet(job).names()) is expected
    (found,) = [finding for finding in job.judgement.findings if finding.check == "shaft"]
    assert (words in found.why) is expected


MOVES = {
    # old, new and site over an air handler's: whether the old module goes on the new motor
    "a line-voltage motor has none to lend": ({"motor_type": "psc"}, {"module": "without"}, "good", False),
    "of unknown health it may": ({}, {"module": "without"}, "unknown", True),
    "a bad one never": ({}, {"module": "without"}, "bad", False),
    "equal maker and number make equal programs": ({}, {"module": "with"}, "good", False),
    "no program said and another number": (
        {},
        {"module": "with", "part_number": "VM-2", "program_number": None},
        "good",
        True,
    ),
    "another module's number": (
        {"program_number": None, "module_number": "M1"},
        {"module": "with", "part_number": "VM-2", "program_number": None, "module_number": "M2"},
        "good",
        True,
    ),
    "a module alone": ({}, {"module": "module_only"}, "bad", False),
    "nobody says": ({}, {"module": None}, "good", False),
}


@pytest.mark.parametrize("moves", MOVES)
def test_the_module_moves_where_its_check_says_so(moves: str) -> None:
    old, new, health, expected = MOVES[moves]
    handler = AIR_HANDLER | {"part_number": "VM-1"}
    job = swap(handler | old, handler | new, {"module_health": health, "motor_health": "good"})
    assert ("module_on" in swap_sheet(job).names()) is expected
    assert ("module_off" in swap_sheet(job).names()) is expected
    (found,) = [finding for finding in job.judgement.findings if finding.check == "module"]
    assert ("old module over" in found.why or "good one can move over" in found.why) is expected


def test_notes_stay_with_their_step_when_the_facts_change() -> None:
    notes = {"band_position": "2 1/4 in", "turn": "towards me", "gone": "x"}
    for job in (PSC_BAND, swap(BLOWER | {"turn": "cw"}, BLOWER)):
        text = swap_sheet(job, notes).as_text()
        assert "band's edge. 2 1/4 in" in text
        assert "towards me" in text


def test_a_hostile_listing_stays_text_on_the_page() -> None:
    hostile = swap(
        BLOWER, BLOWER | {"brand": "<script>alert(1)</script>\u202e", "part_number": '"><img src=x>'}
    )
    page = as_html(swap_sheet(hostile, {"turn": "<b>bold</b>"}), job="<i>attic</i>")
    assert tags(page) <= PRINTED
    assert "\u202e" not in page
    assert "&lt;script&gt;" in page
    assert "&lt;b&gt;bold" in page


def test_the_page_says_what_it_rests_on() -> None:
    page = as_html(swap_sheet(PSC_BAND))
    for source in ("OSHA 29 CFR 1910.147", "NIOSH 94-110", "NEMA MG 1 12.44", "not law for a homeowner"):
        assert source in page


def test_json_holds_every_line_with_its_source() -> None:
    parts = swap_sheet(PSC_BAND).as_json()["parts"]
    assert isinstance(parts, dict)
    assert all(line["source"] for kept in parts.values() for line in kept)


def test_a_motor_that_does_not_fit_is_not_fitted_in_silence() -> None:
    wrong = swap(BLOWER | {"shaft_diameter_in": 0.5}, BLOWER | {"shaft_diameter_in": 0.625})
    sheet = swap_sheet(wrong)
    assert sheet.warning.startswith("Stop: by the rules it doesn't fit. Its shaft is 5/8 in")
    assert sheet.warning in sheet.as_text()
    assert "Stop: by the rules" in as_html(sheet)
    assert swap_sheet(swap(FITTING, FITTING)).warning == ""


FITTING = BLOWER | {
    "shaft_diameter_in": 0.5,
    "power_hp": 0.5,
    "rpm": [1075],
    "hertz": "60",
    "enclosure": "OAO",
}


@pytest.mark.parametrize(
    ("speeds", "new", "used", "expected"),
    [
        (4, {"speeds": 4}, None, True),  # how many the plate names isn't how many are in use
        (3, {"speeds": 3}, 2, True),
        (3, {}, 2, True),
        (None, {}, None, True),
        (3, {"speeds": 3}, 3, False),
        (3, {"speeds": 1}, None, False),
        (4, {"motor_type": "ecm_torque"}, None, False),
    ],
)
def test_unused_speed_wires_are_insulated_unless_none_can_be(speeds, new, used, expected) -> None:  # type: ignore[no-untyped-def]
    old = {name: value for name, value in BLOWER.items() if name != "speeds"}
    plate = old | ({"speeds": speeds} if speeds else {})
    site = {"taps_in_use": used} if used else {}
    text = swap_sheet(swap(plate, old | new, site)).as_text()
    assert ("Insulate every unused speed wire" in text) is expected
    assert ("Insulating end caps" in text) is expected


def test_the_sheet_says_when_nobody_counted_the_speeds_in_use() -> None:
    text = swap_sheet(swap(BLOWER | {"speeds": 4}, BLOWER)).as_text()
    assert "which speed wires are in use (how many of 4 isn't known: count them)" in text
    assert "4 in use" not in text


def test_leads_are_joined_by_what_they_do_and_not_by_colour() -> None:
    other = swap(BLOWER | {"brand": "Durhollen"}, BLOWER | {"brand": "Pellwick"})
    text = swap_sheet(other).as_text()
    assert "after the new motor's own diagram and never by colour: common to common, each speed" in text
    assert "capacitor wires to the capacitor" in text
    assert "colour by colour" not in text
    single = swap_sheet(swap(BLOWER, {"motor_type": "split_phase", "speeds": 1})).as_text()
    assert "common to common, supply to the one speed; crimp" in single


def test_a_turn_without_its_view_is_not_set_by_the_plate() -> None:
    text = swap_sheet(DUAL_VOLTAGE).as_text()
    assert "The plate says clockwise, but not seen from which end." in text
    assert "Set the rotation now, before the wheel goes on: as written down above." in text
