"""The figures that people may change, and the one line for each thing that can be wrong with a change."""

from pathlib import Path

import pytest

from matcher.errors import SamespinError
from matcher.settings import Settings

SHIPPED = Settings.shipped()


def load(tmp_path: Path, text: str) -> Settings:
    path = tmp_path / "mine.toml"
    path.write_text(text, encoding="utf-8")
    return Settings.load(path)


def test_changes_are_laid_over_what_is_shipped(tmp_path: Path) -> None:
    settings = load(
        tmp_path,
        """
        wise_parts = true
        [weights]
        power = 12
        [priors]
        shaft = 0.25
        [condition_chances]
        used = 0.5
        [swap_costs]
        capacitor = 9.5
        [exchange]
        EUR = 1.1
        """,
    )
    assert settings.weights == {**SHIPPED.weights, "power": 12}
    assert settings.priors == {**SHIPPED.priors, "shaft": 0.25}
    assert settings.condition_chances["used"] == 0.5
    assert settings.swap_costs["capacitor"] == 9.5
    assert settings.exchange == {"EUR": 1.1}
    assert settings.wise_parts is True


def test_an_empty_file_changes_nothing(tmp_path: Path) -> None:
    assert load(tmp_path, "") == SHIPPED


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("[weights]\npowr = 3", "mine.toml: weights: 'powr' is no name here; did you mean 'power'?"),
        ("[weights]\nzzz = 3", "mine.toml: weights: 'zzz' is no name here; known are voltage, phase, "),
        ("[weights]\npower = -1", "mine.toml: weights: power must be a number 0 or more, not -1"),
        ('[weights]\npower = "much"', "mine.toml: weights: power must be a number 0 or more, not 'much'"),
        ("[weights]\npower = true", "mine.toml: weights: power must be a number 0 or more, not True"),
        ("[weights]\npower = nan", "mine.toml: weights: power must be a number 0 or more, not nan"),
        ("[weights]\npower = inf", "mine.toml: weights: power must be a number 0 or more, not inf"),
        ("[priors]\nshaft = 1.01", "mine.toml: priors: shaft must be a number from 0 to 1, not 1.01"),
        ("[priors]\nshaft = -0.1", "mine.toml: priors: shaft must be a number from 0 to 1, not -0.1"),
        ("[condition_chances]\nnew = 2", "mine.toml: conditions: new must be a number from 0 to 1, not 2"),
        ("[swap_costs]\nharness = -5", "mine.toml: swap_costs: harness must be a number 0 or more, not -5"),
        ("[prior]\nshaft = 0.5", "mine.toml: 'prior' is no table here; did you mean 'priors'?"),
        ("weights = 3", "mine.toml: weights must be a table of name = figure, not 3"),
        ("wise_parts = 1", "mine.toml: wise_parts must be true or false, not 1"),
        (
            "[exchange]\neuro = 1.1",
            "mine.toml: exchange: 'euro' is no currency; write its three letters, such as EUR",
        ),
        ("[exchange]\nEUR = 0", "mine.toml: exchange: EUR must be US dollars above 0 for one EUR, not 0"),
        ("[exchange]\nUSD = 2", "mine.toml: exchange: USD is what the others are told in, so it must stay 1"),
        ("[weights\n", "mine.toml: no TOML file: "),
    ],
)
def test_each_fault_is_one_clear_line(tmp_path: Path, text: str, line: str) -> None:
    with pytest.raises(SamespinError) as fault:
        load(tmp_path, text)
    assert str(fault.value).startswith(line)
    assert "\n" not in str(fault.value)


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(SamespinError, match=r"none\.toml: it can't be read"):
        Settings.load(tmp_path / "none.toml")


def test_a_missing_name_is_named() -> None:
    weights = {name: figure for name, figure in SHIPPED.weights.items() if name != "taps"}
    with pytest.raises(SamespinError, match="weights: taps missing; give each a figure"):
        Settings(weights, SHIPPED.priors, SHIPPED.condition_chances, SHIPPED.swap_costs)


@pytest.mark.parametrize("figure", [0, 1, 0.5])
def test_both_ends_of_a_chance_are_allowed(figure: float) -> None:
    assert SHIPPED.changed(priors={"shaft": figure}).priors["shaft"] == figure


def test_settings_can_not_be_changed_in_place() -> None:
    with pytest.raises(TypeError):
        SHIPPED.weights["power"] = 3  # type: ignore[index]


@pytest.mark.parametrize(
    ("source", "target", "rate"),
    [
        ("USD", "USD", 1),
        (None, "EUR", 1),
        ("EUR", "USD", 1.25),
        ("USD", "EUR", 0.8),
        ("EUR", "CAD", 2),
        ("EUR", "EUR", 1),
        ("GBP", "USD", None),
        ("USD", "GBP", None),
    ],
)
def test_rates(source: str | None, target: str, rate: float | None) -> None:
    settings = SHIPPED.changed(exchange={"EUR": 1.25, "CAD": 0.625})
    assert settings.rate(source, target) == rate
