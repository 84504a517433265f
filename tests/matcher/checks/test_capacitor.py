from collections.abc import Callable

import pytest

Told = Callable[..., str]


def psc(uf: float | None, vac: int | None, motor_type: str | None = "psc") -> dict[str, object]:
    facts = {"capacitor_uf": uf, "capacitor_vac": vac, "motor_type": motor_type}
    return {name: value for name, value in facts.items() if value is not None}


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ((5, 370), (5, 370), "same"),
        ((5, 440), (5, 370), "ok"),
        ((5, 370), (5, 440), "loss 0.3"),
        ((5, 440), (5, 450), "loss 0.3"),
        ((11, 370), (10, 370), "ok"),
        ((9, 370), (10, 370), "ok"),
        ((11.01, 370), (10, 370), "loss 0.3"),
        ((8.99, 370), (10, 370), "loss 0.3"),
        ((10, 370), (11, 370), "ok"),  # 10 % of the new one's
        ((5, None), (5, 370), "ok"),
        ((5, 370), (5, None), "ok"),
        ((5, None), (5, None), "same"),
        ((4, None), (5, 370), "loss 0.3"),
        ((None, None), (5, 370), "loss 0.3"),
        ((None, 370), (5, 370), "loss 0.3"),
        ((5, 370), (None, None), "unknown"),
        ((5, 370), (None, 370), "unknown"),
        ((None, None), (None, None), "unknown"),
        ((5, 370), (None, 440), "loss 0.3"),  # a known loss beats a missing half
    ],
)
def test_what_is_at_hand_against_the_demand(told: Told, look, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("capacitor", psc(*old), psc(*new)) == expected
    needs = ("capacitor",) if expected == "loss 0.3" else ()
    assert look("capacitor", psc(*old), psc(*new)).needs == needs


@pytest.mark.parametrize(
    ("old", "new", "applies"),
    [
        ("psc", "psc", True),
        ("shaded_pole", "psc", True),
        (None, "psc", True),
        ("psc", None, True),
        ("psc", "shaded_pole", False),
        ("psc", "ecm", False),
        ("shaded_pole", None, False),
        (None, None, False),
        ("capacitor_start", "capacitor_start", False),
    ],
)
def test_it_applies_where_the_new_one_is_or_may_be_psc(told: Told, old, new, applies) -> None:  # type: ignore[no-untyped-def]
    expected = "same" if applies else "none"
    assert told("capacitor", psc(5, 370, old), psc(5, 370, new)) == expected


def test_signs_of_a_module_are_no_psc(told: Told) -> None:
    assert told("capacitor", psc(5, 370), {"module": "with"}) == "none"


def test_contradictions(told: Told) -> None:
    assert told("capacitor", psc(5, 370), psc(5, None), twice_new=("capacitor_vac",)) == "unknown"
    assert told("capacitor", psc(4, 370), psc(5, None), twice_new=("capacitor_vac",)) == "loss 0.3"
