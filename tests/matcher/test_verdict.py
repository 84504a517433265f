from itertools import pairwise
from typing import Any

import pytest

from matcher.judging.saying import verdict
from matcher.motor import Motor, Offer, Site, Wanted
from matcher.record import Conflict, Record
from matcher.settings import Settings
from matcher.verdict import VERDICT_ORDER, Judgement, judge, rank_key

OLD: dict[str, Any] = {
    "brand": "Plenquist", "part_number": "PL-2031K", "phase": 1, "hertz": "60", "insulation_class": "B",
    "ambient_c": 40, "duty": "continuous", "protector": "auto", "power_hp": 0.25, "volts": "115", "amps": (4.0,),
    "rpm": (1075,), "speeds": 3, "turn": "cw", "seen_from": "lead_end", "shaft_diameter_in": 0.5,
    "shaft_length_in": 4.0, "shaft_flats": 1, "shaft_ends": 1, "body_diameter_in": 5.6, "body_length_in": 5.0,
    "mounting": ("band",), "enclosure": "ODP", "bearing": "sleeve", "shaft_position": "horizontal",
    "capacitor_uf": 5.0, "capacitor_vac": 370, "motor_type": "psc", "leads": True,
}  # fmt: skip
SITE: dict[str, Any] = {"supply_volts": 120, "in_airstream": True}
EVERY_SOFT = 91  # points of all soft checks of a split-capacitor motor


def judged(
    change: dict[str, Any] | None = None,
    *twice: str,
    site: dict[str, Any] | None = None,
    old: dict[str, Any] | None = None,
    settings: Settings | None = None,
) -> Judgement:
    """Judge the old motor itself, of another maker, with a few facts changed; None hides a fact."""
    changed = OLD | {"brand": "Orvandel", "part_number": "OV-1"} | (change or {}) | dict.fromkeys(twice)
    facts = {name: value for name, value in changed.items() if value is not None}
    was = {name: value for name, value in (OLD | (old or {})).items() if value is not None}
    wanted = Wanted(motor=Motor(**was), site=Site(**(SITE | (site or {}))))
    conflicts = tuple(Conflict(name, (), ()) for name in twice)
    return judge(wanted, Record("c7", Offer(**facts), conflicts=conflicts), settings)


def test_the_same_motor_of_another_maker_fits() -> None:
    judgement = judged()
    assert (judgement.id, judgement.verdict) == ("c7", "fits")
    assert (judgement.score, judgement.score_low, judgement.score_high) == (100.0, 100.0, 100.0)
    assert {found.outcome for found in judgement.findings} <= {"same", "ok"}
    assert judgement.reason.startswith("Every hard check holds")
    assert judgement.deciding is not None


CASES: list[tuple[dict[str, Any], dict[str, Any], str]] = [
    ({}, {}, "fits"),
    ({"volts": "230"}, {}, "wont_fit"),
    ({"turn": "ccw"}, {}, "wont_fit"),
    ({"turn": "ccw", "duty": "intermittent", "power_hp": None}, {}, "wont_fit"),  # fail first
    ({"duty": "intermittent"}, {}, "poor"),
    ({"duty": "intermittent", "power_hp": None}, {}, "poor"),  # at best poor before ask
    ({"power_hp": None}, {}, "ask"),
    ({"rpm": None}, {}, "ask"),
    ({"seen_from": None}, {}, "ask"),
    ({"shaft_diameter_in": None}, {}, "ask"),
    ({"mounting": None, "body_diameter_in": None}, {}, "ask"),
    ({"enclosure": None}, {}, "fits"),  # a soft unknown alone asks nothing
    ({"body_length_in": None}, {}, "fits"),
    ({"body_length_in": None}, {"room_length_in": 6}, "ask"),  # hard with a room
    ({"speeds": 2}, {}, "fits_with_work"),
    ({"shaft_ends": 2}, {}, "fits_with_work"),  # 0.3 anywhere
    ({"shaft_flats": 2}, {}, "fits"),
    ({"shaft_length_in": 5.5}, {}, "fits"),  # 0.2
    ({"capacitor_uf": 10.0}, {}, "fits_with_work"),
    ({"speeds": 2, "enclosure": None}, {}, "fits_with_work"),
]


@pytest.mark.parametrize(("change", "site", "expected"), CASES)
def test_verdicts(change: dict[str, Any], site: dict[str, Any], expected: str) -> None:
    assert judged(change, site=site).verdict == expected


SCORES = [
    # change, site, points lost of how many, points not known
    ({"speeds": 2}, {}, 3.2, 0, 0),
    ({"speeds": 2, "bearing": "ball"}, {}, 3.2, 0, 0),
    ({"enclosure": None}, {}, 0, 0, 10),
    ({"enclosure": None, "speeds": 1}, {}, 6.4, 0, 10),
    ({"shaft_ends": 2}, {}, 3, 10, 0),  # a hard loss joins with weight 10
    ({"shaft_ends": 2, "mounting": ("lugs",)}, {}, 8, 20, 0),
    ({"body_length_in": None}, {}, 0, 0, 3),
    ({"body_length_in": None}, {"room_length_in": 6}, 0, -3, 0),  # a hard unknown doesn't widen
    ({"body_length_in": 5.9}, {}, 0.9, 0, 0),
    ({"body_length_in": 5.9}, {"room_length_in": 6}, 0, 0, 0),
    ({"duty": None}, {}, 0, -3, 0),  # does not apply
    ({"seen_from": None}, {}, 0, 0, 0),
    ({"power_hp": None}, {}, 0, 0, 20),
]


@pytest.mark.parametrize(("change", "site", "lost", "more", "open_points"), SCORES)
def test_scores(
    change: dict[str, Any], site: dict[str, Any], lost: float, more: float, open_points: float
) -> None:
    judgement = judged(change, site=site)
    every = EVERY_SOFT + more
    assert judgement.score == pytest.approx(100 * (1 - lost / (every - open_points)), abs=0.05)
    assert judgement.score_low == pytest.approx(100 * (1 - (lost + open_points) / every), abs=0.05)
    assert judgement.score_high == pytest.approx(100 * (1 - lost / every), abs=0.05)


def test_a_fail_makes_everything_nothing() -> None:
    judgement = judged({"turn": "ccw", "enclosure": None})
    assert (judgement.score, judgement.score_low, judgement.score_high) == (0, 0, 0)


def test_nothing_known_has_no_score() -> None:
    judgement = judge(Wanted(), Record("c"))
    assert judgement.verdict == "ask"
    assert (judgement.score, judgement.score_low, judgement.score_high) == (None, 0.0, 100.0)


@pytest.mark.parametrize(("weight", "expected"), [(0.0, "fits_with_work"), (1000.0, "poor")])
def test_a_low_score_is_poor(weight: float, expected: str) -> None:
    heavy = Settings.shipped().changed(weights={"taps": weight})
    assert judged({"speeds": 1}, settings=heavy).verdict == expected


def test_sixty_is_good_enough() -> None:
    """One tap of three missing costs 0.4 of everything: 60 points exactly, before rounding."""
    names = Settings.shipped().weights
    only = Settings.shipped().changed(weights=dict.fromkeys(names, 0.0) | {"taps": 10.0})
    assert (judged({"speeds": 2}, settings=only).verdict, judged({"speeds": 2}, settings=only).score) == (
        "fits_with_work",
        60.0,
    )
    more = only.changed(weights={"capacitor": 0.01})
    assert judged({"speeds": 2}, settings=more).verdict == "fits_with_work"
    less = only.changed(weights={"speed": 0.001})
    judgement = judged({"speeds": 2, "rpm": (800,)}, settings=less)
    assert (judgement.verdict, judgement.score) == ("poor", 60.0)  # shown as 60, a trifle below


ELECTRONIC = {"motor_type": "ecm_torque", "rpm": None, "rpm_range": (300, 1300), "program_number": "P1"}


@pytest.mark.parametrize(
    ("health", "expected"), [("good", "fits"), ("unknown", "ask"), ("bad", "ask"), (None, "ask")]
)
def test_an_unknown_module_asks_unless_the_old_one_is_good(health: str | None, expected: str) -> None:
    new = ELECTRONIC | {"program_number": None, "module": "with", "brand": "Plenquist"}
    site = {"module_health": health} if health else {}
    assert judged(new, old=ELECTRONIC, site=site).verdict == expected
    unsaid = judged(new | {"module": None}, old=ELECTRONIC, site=site)
    assert unsaid.verdict == ("fits" if health == "good" else "ask")


def test_a_module_alone_for_a_good_motor() -> None:
    alone = {"volts": "115", "motor_type": "ecm_torque", "phase": 1, "hertz": "60", "module": "module_only"}
    new = dict.fromkeys(OLD) | alone | {"program_number": "P1", "brand": "Orvandel", "item": "module"}
    site = {"module_health": "bad", "motor_health": "good"}
    judgement = judged(new, old=ELECTRONIC, site=site)
    names = [found.check for found in judgement.findings]
    assert names == ["voltage", "phase", "frequency", "drive", "hazard", "connector", "module"]
    assert judgement.verdict == "fits_with_work"
    assert judgement.score == pytest.approx(100 * (1 - 15 * 0.3 / 15))
    judgement = judged(new, old=ELECTRONIC, site={"module_health": "bad"})
    assert "shaft" in [found.check for found in judgement.findings]
    assert judgement.verdict == "ask"


def test_a_part_is_not_judged() -> None:
    judgement = judged({"item": "part"})
    assert (judgement.verdict, judgement.score, judgement.findings) == (None, None, ())
    assert "part" in judgement.reason


@pytest.mark.parametrize(
    "name", ["volts", "phase", "hertz", "turn", "shaft_diameter_in", "mounting", "motor_type"]
)
def test_a_contradicted_hard_fact_asks(name: str) -> None:
    assert judged({}, name).verdict == "ask"
    assert judged({"brand": "Plenquist", "part_number": "PL2031K"}, name).verdict == "ask"


@pytest.mark.parametrize("name", ["program_number", "module", "control_signal", "module_number"])
def test_two_values_of_a_module_s_fact_never_fit_a_line_voltage_motor(name: str) -> None:
    judgement = judged({"motor_type": None, "capacitor_uf": None, "capacitor_vac": None}, name)
    assert judgement.verdict == "ask"


def test_weights_stand_in_the_findings() -> None:
    by = {found.check: found.weight for found in judged({"shaft_ends": 2, "enclosure": None}).findings}
    assert (by["shaft"], by["power"], by["enclosure"], by["voltage"]) == (10, 20, 10, 0)


def test_the_finding_that_decides() -> None:
    def decides(change: dict[str, Any]) -> str | None:
        found = judged(change).deciding
        return found.check if found else None

    assert decides({"turn": "ccw", "volts": "230"}) == "voltage"  # the first fail
    assert decides({"duty": "intermittent", "power_hp": 0.1}) == "power"  # the dearest at best poor
    assert decides({"seen_from": None, "phase": None, "motor_type": None, "capacitor_uf": None}) == "rotation"
    assert decides({"power_hp": None, "seen_from": None, "rpm": None}) in ("rotation", "power", "speed")
    assert decides({"speeds": 2, "capacitor_uf": 10.0}) == "taps"
    assert decides({}) == "rotation"


def test_presumed_by_number_is_noted_and_the_photo_comes_first() -> None:
    hidden = dict.fromkeys(OLD) | {"brand": "PLENQUIST", "part_number": "pl 2031k", "seen_from": None}
    judgement = judged(hidden)
    assert judgement.verdict == "fits"
    assert judgement.questions[0].field == "plate_photo"
    assert "shaft_diameter_in" in judgement.presumed
    assert "presumed" in judgement.notes[0]


def test_questions_are_ordered_by_what_they_decide() -> None:
    judgement = judged({"seen_from": None, "enclosure": None, "speeds": None, "protector": None})
    assert [asked.field for asked in judgement.questions] == ["seen_from", "enclosure", "speeds", "protector"]
    assert [asked.check for asked in judgement.questions] == ["rotation", "enclosure", "taps", "protector"]
    assert all(asked.text.endswith("?") and asked.whom == "seller" for asked in judgement.questions)
    home = judged({}, old={"turn": None, "seen_from": None}).questions
    assert [(asked.field, asked.whom) for asked in home] == [("old.turn", "home")]


@pytest.mark.parametrize(
    ("number", "words"),
    [
        ("PL-2O31K", "look-alike"),
        ("PL-2031K-AB", "suffix"),
        ("PL-2031", "suffix"),
        ("XX", None),
    ],
)
def test_near_numbers_are_noted_and_presume_nothing(number: str, words: str | None) -> None:
    judgement = judged({"brand": "Plenquist", "part_number": number, "shaft_diameter_in": None})
    assert judgement.verdict == "ask"
    assert not judgement.presumed
    assert [words in note for note in judgement.notes] == ([True] if words else [])


def test_another_number_among_the_listing_s_is_noted() -> None:
    judgement = judged({"other_numbers": ("ZZ-1", "pl2031k")})
    assert "among its other numbers" in judgement.notes[0]
    assert not judgement.presumed


def test_best_first() -> None:
    keys = [
        rank_key("fits", 90, 100),
        rank_key("fits", 90, 120),
        rank_key("fits", 90, None),
        rank_key("fits", 80, 10),
        rank_key("fits_with_work", 99, 1),
        rank_key("ask", 99, 1),
        rank_key("ask", None, 1),
        rank_key("poor", 99, 1),
        rank_key("wont_fit", 0, 1),
        rank_key(None, None, 1),
    ]
    assert all(one < other for one, other in pairwise(keys))
    assert VERDICT_ORDER == ("fits", "fits_with_work", "ask", "poor", "wont_fit", None)


def test_a_fact_said_twice_is_not_called_unsaid() -> None:
    judgement = judged(None, "turn")
    assert judgement.verdict == "ask"
    assert judgement.reason == "The listing says two different things about its turn. Which holds?"
    assert "isn't said" in judged({"turn": None, "seen_from": None}).reason


@pytest.mark.parametrize(
    ("title", "text", "words"),
    [
        ("Wheel 10 x 6", "bore 1/2", "a part: Wheel 10 x 6."),
        (
            "",
            "\nSquirrel cage wheel 11 x 10, 1/2 inch bore\nCleaned.",
            "a part: Squirrel cage wheel 11 x 10, 1/2 inch bore.",
        ),
        ("", "", "a part: something else."),
        (
            "Blower wheel for a furnace, 10 x 8, half inch bore, CCW rotation, nicely balanced, no dents",
            "",
            "a part: Blower wheel for a furnace, 10 x 8, half inch bore, CCW rotation, nicely…",
        ),
    ],
)
def test_a_part_is_called_what_its_listing_calls_it(title: str, text: str, words: str) -> None:
    part = Record("p", Offer(item="part"), title=title, text=text)
    assert words in judge(Wanted(), part).reason


def test_no_small_loss_hides_behind_a_fit() -> None:
    long = OLD["shaft_length_in"] + 2
    judgement = judged({"shaft_length_in": long})
    assert (judgement.verdict, judgement.minds) == ("fits", 1)
    assert judgement.reason.startswith("Mind: ")
    assert "cut it" in judgement.reason
    assert verdict(judgement.verdict, judgement.minds) == "fits, mind 1 thing"
    two = judged({"shaft_length_in": long, "enclosure": "TENV"}, old={"enclosure": "OAO"})
    assert (two.verdict, two.minds) == ("fits", 2)
    assert "Mind 1 more that cost less." in two.reason
    assert judged({"turn": "ccw", "shaft_length_in": long}).minds == 0
