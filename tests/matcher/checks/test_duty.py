from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("continuous", "continuous", "same"),
        ("continuous", "intermittent", "loss 0.8 poor"),
        ("intermittent", "continuous", "ok"),
        ("intermittent", "intermittent", "same"),
        (None, "intermittent", "ok"),
        (None, "continuous", "ok"),
        ("continuous", None, "none"),
        (None, None, "none"),
    ],
)
def test_duties(told: Callable[..., str], old: str | None, new: str | None, expected: str) -> None:
    def fact(duty: str | None) -> dict[str, str]:
        return {"duty": duty} if duty else {}

    assert told("duty", fact(old), fact(new)) == expected


def test_contradictions(told: Callable[..., str]) -> None:
    assert told("duty", {"duty": "continuous"}, {}, twice_new=("duty",)) == "unknown"
    assert told("duty", {}, {"duty": "intermittent"}, twice_old=("duty",)) == "unknown"
