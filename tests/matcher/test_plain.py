"""What can't be kept in a job is mended or refused with a line."""

import pytest

from matcher.plain import as_tuples, plain_json, without_halves


def test_endless_nesting_is_refused() -> None:
    value: object = 1
    for _ in range(5000):
        value = [value]
    with pytest.raises(ValueError, match="nested deeper"):
        plain_json(value)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), {"a": [1, (float("-inf"),)]}, {1, 2}, b"a"])
def test_what_json_cannot_hold_is_refused(value: object) -> None:
    with pytest.raises(ValueError, match="finite number|can't be kept"):
        plain_json(value)


def test_lists_and_tuples_turn_into_each_other() -> None:
    assert plain_json({"a": (1, (2.5, None)), 3: "x\ud800"}) == {"a": [1, [2.5, None]], "3": "x\ufffd"}
    assert as_tuples([1, [2, "a"], ()]) == (1, (2, "a"), ())


def test_half_characters_are_replaced_one_for_one() -> None:
    assert without_halves("a\ud800b\udfff\u202e") == "a\ufffdb\ufffd\u202e"
