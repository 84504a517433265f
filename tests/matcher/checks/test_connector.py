from collections.abc import Callable

import pytest

Told = Callable[..., str]
PLUG, LEADS = {"plug_pins": (4, 16)}, {"leads": True}


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (PLUG, {"plug_pins": (16, 4)}, "same"),
        (PLUG, {"plug_pins": (16,)}, "loss 0.7"),
        (LEADS, LEADS, "same"),
        (LEADS, PLUG, "loss 0.4"),
        (PLUG, LEADS, "loss 0.4"),
        (PLUG | LEADS, PLUG, "same"),  # a plug counts before leads
        (PLUG | LEADS, LEADS, "loss 0.4"),
        (PLUG, {}, "unknown"),
        ({}, PLUG, "unknown"),
        (LEADS, {}, "unknown"),
        ({}, {}, "unknown"),
        (LEADS, {"leads": False}, "unknown"),
        (LEADS | {"lead_length_in": 30}, LEADS | {"lead_length_in": 28}, "same"),
        (LEADS | {"lead_length_in": 30}, LEADS | {"lead_length_in": 27.9}, "loss 0.3"),
        (LEADS | {"lead_length_in": 30}, LEADS | {"lead_length_in": 60}, "same"),
        (LEADS | {"lead_length_in": 30}, LEADS, "same"),
        (LEADS, LEADS | {"lead_length_in": 3}, "same"),
        (LEADS | {"lead_length_in": 30}, PLUG | {"lead_length_in": 20}, "loss 0.4"),
        (PLUG | {"lead_length_in": 30}, PLUG | {"lead_length_in": 20}, "loss 0.3"),
        ({"lead_length_in": 30}, {"lead_length_in": 20}, "loss 0.3"),  # a known loss beats a missing half
    ],
)
def test_ends_and_reach(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("connector", old, new) == expected


def test_needs_and_contradictions(told: Told, look) -> None:  # type: ignore[no-untyped-def]
    assert look("connector", LEADS, PLUG).needs == ("harness",)
    assert look("connector", PLUG, {"plug_pins": (5,)}).needs == ("harness",)
    assert look("connector", LEADS, LEADS).needs == ()
    assert told("connector", LEADS, LEADS, twice_new=("lead_length_in",)) == "unknown"
    assert told("connector", LEADS, PLUG, twice_new=("lead_length_in",)) == "loss 0.4"
