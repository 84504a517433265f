from collections.abc import Callable

import pytest

Told = Callable[..., str]
KINDS = ["band", "studs", "lugs", "cradle", "rigid_base", "face", "yoke"]
SIZES = {"body_diameter_in": 5.6, "bolt_circle_in": 4.0, "frame": "56"}

# Every cell, stated here on its own: row = the old one's mounting, column = the new one's, in the order of KINDS.
TABLE = {
    "band": ["same", "ok", "loss 0.5", "loss 0.5", "fail", "fail", "fail"],
    "studs": ["fail", "same", "fail", "fail", "fail", "fail", "fail"],
    "lugs": ["loss 0.5", "loss 0.5", "same", "fail", "fail", "fail", "fail"],
    "cradle": ["fail", "fail", "fail", "same", "loss 0.6", "fail", "fail"],
    "rigid_base": ["fail", "fail", "fail", "fail", "same", "fail", "fail"],
    "face": ["fail", "fail", "fail", "fail", "fail", "same", "fail"],
    "yoke": ["fail", "fail", "fail", "fail", "fail", "fail", "same"],
}
CELLS = [(old, new, cell) for old, row in TABLE.items() for new, cell in zip(KINDS, row, strict=True)]


def held(*kinds: str, **sizes: object) -> dict[str, object]:
    return {"mounting": kinds, **sizes}


@pytest.mark.parametrize(("old", "new", "expected"), CELLS)
def test_every_cell(told: Told, old: str, new: str, expected: str) -> None:
    assert told("mounting", held(old, **SIZES), held(new, **SIZES)) == expected


@pytest.mark.parametrize(
    ("old", "new", "new_kind", "expected"),
    [
        (5.6, 5.725, "band", "same"),
        (5.6, 5.726, "band", "loss 0.6"),
        (5.6, 5.475, "band", "same"),
        (5.6, 5.474, "band", "loss 0.6"),
        (5.6, 6.6, "band", "loss 0.6"),
        (5.6, 6.601, "band", "fail"),
        (5.6, 4.599, "band", "fail"),
        (5.6, 5.8, "studs", "loss 0.6"),
        (5.6, 6.7, "studs", "fail"),
        (5.6, 5.8, "lugs", "loss 0.6"),
        (5.6, 5.7, "lugs", "loss 0.5"),
        (5.6, 6.7, "lugs", "fail"),
        (5.6, 5.8, "cradle", "loss 0.6"),
        (5.6, None, "band", "same"),
        (None, 5.6, "band", "same"),
        (None, None, "studs", "ok"),
        (5.6, None, "lugs", "loss 0.5"),
    ],
)
def test_the_old_band_is_used_again(told: Told, old, new, new_kind, expected) -> None:  # type: ignore[no-untyped-def]
    def body(value: float | None) -> dict[str, object]:
        return {} if value is None else {"body_diameter_in": value}

    assert told("mounting", held("band", **body(old)), held(new_kind, **body(new))) == expected


def test_an_unknown_body_is_asked(look) -> None:  # type: ignore[no-untyped-def]
    assert look("mounting", held("band", body_diameter_in=5.6), held("band")).questions == (
        "body_diameter_in",
    )
    assert look("mounting", held("band"), held("band")).questions == ("body_diameter_in",)
    assert look("mounting", held("band"), held("band", body_diameter_in=5.6)).questions == (
        "old.body_diameter_in",
    )


def test_the_body_matters_to_the_band_alone(told: Told) -> None:
    assert told("mounting", held("lugs", body_diameter_in=5), held("band", body_diameter_in=7)) == "loss 0.5"
    assert told("mounting", held("yoke", body_diameter_in=5), held("yoke", body_diameter_in=7)) == "same"


@pytest.mark.parametrize("kind", ["studs", "face"])
@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (4.0, 4.0625, "same"),
        (4.0, 4.063, "fail"),
        (4.0, 3.9375, "same"),
        (4.0, 3.937, "fail"),
        (4.0, None, "unknown"),
        (None, 4.0, "unknown"),
        (None, None, "unknown"),
    ],
)
def test_bolt_circles(told: Told, kind: str, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    def circle(value: float | None) -> dict[str, object]:
        return {"frame": "IEC71"} if value is None else {"bolt_circle_in": value, "frame": "IEC71"}

    assert told("mounting", held(kind, **circle(old)), held(kind, **circle(new))) == expected


FRAMES = [
    ("rigid_base", "56", "56", "same"),
    ("rigid_base", "56C", "56HZ", "same"),
    ("rigid_base", "48", "56", "fail"),
    ("rigid_base", "143T", "145T", "loss 0.3"),
    ("rigid_base", "184T", "182", "loss 0.3"),
    ("rigid_base", "145T", "182T", "fail"),
    ("rigid_base", "56", None, "unknown"),
    ("rigid_base", None, "56", "unknown"),
    ("rigid_base", None, None, "unknown"),
    ("rigid_base", "IEC90S", "IEC90S", "same"),
    ("rigid_base", "IEC90S", "IEC90L", "fail"),
    ("rigid_base", "IEC71", "56", "fail"),
    ("rigid_base", "56", "IEC56", "fail"),
    ("cradle", "48Z", "48", "same"),
    ("cradle", "143", "145", "loss 0.3"),
    ("cradle", "48", "56", "fail"),
    ("face", "56C", "56C", "same"),
    ("face", "143TC", "145TC", "same"),
    ("face", "182TC", "184TC", "same"),
    ("face", "56C", "143TC", "fail"),
    ("face", "56C", None, "unknown"),
    ("face", "IEC71", "IEC71", "unknown"),  # its bolt circle isn't known
    ("face", "IEC71", "IEC80", "fail"),
]


@pytest.mark.parametrize(("kind", "old", "new", "expected"), FRAMES)
def test_frames_fix_base_cradle_and_face(told: Told, kind, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    def frame(value: str | None) -> dict[str, object]:
        return {} if value is None else {"frame": value}

    assert told("mounting", held(kind, **frame(old)), held(kind, **frame(new))) == expected


def test_frames_and_circles_together(told: Told) -> None:
    def face(frame: str, circle: float) -> dict[str, object]:
        return held("face", frame=frame, bolt_circle_in=circle)

    assert told("mounting", face("56C", 5.875), face("56C", 5.875)) == "same"
    assert told("mounting", face("56C", 5.875), face("56C", 3.75)) == "fail"
    assert told("mounting", face("56C", 5.875), face("143TC", 5.875)) == "fail"
    assert told("mounting", face("143TC", 5.875), face("145TC", 5.875)) == "same"
    circle = {"bolt_circle_in": 5.875}
    assert told("mounting", held("face", **circle), held("face", **circle)) == "unknown"


def test_cradle_to_base_takes_the_larger_loss(told: Told) -> None:
    assert told("mounting", held("cradle", frame="143T"), held("rigid_base", frame="145T")) == "loss 0.6"
    assert told("mounting", held("cradle", frame="48"), held("rigid_base", frame="56")) == "fail"
    assert told("mounting", held("cradle", frame="48"), held("rigid_base")) == "unknown"


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (held("band", "studs"), held("studs"), "ok"),
        (held("studs", bolt_circle_in=4), held("band", "studs", bolt_circle_in=4), "same"),
        (held("studs", bolt_circle_in=4), held("band", "studs"), "unknown"),
        (held("studs", "lugs"), held("studs", "lugs"), "same"),  # lugs hold, studs are not known
        (held("studs", "lugs"), held("studs"), "loss 0.5"),
        (held("studs", "yoke"), held("studs"), "unknown"),
        (held("studs", "yoke"), held("band"), "fail"),
        (held("band", "yoke"), held("lugs", "yoke"), "same"),
    ],
)
def test_of_several_kinds_the_best_pair_counts(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("mounting", old, new) == expected


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (held("band", body_diameter_in=5.6), {"body_diameter_in": 5.725}, "ok"),
        (held("band", body_diameter_in=5.6), {"body_diameter_in": 5.475}, "ok"),
        (held("band", body_diameter_in=5.6), {"body_diameter_in": 5.73}, "unknown"),
        (held("band", body_diameter_in=5.6), {}, "unknown"),
        (held("band"), {"body_diameter_in": 5.6}, "unknown"),
        (held("band", "studs", body_diameter_in=5.6), {"body_diameter_in": 5.6}, "ok"),
        (held("studs", body_diameter_in=5.6), {"body_diameter_in": 5.6}, "unknown"),
        (held("band", body_diameter_in=5.6), {"frame": "48Y"}, "ok"),
        (held("band", frame="48YZ"), {"frame": "48Y"}, "ok"),
        (held("band", body_diameter_in=5.6), {"frame": "48"}, "unknown"),
        ({}, held("band"), "unknown"),
        ({}, {}, "unknown"),
        ({"body_diameter_in": 5.6}, held("band", body_diameter_in=5.6), "unknown"),
        (held("face", frame="56C"), {"frame": "56HC"}, "same"),
        ({"frame": "145TC"}, held("face", frame="143TC"), "same"),
        ({"frame": "56C"}, {"frame": "56C"}, "same"),
        (held("band", body_diameter_in=5.6), {"frame": "56C", "body_diameter_in": 5.6}, "fail"),
        ({"frame": "56"}, {"frame": "56"}, "unknown"),
        ({"frame": "56CZ"}, {"frame": "56CZ"}, "unknown"),
    ],
)
def test_mounting_not_said(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("mounting", old, new) == expected


def test_what_the_swap_needs(look) -> None:  # type: ignore[no-untyped-def]
    assert look("mounting", held("lugs"), held("band")).needs == ("band_kit",)
    wide = held("band", body_diameter_in=6), held("band", body_diameter_in=5.6)
    assert look("mounting", *wide).needs == ("band_kit",)
    assert look("mounting", held("band"), held("band")).needs == ()
    assert look("mounting", held("band"), held("lugs")).needs == ()


@pytest.mark.parametrize("name", ["mounting", "body_diameter_in", "bolt_circle_in", "frame"])
def test_contradicted_facts_are_never_harmless(told: Told, name: str) -> None:
    old = held("band", body_diameter_in=5.6)
    new = {key: value for key, value in old.items() if key != name}
    assert told("mounting", old, new, twice_new=(name,)) == "unknown"
    assert told("mounting", old, {"frame": "56C"}, twice_new=("mounting",)) == "unknown"
    assert told("mounting", old, held("yoke"), twice_new=("frame",)) == "fail"
