from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("old", "new", "site", "expected"),
    [
        (1, 1, None, "same"),
        (3, 3, None, "same"),
        (1, 3, None, "fail"),
        (3, 1, None, "fail"),
        (3, 1, 1, "same"),  # two legs of a three-phase supply are one phase
        (1, 1, 3, "fail"),
        (None, 1, 1, "same"),
        (None, 3, 3, "same"),
        (None, 1, None, "unknown"),
        (1, None, None, "unknown"),
        (1, None, 1, "unknown"),
        (None, None, 1, "unknown"),
    ],
)
def test_phases(told: Callable[..., str], old, new, site, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(name: str, value: int | None) -> dict[str, int]:
        return {} if value is None else {name: value}

    assert told("phase", fact("phase", old), fact("phase", new), fact("supply_phase", site)) == expected


def test_presumed_by_kind(told: Callable[..., str]) -> None:
    assert told("phase", {"phase": 1}, {"motor_type": "psc"}) == "same"
    assert told("phase", {"phase": 1}, {"motor_type": "psc"}, twice_new=("phase",)) == "unknown"
    assert told("phase", {"motor_type": "polyphase"}, {"volts": "115"}) == "fail"
