"""What a form says can be typed again and means the same."""

import pytest

from matcher.entry import amount, choices, entered, kind, number, said, unit
from matcher.errors import BadValue, UnknownField

TYPED = [
    ("power_hp", "1/2", 0.5, "1/2"),
    ("power_hp", "1/3 hp", 0.3333333333333333, "1/3"),
    ("body_diameter_in", "5 5/8", 5.625, "5 5/8"),
    ("body_diameter_in", '5-5/8"', 5.625, "5 5/8"),
    ("shaft_diameter_in", ".5", 0.5, "1/2"),
    ("shaft_diameter_in", "12.7 mm", 0.5, "1/2"),
    ("shaft_length_in", "6", 6.0, "6"),
    ("amps", "8.6/4.3", [8.6, 4.3], "8.6/4.3"),
    ("rpm", "1075", [1075], "1075"),
    ("rpm_range", "300-1300", [300, 1300], "300-1300"),
    ("volts", "208-230 V", "208-230", "208-230"),
    ("plug_pins", "16/5", [5, 16], "5/16"),
    ("mounting", "band, studs", ["band", "studs"], "band, studs"),
    ("phase", "1", 1, "1"),
    ("leads", "yes", True, "yes"),
    ("shaft_keyed", "no", False, "no"),
    ("supply_volts", "208", 208.0, "208"),
    ("price", "45,50", 45.5, "45.5"),
    ("module_health", "good", "good", "good"),
]


@pytest.mark.parametrize(("field", "text", "value", "shown"), TYPED, ids=[f"{t[0]}={t[1]}" for t in TYPED])
def test_what_is_typed_is_understood_and_said_back(field, text, value, shown):
    assert entered(field, text) == value
    assert said(field, entered(field, text)) == shown
    assert entered(field, shown) == value


def test_millimetres_go_in_and_come_out():
    assert entered("body_length_in", "140", metric=True) == pytest.approx(140 / 25.4)
    assert entered("body_length_in", "5.5 in", metric=True) == 5.5
    assert said("body_length_in", 140 / 25.4, metric=True) == "140"
    assert (unit("body_length_in", metric=True), unit("body_length_in"), unit("volts")) == ("mm", "in", "")


@pytest.mark.parametrize("text", ["abc", "1/0", "5 5/", "--", "1e9999", "5 mmm", "9" * 500 + "/1"])
def test_what_is_no_number_is_refused_with_a_line(text):
    with pytest.raises(BadValue, match="no number|divides"):
        number(text)


def test_a_wrong_word_and_a_wrong_field_are_refused():
    with pytest.raises(BadValue, match="turn"):
        entered("turn", "leftish")
    with pytest.raises(UnknownField):
        kind("colour")


def test_choices_come_from_the_contract():
    assert choices("turn") == ("cw", "ccw", "either")
    assert (kind("mounting"), kind("leads"), kind("other_numbers"), kind("speeds")) == (
        "choices",
        "yes_no",
        "texts",
        "number",
    )


SUMS = [
    ("1,150", 1150),
    ("1,150.00", 1150),
    ("1.150,00 EUR", 1150),
    ("$65", 65),
    ("9,90", 9.9),
    ("12 000", 12_000),
    ("0.50", 0.5),
]


@pytest.mark.parametrize(("text", "sum_"), SUMS, ids=[text for text, _ in SUMS])
def test_a_group_of_three_figures_is_thousands_in_a_sum(text, sum_):
    assert amount(text) == sum_
    assert entered("price", text) == sum_


@pytest.mark.parametrize("text", ["twelve", "-5", "0.145", "1,15,0", ""])
def test_what_is_no_sum_is_refused_with_a_line(text):
    with pytest.raises(BadValue, match="no sum of money"):
        amount(text)


def test_a_number_that_may_be_either_of_two_is_refused():
    with pytest.raises(BadValue, match="two things"):
        entered("rpm", "1,075")
    assert entered("body_length_in", "0,125") == 0.125


def test_a_length_is_said_as_a_rule_shows_it():
    assert said("body_diameter_in", 5.6) == "5.6"
    assert said("power_hp", 0.2) == "1/5"
