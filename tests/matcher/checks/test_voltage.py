from collections.abc import Callable

import pytest

Told = Callable[..., str]

ON_SIXTY = {"hertz": "60"}

# supply said: new volts, supply volts, outcome; old plate is the supply's own
SUPPLIED = [
    ("115", 120, "ok"),
    ("115", 110, "ok"),
    ("120", 115, "ok"),
    ("127", 120, "loss 0.5"),  # 114.3..139.7: 120 inside, 110 not
    ("100", 120, "fail"),  # 90..110
    ("110", 120, "loss 0.5"),  # 99..121
    ("200", 208, "ok"),  # 180..220
    ("230", 208, "loss 0.5"),  # 207..253 against 191..218
    ("230", 200, "loss 0.5"),
    ("232", 208, "fail"),  # 208.8
    ("231", 208, "loss 0.5"),  # 207.9
    ("208-230", 208, "ok"),
    ("208-230", 240, "ok"),
    ("212-230", 208, "ok"),  # 190.8
    ("213-230", 208, "loss 0.5"),  # 191.7
    ("208", 240, "fail"),  # 187.2..228.8
    ("229", 240, "loss 0.5"),  # 251.9
    ("230", 240, "ok"),  # 253
    ("240", 230, "ok"),  # 216..264
    ("245", 230, "loss 0.5"),  # 220.5
    ("265", 277, "ok"),  # 238.5..291.5
    ("277", 265, "ok"),
    ("264", 277, "loss 0.5"),  # 290.4
    ("460", 480, "ok"),
    ("460", 440, "ok"),
    ("480", 460, "ok"),  # 432..528
    ("490", 480, "loss 0.5"),  # 441
    ("575", 600, "ok"),  # 517.5..632.5
    ("572", 600, "loss 0.5"),  # 629.2
    ("115/230", 240, "ok"),
    ("115/208-230", 208, "ok"),
    ("115", 240, "fail"),
    ("230", 120, "fail"),
    ("347", 347, "ok"),  # no named system: 329.65..364.35
]


@pytest.mark.parametrize(("new", "supply", "expected"), SUPPLIED)
def test_the_named_system_at_60_hz(told: Told, new: str, supply: float, expected: str) -> None:
    assert told("voltage", ON_SIXTY, {"volts": new}, {"supply_volts": supply}) == expected


AT_FIFTY = [
    ("230", 220, "ok"),  # 230 system 207..253
    ("230", 230, "ok"),
    ("230", 240, "ok"),
    ("220", 230, "loss 0.5"),  # 198..242
    ("220-240", 230, "ok"),
    ("240", 230, "loss 0.5"),  # 216
    ("400", 380, "ok"),
    ("380", 400, "loss 0.5"),  # 342..418
    ("380-415", 415, "ok"),
    ("115", 115, "ok"),  # a 60 Hz name: 109.25..120.75
    ("104", 115, "fail"),  # 114.4 does not reach 115
    ("106", 115, "loss 0.5"),  # 95.4..116.6
    ("460", 460, "ok"),  # 437..483
]


@pytest.mark.parametrize(("new", "supply", "expected"), AT_FIFTY)
def test_the_named_system_at_50_hz(told: Told, new: str, supply: float, expected: str) -> None:
    assert told("voltage", {"hertz": "50"}, {"volts": new}, {"supply_volts": supply}) == expected


@pytest.mark.parametrize("hertz", [None, "50/60"])
@pytest.mark.parametrize(
    ("new", "supply", "expected"),
    [
        ("230", 230, "ok"),  # 220..252 and 207..253
        ("240", 230, "unknown"),  # 216..264: the 50 Hz band reaches down to 207
        ("115", 480, "fail"),
        ("115", 120, "ok"),  # 110..126 and 114..126
        ("208-230", 240, "ok"),
    ],
)
def test_with_hertz_not_settled_both_systems_must_be_served(
    told: Told, hertz: str | None, new: str, supply: float, expected: str
) -> None:
    old = {"hertz": hertz} if hertz else {}
    assert told("voltage", old, {"volts": new}, {"supply_volts": supply}) == expected


@pytest.mark.parametrize(
    ("measured", "expected"), [(206.9, "fail"), (207, "ok"), (240, "ok"), (253, "ok"), (253.1, "fail")]
)
def test_measured_volts_go_before_everything(told: Told, measured: float, expected: str) -> None:
    site = {"measured_volts": measured, "supply_volts": 120}
    assert told("voltage", {"volts": "115"}, {"volts": "230"}, site) == expected


def test_measured_and_equal_is_same(told: Told) -> None:
    assert told("voltage", {"volts": "230"}, {"volts": "230"}, {"measured_volts": 241}) == "same"
    assert told("voltage", {"volts": "230"}, {}, {"measured_volts": 241}) == "unknown"


# the old plate stands in: old volts, old hertz, new volts, outcome
BY_PLATE = [
    ("115", "60", "115", "same"),
    ("115/230", "60", "230/115", "same"),
    ("115", "60", "120", "ok"),
    ("115", "60", "115/230", "ok"),
    ("230", "60", "208-230", "ok"),
    ("230", "60", "208", "fail"),
    ("230", "60", "220", "loss 0.5"),  # 198..242 against 220..252
    ("208", "60", "230", "loss 0.5"),
    ("208-230", "60", "230", "unknown"),  # may be on 208, marginally
    ("208-230", "60", "208-230", "same"),
    ("208-230", "60", "200-230", "ok"),
    ("208-230", "60", "200", "unknown"),  # serves 208 alone
    ("208-230", "60", "115", "fail"),
    ("208-230", "60", "115/208-230", "ok"),
    ("115/230", "60", "115", "unknown"),
    ("115/230", "60", "115/208-230", "ok"),
    ("115/230", "60", "460", "fail"),
    ("230/460", "60", "208-230/460", "ok"),
    ("220-240", "50", "230", "ok"),  # both ends name the 230 system
    ("220-240", "50", "220", "loss 0.5"),
    ("230", "50", "230/400", "ok"),
    ("230", "50/60", "208-230", "ok"),
    ("230", "50/60", "240", "unknown"),
    ("230", None, "240", "unknown"),
    ("230", None, "230", "same"),
    ("460", "60", "480", "ok"),
]


@pytest.mark.parametrize(("old", "hertz", "new", "expected"), BY_PLATE)
def test_the_old_plate_stands_in(told: Told, old: str, hertz: str | None, new: str, expected: str) -> None:
    motor = {"volts": old} | ({"hertz": hertz} if hertz else {})
    assert told("voltage", motor, {"volts": new}) == expected


def test_nothing_known(told: Told) -> None:
    assert told("voltage", {}, {"volts": "115"}) == "unknown"
    assert told("voltage", {"volts": "115"}, {}) == "unknown"
    assert told("voltage", {"volts": "115", "hertz": "60"}, {}, {"supply_volts": 120}) == "unknown"
    assert told("voltage", {}, {"volts": "115"}, {"supply_hertz": 60}) == "unknown"


def test_same_needs_the_band_inside_even_for_equal_ratings(told: Told) -> None:
    old = {"volts": "230", "hertz": "60"}
    assert told("voltage", old, {"volts": "230"}, {"supply_volts": 240}) == "same"
    assert told("voltage", old, {"volts": "230"}, {"supply_volts": 208}) == "loss 0.5"
    assert told("voltage", old, {"volts": "230"}, {"supply_volts": 120}) == "fail"


def test_the_site_s_hertz_goes_before_the_plate_s(told: Told) -> None:
    site = {"supply_volts": 240, "supply_hertz": 50}
    assert told("voltage", {"hertz": "60"}, {"volts": "245"}, site) == "loss 0.5"  # 230: 207..253
    assert told("voltage", {"hertz": "60"}, {"volts": "230"}, site) == "ok"


def test_several_ratings_want_their_link_set(look) -> None:  # type: ignore[no-untyped-def]
    found = look("voltage", ON_SIXTY, {"volts": "115/208-230"}, {"supply_volts": 120})
    assert "Set the voltage link for 115 V first" in found.why
    found = look("voltage", ON_SIXTY, {"volts": "115/208-230"}, {"supply_volts": 208})
    assert "Set the voltage link for 208-230 V first" in found.why


def test_contradicted_volts_are_unknown(told: Told) -> None:
    assert told("voltage", {"volts": "115"}, {}, {"supply_volts": 120}, twice_new=("volts",)) == "unknown"
