from collections.abc import Callable

import pytest


@pytest.mark.parametrize(
    ("old", "new", "room", "expected"),
    [
        (5.0, 6.0, 6.0, "ok"),
        (6.0, 6.0, 6.0, "same"),
        (5.0, 6.01, 6.0, "fail"),
        (5.0, 9.0, 10.0, "ok"),  # the room goes before the old body
        (5.0, None, 6.0, "unknown"),
        (None, 6.0, 6.0, "ok"),
        (5.0, 5.0, None, "same"),
        (5.0, 5.5, None, "ok"),
        (5.0, 5.51, None, "loss 0.3"),
        (5.0, 7.0, None, "loss 0.3"),
        (5.0, 7.01, None, "loss 0.7"),
        (5.0, 3.0, None, "ok"),
        (5.0, None, None, "unknown"),
        (None, 5.0, None, "unknown"),
    ],
)
def test_body(look, told: Callable[..., str], old, new, room, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(name: str, value: float | None) -> dict[str, float]:
        return {} if value is None else {name: value}

    given = fact("body_length_in", old), fact("body_length_in", new), fact("room_length_in", room)
    assert told("length", *given) == expected
    found = look("length", *given)
    assert found.hard == (room is not None and expected in ("fail", "unknown"))
    assert found.asks == (found.hard and expected == "unknown")
