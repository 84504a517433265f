"""Refusals are told in the program's own words, whatever was wrong."""

import pytest
from pydantic import ValidationError

from matcher.errors import BadValue
from matcher.job import Fallback, Job
from matcher.motor import Offer
from matcher.refusal import first_fault, told
from matcher.values import value_for

LIBRARY = ("Input", "validation error", "pydantic", "should", "pattern")


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        ("power_hp", "abc", "it is no number"),
        ("power_hp", -1, "it must be more than 0"),
        ("power_hp", 1e9, "it must be less than 1,000,000"),
        ("phase", 2, "choose 1 or 3"),
        ("turn", "left", "choose 'cw', 'ccw'"),
        ("quantity", 1.5, "it is no whole number"),
        ("currency", "xx", "it isn't written as it must be"),
        ("part_number", "x" * 500, "it is longer than 400 signs"),
        ("part_number", ["x"], "it is no text"),
        ("mounting", [], "it needs more entries"),
        ("leads", "perhaps", "write yes or no"),
    ],
)
def test_a_value_is_refused_in_plain_words(field: str, value: object, words: str) -> None:
    with pytest.raises(BadValue, match="can't be right") as refused:
        value_for(Offer, field, value)
    assert words in str(refused.value)
    assert not [word for word in LIBRARY if word in str(refused.value)]


@pytest.mark.parametrize("document", [{}, {"price": "x"}, {"price": 1, "more": 2}, [], {"price": {}}])
def test_a_refused_document_is_one_plain_line(document: object) -> None:
    with pytest.raises(ValidationError) as refused:
        Fallback.model_validate(document)
    for line in (first_fault(refused.value), told(refused.value)):
        assert line
        assert not [word for word in LIBRARY if word in line]


def test_any_other_refusal_is_its_first_line() -> None:
    assert told(ValueError("one\ntwo")) == "one"
    assert told(ValueError()) == "ValueError"


@pytest.mark.parametrize("price", [float("nan"), float("inf"), -1.0, 1e12])
def test_a_fallback_that_is_no_price_says_so(price: float) -> None:
    with pytest.raises(BadValue, match="the fallback: .* is no price"):
        Fallback.of(price, "USD")


@pytest.mark.parametrize("currency", ["xx", "", "dollars", "U5D", "ÜSD"])
def test_a_currency_that_is_none_says_so(currency: str) -> None:
    with pytest.raises(BadValue, match="is no currency; write its three letters"):
        Fallback.of(900, currency)
    assert Job().edited(fallback=Fallback.of(900, " eur ")).fallback == Fallback(price=900, currency="EUR")
