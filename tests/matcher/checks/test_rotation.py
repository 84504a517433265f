from collections.abc import Callable
from itertools import product

import pytest

from matcher.motor import Motor
from matcher.trade.turns import lead_end

Told = Callable[..., str]
OTHER = {"cw": "ccw", "ccw": "cw"}
BRAND = {"brand": "Plenquist", "part_number": "PL-2031K"}


def turning(turn: str | None, view: str | None, ends: int | None = None) -> dict[str, object]:
    facts = {"turn": turn, "seen_from": view and f"{view}_end", "shaft_ends": ends}
    return {name: value for name, value in facts.items() if value is not None}


@pytest.mark.parametrize(("old", "new"), list(product(["cw", "ccw"], repeat=2)))
@pytest.mark.parametrize(("old_view", "new_view"), list(product(["lead", "shaft"], repeat=2)))
def test_both_known(told: Told, old: str, new: str, old_view: str, new_view: str) -> None:
    same = (old == new) == (old_view == new_view)
    expected = "same" if same else "fail"
    assert told("rotation", turning(old, old_view), turning(new, new_view)) == expected


CASES = [
    # old, new, equal numbers, outcome
    (("cw", None), ("cw", "lead"), False, "unknown"),
    (("cw", "lead"), ("cw", None), False, "unknown"),
    (("cw", None), ("cw", None), False, "unknown"),
    (("cw", None), ("ccw", None), False, "unknown"),
    (("cw", None), ("cw", None), True, "same"),
    (("cw", "lead"), ("cw", None), True, "same"),
    (("cw", "shaft"), ("cw", None), True, "same"),
    (("cw", None), ("cw", "shaft"), True, "same"),
    (("cw", None), ("ccw", None), True, "fail"),
    (("cw", "lead"), ("ccw", None), True, "unknown"),
    (("cw", "shaft"), ("ccw", None), True, "unknown"),
    (("cw", None), ("ccw", "lead"), True, "unknown"),
    (("cw", "lead"), ("ccw", "shaft"), True, "same"),
    (("cw", "lead"), ("ccw", "lead"), True, "fail"),
    # reversible ones
    (("cw", "lead"), ("either", None), False, "ok"),
    ((None, None), ("either", None), False, "ok"),
    (("either", None), ("either", None), False, "ok"),
    (("either", None), ("cw", "lead"), False, "unknown"),
    (("either", None), ("cw", "lead"), True, "unknown"),
    (("either", None), ("cw", None), True, "unknown"),
    (("either", None), (None, None), True, "ok"),
    # missing
    ((None, None), ("cw", "lead"), False, "unknown"),
    (("cw", "lead"), (None, None), False, "unknown"),
    (("cw", "lead"), (None, None), True, "same"),
    (("cw", None), (None, None), True, "same"),
    ((None, None), (None, None), False, "unknown"),
    # double-ended
    (("cw", "lead", 2), ("cw", "lead", 2), False, "same"),
    (("cw", "lead", 2), ("ccw", "lead", 2), False, "fail"),
    (("cw", "lead", 1), ("ccw", "shaft", 1), False, "same"),
    (("cw", "lead", 1), ("ccw", "shaft", 2), False, "unknown"),
    (("cw", "shaft", 2), ("ccw", "lead", 1), False, "unknown"),
    (("cw", "shaft", 2), ("cw", "shaft", 2), False, "unknown"),
    (("cw", "shaft", 2), ("cw", "shaft", 2), True, "same"),
    (("cw", "shaft", 2), ("ccw", "shaft", 2), True, "unknown"),
    (("cw", "shaft", 2), ("ccw", "lead", 2), True, "unknown"),
    (("cw", None, 2), ("cw", None, 2), True, "same"),
    (("cw", "shaft", 2), ("cw", None, 2), True, "same"),
    (("cw", "shaft", 2), ("ccw", None, 2), True, "unknown"),
    (("cw", "shaft", 2), ("either", None, 2), False, "ok"),
]


@pytest.mark.parametrize(("old", "new", "equal", "expected"), CASES)
def test_views_numbers_and_ends(told: Told, old, new, equal, expected) -> None:  # type: ignore[no-untyped-def]
    number = BRAND if equal else {}
    assert told("rotation", turning(*old) | number, turning(*new) | number) == expected


@pytest.mark.parametrize("turn", [("cw", "lead"), ("ccw", "lead"), ("cw", None), (None, None)])
def test_polyphase_turns_either_way(told: Told, turn: tuple[str | None, str | None]) -> None:
    new = {"motor_type": "polyphase"} | turning(*turn)
    assert told("rotation", turning("cw", "lead"), new) == "ok"
    assert told("rotation", {}, new) == "ok"
    assert told("rotation", turning("cw", "lead"), {"phase": 3} | turning(*turn)) == "ok"


def test_contradicted_turns(told: Told) -> None:
    old = turning("cw", "lead")
    assert told("rotation", old, {}, twice_new=("turn",)) == "unknown"
    assert told("rotation", old | BRAND, BRAND, twice_new=("turn",)) == "unknown"
    assert told("rotation", old | BRAND, BRAND | turning("cw", None), twice_new=("seen_from",)) == "unknown"
    assert told("rotation", old, {"motor_type": "polyphase"}, twice_new=("turn",)) == "ok"
    assert told("rotation", {}, turning("either", None), twice_old=("turn",)) == "ok"
    assert told("rotation", old, turning("ccw", "shaft"), twice_new=("shaft_ends",)) == "unknown"


def test_the_sentence(look) -> None:  # type: ignore[no-untyped-def]
    found = look("rotation", turning("ccw", "lead"), turning("cw", "lead"))
    assert found.why == (
        "Turns clockwise seen from the lead end; the old one turned counter-clockwise. The wheel would blow"
        " backwards."
    )


def test_both_turns_are_said_from_one_end_where_they_are_told_from_two(look) -> None:  # type: ignore[no-untyped-def]
    found = look("rotation", turning("ccw", "lead"), turning("ccw", "shaft"))
    assert found.old == "counter-clockwise seen from the lead end"
    assert found.new == "clockwise seen from the lead end = counter-clockwise seen from the shaft end"
    assert found.why == (
        "Turns clockwise seen from the lead end = counter-clockwise seen from the shaft end; the old one turned"
        " counter-clockwise seen from the lead end. The wheel would blow backwards."
    )
    same = look("rotation", turning("ccw", "shaft"), turning("cw", "lead"))
    assert same.old == "clockwise seen from the lead end = counter-clockwise seen from the shaft end"
    assert same.why == (
        "Turns clockwise seen from the lead end; the old one turned clockwise seen from the lead end ="
        " counter-clockwise seen from the shaft end: the same."
    )


def test_one_end_for_both_or_an_unclear_one_is_said_once(look) -> None:  # type: ignore[no-untyped-def]
    shaft = look("rotation", turning("ccw", "shaft"), turning("cw", "shaft"))
    assert shaft.why.startswith(
        "Turns clockwise seen from the shaft end; the old one turned counter-clockwise."
    )
    unclear = look("rotation", turning("ccw", "lead"), turning("ccw", "shaft", 2))
    assert unclear.new == "counter-clockwise seen from the shaft end"
    assert look("rotation", turning("ccw", "lead"), turning(None, "shaft")).new == ""


@pytest.mark.parametrize("turn", ["cw", "ccw"])
def test_changing_ends_twice_changes_nothing(turn: str) -> None:
    seen = lead_end(Motor(turn=turn, seen_from="shaft_end"))
    assert seen == OTHER[turn]
    assert lead_end(Motor(turn=seen, seen_from="shaft_end")) == lead_end(
        Motor(turn=turn, seen_from="lead_end")
    )
