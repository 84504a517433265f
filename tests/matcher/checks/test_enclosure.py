from collections.abc import Callable

import pytest

Told = Callable[..., str]
KINDS = ["ODP", "OAO", "TEAO", "TENV", "TEFC", None]

# row = the old one, column = the new one in the order of KINDS; by what is known of the air stream and outdoors
NOTHING_KNOWN = {
    "ODP": ["same", "unknown", "unknown", "ok", "ok", "unknown"],
    "OAO": ["loss 0.1", "same", "ok", "loss 0.1", "loss 0.1", "unknown"],
    "TEAO": ["loss 0.8 poor", "loss 0.8 poor", "same", "loss 0.1", "loss 0.1", "unknown"],
    "TENV": ["loss 0.8", "loss 0.8", "unknown", "same", "ok", "unknown"],
    "TEFC": ["loss 0.8", "loss 0.8", "unknown", "ok", "same", "unknown"],
    None: ["unknown", "unknown", "unknown", "ok", "ok", "unknown"],
}
IN_THE_STREAM = {
    "ODP": ["same", "ok", "ok", "ok", "ok", "unknown"],
    "OAO": ["loss 0.1", "same", "ok", "loss 0.1", "loss 0.1", "unknown"],
    "TEAO": ["loss 0.8 poor", "loss 0.8 poor", "same", "loss 0.1", "loss 0.1", "unknown"],
    "TENV": ["loss 0.8", "loss 0.8", "ok", "same", "ok", "unknown"],
    "TEFC": ["loss 0.8", "loss 0.8", "ok", "ok", "same", "unknown"],
    None: ["unknown", "unknown", "unknown", "ok", "ok", "unknown"],
}
NO_STREAM = {
    "ODP": ["same", "loss 1 poor", "loss 1 poor", "ok", "ok", "unknown"],
    "OAO": ["loss 0.1", "loss 1 poor", "loss 1 poor", "loss 0.1", "loss 0.1", "unknown"],
    "TEAO": ["loss 0.8 poor", "loss 1 poor", "loss 1 poor", "loss 0.1", "loss 0.1", "unknown"],
    "TENV": ["loss 0.8", "loss 1 poor", "loss 1 poor", "same", "ok", "unknown"],
    "TEFC": ["loss 0.8", "loss 1 poor", "loss 1 poor", "ok", "same", "unknown"],
    None: ["unknown", "loss 1 poor", "loss 1 poor", "ok", "ok", "unknown"],
}
OUTDOORS = {
    "ODP": ["same", "loss 0.8 poor", "unknown", "ok", "ok", "unknown"],
    "OAO": ["loss 0.8 poor", "same", "ok", "loss 0.1", "loss 0.1", "unknown"],
    "TEAO": ["loss 0.8 poor", "loss 0.8 poor", "same", "loss 0.1", "loss 0.1", "unknown"],
    "TENV": ["loss 0.8 poor", "loss 0.8 poor", "unknown", "same", "ok", "unknown"],
    "TEFC": ["loss 0.8 poor", "loss 0.8 poor", "unknown", "ok", "same", "unknown"],
    None: ["loss 0.8 poor", "loss 0.8 poor", "unknown", "ok", "ok", "unknown"],
}
PLACES = [
    ({}, NOTHING_KNOWN),
    ({"outdoors": False}, NOTHING_KNOWN),
    ({"in_airstream": True}, IN_THE_STREAM),
    ({"in_airstream": True, "outdoors": False}, IN_THE_STREAM),
    ({"in_airstream": False}, NO_STREAM),
    ({"outdoors": True}, OUTDOORS),
]
CELLS = [
    (site, old, new, cell)
    for site, table in PLACES
    for old, row in table.items()
    for new, cell in zip(KINDS, row, strict=True)
]


@pytest.mark.parametrize(("site", "old", "new", "expected"), CELLS)
def test_every_pair_in_every_place(told: Told, site, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(kind: str | None) -> dict[str, str]:
        return {"enclosure": kind} if kind else {}

    assert told("enclosure", fact(old), fact(new), site) == expected


def test_contradictions(told: Told) -> None:
    assert told("enclosure", {"enclosure": "ODP"}, {}, twice_new=("enclosure",)) == "unknown"
    assert told("enclosure", {}, {"enclosure": "TEFC"}, twice_old=("enclosure",)) == "unknown"
