from typing import Any

import pytest

from matcher.checks import CHECKS
from matcher.errors import BadValue, UnknownField
from matcher.settings import Settings


def test_shipped_figures_are_complete() -> None:
    shipped = Settings.shipped()
    assert set(shipped.weights) == {check.name for check in CHECKS}
    soft = {"power": 20, "speed": 15, "taps": 8, "connector": 8, "module": 15, "current": 8, "capacitor": 4}
    soft |= {"enclosure": 10, "bearing": 5, "insulation": 4, "protector": 3, "duty": 3, "length": 3}
    hard = dict.fromkeys(
        ["voltage", "phase", "frequency", "rotation", "shaft", "mounting", "drive", "hazard"], 10
    )
    assert dict(shipped.weights) == soft | hard
    assert Settings.shipped() is shipped


def test_figures_can_be_changed_but_not_in_place() -> None:
    shipped = Settings.shipped()
    changed = shipped.changed(weights={"speed": 30}, priors={"rotation": 0.4})
    assert (changed.weights["speed"], shipped.weights["speed"]) == (30, 15)
    assert changed.priors["rotation"] == 0.4
    with pytest.raises(TypeError):
        changed.weights["speed"] = 1  # type: ignore[index]


@pytest.mark.parametrize(
    ("change", "error", "words"),
    [
        ({"weights": {"sped": 3}}, UnknownField, "did you mean speed"),
        ({"weights": {"qqq": 3}}, UnknownField, "known are"),
        ({"weights": {"speed": -1}}, BadValue, "0 or more"),
        ({"weights": {"speed": float("nan")}}, BadValue, "0 or more"),
        ({"weights": {"speed": float("inf")}}, BadValue, "0 or more"),
        ({"weights": {"speed": "3"}}, BadValue, "speed"),
        ({"weights": {"speed": True}}, BadValue, "speed"),
        ({"priors": {"rotation": 1.01}}, BadValue, "from 0 to 1"),
        ({"priors": {"rotation": -0.01}}, BadValue, "from 0 to 1"),
        ({"condition_chances": {"brand_new": 0.9}}, UnknownField, "brand_new"),
        ({"condition_chances": {"new": 2}}, BadValue, "from 0 to 1"),
        ({"swap_costs": {"capacitor": -1}}, BadValue, "0 or more"),
        ({"swap_costs": {"capacitors": 1}}, UnknownField, "did you mean capacitor"),
    ],
)
def test_one_clear_line_for_a_wrong_figure(
    change: dict[str, Any], error: type[Exception], words: str
) -> None:
    with pytest.raises(error, match=words) as caught:
        Settings.shipped().changed(**change)
    assert "\n" not in str(caught.value)


def test_a_missing_name() -> None:
    shipped = Settings.shipped()
    weights = {name: weight for name, weight in shipped.weights.items() if name != "taps"}
    with pytest.raises(UnknownField, match="weights: taps missing"):
        Settings(weights, shipped.priors, shipped.condition_chances, shipped.swap_costs)


@pytest.mark.parametrize("edge", [0, 1])
def test_the_edges_of_a_chance_are_allowed(edge: float) -> None:
    assert Settings.shipped().changed(priors={"rotation": edge}).priors["rotation"] == edge
