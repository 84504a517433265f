import pint
import pytest

from matcher.units import INCHES, WATTS_PER_HP, fahrenheit_to_celsius


@pytest.fixture(scope="module", name="registry")
def _registry() -> "pint.UnitRegistry[float]":
    return pint.UnitRegistry()


@pytest.mark.parametrize("unit", ["ft", "mm", "cm", "m"])
def test_lengths_are_pint_s(registry: "pint.UnitRegistry[float]", unit: str) -> None:
    assert registry.Quantity(1, unit).to("inch").magnitude == pytest.approx(INCHES[unit], rel=1e-15)


def test_the_inch_is_what_all_are_told_in() -> None:
    assert INCHES["in"] == 1


def test_horsepower_is_pint_s_as_plates_round_it(registry: "pint.UnitRegistry[float]") -> None:
    assert registry.Quantity(1, "horsepower").to("watt").magnitude == pytest.approx(WATTS_PER_HP, abs=0.001)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(104, 40), (32, 0), (212, 100), (-40, -40)])
def test_temperatures_are_pint_s(
    registry: "pint.UnitRegistry[float]", fahrenheit: float, celsius: float
) -> None:
    assert fahrenheit_to_celsius(fahrenheit) == pytest.approx(celsius)
    assert registry.Quantity(fahrenheit, "degF").to("degC").magnitude == pytest.approx(celsius)
