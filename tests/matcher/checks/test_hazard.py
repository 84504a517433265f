from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ({}, {}, "ok"),
        ({"explosion_proof": False}, {}, "ok"),
        ({}, {"explosion_proof": True}, "ok"),
        ({"explosion_proof": True}, {"explosion_proof": True}, "same"),
        (
            {"explosion_proof": True, "enclosure": "TEFC"},
            {"explosion_proof": True, "enclosure": "ODP"},
            "same",
        ),
        ({"explosion_proof": True}, {"explosion_proof": False}, "fail"),
        ({"explosion_proof": True}, {}, "unknown"),
        ({"explosion_proof": True, "enclosure": "TEFC"}, {}, "unknown"),
        ({"explosion_proof": True, "enclosure": "TEFC"}, {"enclosure": "TEFC"}, "unknown"),
        ({"explosion_proof": True, "enclosure": "TEFC"}, {"enclosure": "TENV"}, "fail"),
        ({"explosion_proof": True}, {"enclosure": "TENV"}, "unknown"),
    ],
)
def test_markings(told: Callable[..., str], old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("hazard", old, new) == expected


def test_a_contradicted_marking(told: Callable[..., str]) -> None:
    assert told("hazard", {}, {}, twice_old=("explosion_proof",)) == "unknown"
    assert told("hazard", {"explosion_proof": True}, {}, twice_new=("explosion_proof",)) == "unknown"
