from collections.abc import Callable

import pytest

Told = Callable[..., str]
KINDS = ["auto", "manual", "impedance", "none", None]

# row = the old one, column = the new one in the order of KINDS
TABLE = {
    "auto": ["same", "ok", "ok", "loss 0.6 poor", "unknown"],
    "manual": ["loss 0.4", "same", "ok", "loss 0.6 poor", "unknown"],
    "impedance": ["ok", "ok", "same", "loss 0.6 poor", "unknown"],
    "none": ["none", "none", "none", "none", "none"],
    None: ["none", "none", "none", "none", "none"],
}
CELLS = [(old, new, cell) for old, row in TABLE.items() for new, cell in zip(KINDS, row, strict=True)]


@pytest.mark.parametrize(("old", "new", "expected"), CELLS)
def test_every_pair(told: Told, old: str | None, new: str | None, expected: str) -> None:
    def fact(kind: str | None) -> dict[str, str]:
        return {"protector": kind} if kind else {}

    assert told("protector", fact(old), fact(new)) == expected


def test_contradictions(told: Told) -> None:
    assert told("protector", {}, {"protector": "auto"}, twice_old=("protector",)) == "unknown"
    assert told("protector", {"protector": "auto"}, {}, twice_new=("protector",)) == "unknown"
    assert told("protector", {}, {}, twice_new=("protector",)) == "none"
