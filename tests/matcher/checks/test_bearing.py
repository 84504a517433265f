from collections.abc import Callable

import pytest

Told = Callable[..., str]
POSITIONS = ["horizontal", "up", "down", "any", None]

# row = the old position, column = the new one in the order of POSITIONS; bearings equal
TABLE = {
    "horizontal": ["same", "loss 0.6 poor", "loss 0.6 poor", "ok", "unknown"],
    "up": ["loss 0.6 poor", "same", "loss 0.6 poor", "ok", "unknown"],
    "down": ["loss 0.6 poor", "loss 0.6 poor", "same", "ok", "unknown"],
    "any": ["unknown", "unknown", "unknown", "same", "unknown"],
    None: ["unknown", "unknown", "unknown", "ok", "unknown"],
}
CELLS = [(old, new, cell) for old, row in TABLE.items() for new, cell in zip(POSITIONS, row, strict=True)]


def bearing(kind: str | None, position: str | None) -> dict[str, str]:
    facts = {"bearing": kind, "shaft_position": position}
    return {name: value for name, value in facts.items() if value is not None}


@pytest.mark.parametrize(("old", "new", "expected"), CELLS)
def test_every_position(told: Told, old: str | None, new: str | None, expected: str) -> None:
    assert told("bearing", bearing("ball", old), bearing("ball", new)) == expected


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (("sleeve", "up"), ("ball", "up"), "ok"),
        (("ball", "up"), ("sleeve", "up"), "loss 0.3"),
        (("sleeve", "up"), ("sleeve", "up"), "same"),
        (("ball", "up"), ("sleeve", "down"), "loss 0.6 poor"),
        (("ball", None), ("sleeve", None), "loss 0.3"),  # a known loss beats a missing half
        (("ball", "any"), ("sleeve", "up"), "loss 0.3"),
        ((None, "up"), (None, "down"), "loss 0.6 poor"),
        (("ball", "up"), (None, "up"), "unknown"),
        ((None, "up"), ("ball", "up"), "unknown"),
        (("ball", "up"), (None, None), "unknown"),
        ((None, None), ("ball", "any"), "unknown"),
        ((None, None), (None, None), "unknown"),
    ],
)
def test_kinds(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("bearing", bearing(*old), bearing(*new)) == expected
