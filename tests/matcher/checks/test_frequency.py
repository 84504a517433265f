from collections.abc import Callable

import pytest

Told = Callable[..., str]


@pytest.mark.parametrize(
    ("old", "new", "site", "expected"),
    [
        ("60", "60", None, "same"),
        ("60", "50/60", None, "ok"),
        ("60", "50", None, "fail"),
        ("50", "60", None, "fail"),
        ("50", "50/60", None, "ok"),
        ("50/60", "50/60", None, "same"),
        ("50/60", "60", None, "unknown"),
        ("50/60", "50", None, "unknown"),
        ("50/60", "60", 60, "same"),
        ("50", "60", 60, "same"),
        (None, "60", 60, "same"),
        ("60", "60", 57, "same"),
        ("60", "60", 56.9, "fail"),
        ("60", "60", 63, "same"),
        ("60", "60", 63.1, "fail"),
        ("60", "50", 52.5, "ok"),
        ("60", "50", 52.6, "fail"),
        ("60", "50/60", 55, "fail"),
        (None, "60", None, "unknown"),
        (None, "50/60", None, "unknown"),
    ],
)
def test_hertz_within_five_per_cent(told: Told, old, new, site, expected) -> None:  # type: ignore[no-untyped-def]
    place = {} if site is None else {"supply_hertz": site}
    assert told("frequency", {"hertz": old} if old else {}, {"hertz": new}, place) == expected


@pytest.mark.parametrize(
    "volts",
    [
        "115",
        "120",
        "200",
        "208",
        "230",
        "240",
        "200-230",
        "208-230",
        "208-240",
        "265",
        "277",
        "460",
        "480",
        "575",
        "115/230",
        "115/208-230",
        "230/460",
    ],
)
def test_unsaid_hertz_is_presumed_for_60_hz_ratings(told: Told, volts: str) -> None:
    assert told("frequency", {"hertz": "60"}, {"volts": volts}) == "ok"


@pytest.mark.parametrize(
    "volts", ["110", "127", "220", "220-240", "380", "400", "440", "115/220", "265-277", "600"]
)
def test_other_volts_leave_it_unknown(told: Told, volts: str) -> None:
    assert told("frequency", {"hertz": "60"}, {"volts": volts}) == "unknown"


@pytest.mark.parametrize(
    ("new", "expected"),
    [
        ({}, "ok"),
        ({"currency": "USD"}, "ok"),
        ({"currency": "CAD"}, "ok"),
        ({"currency": "MXN"}, "ok"),
        ({"currency": "EUR"}, "unknown"),
        ({"currency": "GBP"}, "unknown"),
        ({"frame": "48Y"}, "ok"),
        ({"frame": "IEC71"}, "unknown"),
    ],
)
def test_money_and_frame_must_speak_for_60_hz(told: Told, new: dict[str, str], expected: str) -> None:
    assert told("frequency", {"hertz": "60"}, {"volts": "230", **new}) == expected
    assert told("frequency", {}, {"volts": "230", **new}, {"supply_hertz": 60}) == expected


def test_unsaid_needs_a_60_hz_supply(told: Told) -> None:
    assert told("frequency", {"hertz": "50"}, {"volts": "230"}) == "unknown"
    assert told("frequency", {"hertz": "50/60"}, {"volts": "230"}) == "unknown"
    assert told("frequency", {"hertz": "60"}, {"volts": "230"}, {"supply_hertz": 50}) == "unknown"
    assert told("frequency", {"hertz": "60"}, {}) == "unknown"


def test_an_unsaid_supply_is_presumed_from_the_old_volts(told: Told, look) -> None:  # type: ignore[no-untyped-def]
    assert told("frequency", {"volts": "115"}, {"hertz": "60"}) == "same"
    assert told("frequency", {"volts": "115"}, {"hertz": "50"}) == "fail"
    assert told("frequency", {"volts": "115"}, {"volts": "115"}) == "ok"
    assert told("frequency", {"volts": "220-240"}, {"hertz": "60"}) == "unknown"
    assert look("frequency", {"volts": "115"}, {"volts": "115"}).presumed == ("old.hertz", "hertz")


def test_a_contradicted_fact_is_never_presumed_over(told: Told) -> None:
    assert told("frequency", {"hertz": "60"}, {"volts": "230"}, twice_new=("hertz",)) == "unknown"
    assert told("frequency", {"hertz": "60"}, {"volts": "230"}, twice_new=("currency",)) == "unknown"
    assert told("frequency", {"volts": "115"}, {"hertz": "60"}, twice_old=("hertz",)) == "unknown"
    assert told("frequency", {}, {"hertz": "60"}, {"supply_hertz": 60}, twice_old=("hertz",)) == "same"
