from collections.abc import Callable

import pytest

Told = Callable[..., str]
HALF = {"shaft_diameter_in": 0.5}


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (0.5, 0.5, "same"),
        (0.5, 0.4995, "same"),
        (0.5, 0.502, "same"),
        (0.5, 0.498, "same"),
        (0.5, 0.5021, "fail"),
        (0.5, 0.4979, "fail"),
        (0.625, 0.6299, "fail"),  # 16 mm is not 5/8
        (0.625, 0.5, "fail"),
        (0.5, None, "unknown"),
        (None, 0.5, "unknown"),
    ],
)
def test_diameter(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(value: float | None) -> dict[str, float]:
        return {} if value is None else {"shaft_diameter_in": value}

    assert told("shaft", fact(old), fact(new)) == expected


def test_a_bush_is_mentioned_but_is_no_fit(look) -> None:  # type: ignore[no-untyped-def]
    assert "bush" in look("shaft", {"shaft_diameter_in": 0.625}, HALF).why
    assert "bush" not in look("shaft", HALF, {"shaft_diameter_in": 0.625}).why


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (2, 1, "fail"),
        (2, None, "unknown"),
        (2, 2, "same"),
        (1, 2, "loss 0.3"),
        (1, None, "same"),
        (1, 1, "same"),
        (None, 2, "same"),
        (None, 1, "same"),
    ],
)
def test_ends(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(value: int | None) -> dict[str, float]:
        return HALF if value is None else HALF | {"shaft_ends": value}

    assert told("shaft", fact(old), fact(new)) == expected


@pytest.mark.parametrize(
    ("old", "new", "least", "expected"),
    [
        (4.0, 4.0, None, "same"),
        (4.0, 3.5, None, "ok"),
        (4.0, 3.49, None, "loss 0.4"),
        (4.0, 2.5, None, "loss 0.4"),
        (4.0, 2.49, None, "unknown"),
        (4.0, 5.0, None, "ok"),
        (4.0, 5.01, None, "loss 0.2"),
        (4.0, None, None, "same"),
        (None, 4.0, None, "same"),
        (4.0, 2.0, 2.0, "ok"),
        (4.0, 1.99, 2.0, "fail"),
        (4.0, None, 2.0, "unknown"),
        (None, 2.0, 2.0, "same"),
        (4.0, 5.01, 2.0, "loss 0.2"),
        (4.0, 5.0, 2.0, "ok"),
    ],
)
def test_length(told: Told, old, new, least, expected) -> None:  # type: ignore[no-untyped-def]
    def fact(value: float | None) -> dict[str, float]:
        return HALF if value is None else HALF | {"shaft_length_in": value}

    site = {} if least is None else {"shaft_length_min_in": least}
    assert told("shaft", fact(old), fact(new), site) == expected


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ({"shaft_keyed": True}, {"shaft_keyed": True}, "same"),
        ({"shaft_keyed": True}, {"shaft_keyed": False}, "loss 0.5"),
        ({"shaft_keyed": True}, {"shaft_flats": 1}, "loss 0.5"),
        ({"shaft_keyed": True}, {"shaft_flats": 0}, "loss 0.5"),
        ({"shaft_keyed": True}, {}, "same"),
        ({"shaft_flats": 1}, {"shaft_flats": 0}, "loss 0.4"),
        ({"shaft_flats": 2}, {"shaft_flats": 0}, "loss 0.4"),
        ({"shaft_flats": 1}, {"shaft_flats": 0, "shaft_keyed": False}, "loss 0.4"),
        ({"shaft_flats": 1}, {"shaft_flats": 0, "shaft_keyed": True}, "ok"),
        ({"shaft_flats": 2}, {"shaft_flats": 1}, "loss 0.2"),
        ({"shaft_flats": 2}, {"shaft_flats": 2}, "same"),
        ({"shaft_flats": 1}, {"shaft_flats": 2}, "ok"),
        ({"shaft_flats": 0}, {"shaft_flats": 1}, "ok"),
        ({"shaft_flats": 1}, {}, "same"),
        ({"shaft_flats": 1, "shaft_keyed": True}, {"shaft_flats": 0, "shaft_keyed": False}, "loss 0.5"),
    ],
)
def test_form(told: Told, old: dict[str, int], new: dict[str, int], expected: str) -> None:
    assert told("shaft", HALF | old, HALF | new) == expected


def test_fail_beats_unknown_beats_loss(told: Told) -> None:
    assert told("shaft", HALF | {"shaft_ends": 2}, {"shaft_diameter_in": 0.6}) == "fail"
    assert told("shaft", HALF | {"shaft_flats": 1}, {"shaft_flats": 0}) == "unknown"
    assert told("shaft", HALF | {"shaft_ends": 2}, HALF | {"shaft_flats": 0}) == "unknown"


def test_unsaid_form_is_asked(look) -> None:  # type: ignore[no-untyped-def]
    assert look("shaft", HALF, HALF).questions == ("shaft_flats",)
    assert look("shaft", HALF, HALF | {"shaft_flats": 1}).questions == ()


@pytest.mark.parametrize(
    "name", ["shaft_flats", "shaft_keyed", "shaft_ends", "shaft_length_in", "shaft_diameter_in"]
)
def test_any_contradicted_shaft_fact_makes_it_unknown(told: Told, name: str) -> None:
    new = {} if name == "shaft_diameter_in" else HALF
    assert told("shaft", HALF, new, twice_new=(name,)) == "unknown"
    assert told("shaft", {"shaft_diameter_in": 0.75}, HALF, twice_new=("shaft_flats",)) == "fail"
