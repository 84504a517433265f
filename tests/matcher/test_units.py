"""Trade quantities in and out."""

import pytest

from matcher.errors import BadValue
from matcher.units import (
    celsius_to_fahrenheit,
    factor,
    fahrenheit_to_celsius,
    in_to_mm,
    mm_to_in,
    parse_length,
    parse_power,
    show_length,
    show_power,
)


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        (0.5, "1/2 in"),
        (0.4995, "1/2 in"),
        (5.625, "5 5/8 in"),
        (6.0, "6 in"),
        (0.3125, "5/16 in"),
        (0.748, "3/4 in"),
        (0.5512, "0.551 in"),
        (0.001, "0.001 in"),
    ],
)
def test_length_is_said_as_people_do(inches: float, said: str) -> None:
    assert show_length(inches) == said


def test_length_in_millimetres_on_demand() -> None:
    assert show_length(0.5, millimetres=True) == "12.7 mm"


@pytest.mark.parametrize(
    ("horsepower", "said"),
    [
        (0.3333, "1/3 hp"),
        (0.75, "3/4 hp"),
        (1.5, "1 1/2 hp"),
        (0.05, "1/20 hp"),
        (1.0, "1 hp"),
        (0.0215, "0.0215 hp"),
        (0.2414, "0.2414 hp"),
    ],
)
def test_power_is_said_as_people_do(horsepower: float, said: str) -> None:
    assert show_power(horsepower) == said


def test_power_in_watts_on_demand() -> None:
    assert show_power(0.0215, watts=True) == "16 W"


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("5 5/8", 5.625),
        ("5-5/8 in", 5.625),
        ('1/2"', 0.5),
        (".4995", 0.4995),
        ("12.7 mm", 0.5),
        ("½ in.", 0.5),
        ("2 ft", 24.0),
        ("1,5 cm", 0.5906),
    ],
)
def test_lengths_are_read(text: str, inches: float) -> None:
    assert parse_length(text) == pytest.approx(inches, abs=1e-4)


@pytest.mark.parametrize(
    ("text", "horsepower"), [("1/3", 0.3333), ("1-1/2 hp", 1.5), ("0.37 kW", 0.4962), ("16 W", 0.0215)]
)
def test_powers_are_read(text: str, horsepower: float) -> None:
    assert parse_power(text) == pytest.approx(horsepower, abs=1e-4)


@pytest.mark.parametrize("text", ["", "five", "0", "-3", "1/0", "5 parsec", "1/2/3", "½½", "²", "٣ in"])
def test_no_length(text: str) -> None:
    with pytest.raises(BadValue):
        parse_length(text)


@pytest.mark.parametrize("text", ["", "hp", "3 in", "0 hp"])
def test_no_power(text: str) -> None:
    with pytest.raises(BadValue):
        parse_power(text)


def test_factors_of_one_kind_only() -> None:
    with pytest.raises(BadValue):
        factor("mm", "hour")


def test_there_and_back() -> None:
    assert mm_to_in(in_to_mm(3.25)) == pytest.approx(3.25)
    assert celsius_to_fahrenheit(fahrenheit_to_celsius(104.0)) == pytest.approx(104.0)
    assert fahrenheit_to_celsius(104.0) == pytest.approx(40.0)
