"""Voltage and frequency: the tolerances of motors and the bands of systems, against their standards."""

import pytest

from matcher.checks.voltage import Service, service
from matcher.trade.rated import ratings
from matcher.trade.supply import near_hertz, system

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("rated", "least", "most"),
    [
        # NEMA MG 1 12.44: +-10 % of rated voltage at rated frequency.
        ("115", 103.5, 126.5),
        ("200", 180, 220),
        ("230", 207, 253),  # the worked example of a repair-trade article of 2013 on 12.44
        ("265", 238.5, 291.5),
        ("460", 414, 506),
        ("575", 517.5, 632.5),
        # The two ends of a 208-230 label as the trade reads it: 187 to 253 V.
        ("208-230", 187.2, 253),
    ],
)
def test_tolerance_of_a_rating(rated: str, least: float, most: float) -> None:
    (rating,) = ratings(rated)
    assert rating.least == pytest.approx(least)
    assert rating.most == pytest.approx(most)


@pytest.mark.parametrize(
    ("nominal", "low", "high"),
    [
        # ANSI C84.1 Table 1, editions of 1995 and 2006, from memory of the standard: utilisation range A
        # minimum, with the service maximum of range A (208Y: 218Y/126; the lowest 191Y/110).
        (120, 110, 126),
        (208, 191, 218),
        (240, 220, 252),
        (480, 440, 504),
        (600, 550, 630),
    ],
)
def test_what_a_60_hz_system_delivers(nominal: float, low: float, high: float) -> None:
    found = system(nominal, 60)
    assert (found.nominal, found.low, found.high) == (nominal, low, high)


@pytest.mark.parametrize(("nominal", "low", "high"), [(230, 207, 253), (400, 360, 440)])
def test_what_a_50_hz_system_delivers(nominal: float, low: float, high: float) -> None:
    # IEC 60038: 230/400 V, +-10 % since 2003 (was +6/-10).
    found = system(nominal, 50)
    assert (found.low, found.high) == (low, high)


@pytest.mark.parametrize(
    ("supply", "plate"),
    # NEMA MG 1 10.30 and ANSI C84.1 annex: the nameplate voltage made for each nominal system; 277 -> 265
    # is the practice of AHRI 110.
    [(120, "115"), (208, "200"), (240, "230"), (480, "460"), (600, "575"), (277, "265")],
)
def test_the_nameplate_made_for_a_system_serves_it_whole(supply: float, plate: str) -> None:
    assert service(ratings(plate), system(supply, 60))[0] is Service.WHOLE


def test_a_230_v_motor_on_208_v_is_marginal() -> None:
    # NEMA MG 1 14.35: 230 V motors are not generally recommended on a 208 V network; 208 is 1 V above the limit.
    assert service(ratings("230"), system(208, 60))[0] is Service.MARGINAL
    assert ratings("230")[0].least == pytest.approx(208 - 1)


@pytest.mark.parametrize(
    ("supply", "rated", "inside"),
    # NEMA MG 1 12.44: +-5 % of rated frequency at rated voltage.
    [(57, 60, True), (63, 60, True), (56.9, 60, False), (52.5, 50, True), (47.5, 50, True), (60, 50, False)],
)
def test_tolerance_of_a_rated_frequency(supply: float, rated: float, inside: bool) -> None:
    assert near_hertz(supply, rated) is inside
