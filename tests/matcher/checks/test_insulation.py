from collections.abc import Callable

import pytest

Told = Callable[..., str]
CLASSES = "ABFH"


def heat(letter: str | None, ambient: int | None) -> dict[str, object]:
    facts = {"insulation_class": letter, "ambient_c": ambient}
    return {name: value for name, value in facts.items() if value is not None}


@pytest.mark.parametrize("old", CLASSES)
@pytest.mark.parametrize("new", CLASSES)
def test_classes(told: Told, old: str, new: str) -> None:
    expected = "same" if old == new else "ok" if CLASSES.index(new) > CLASSES.index(old) else "loss 0.4"
    assert told("insulation", heat(old, 40), heat(new, 40)) == expected


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (("B", 40), ("B", 40), "same"),
        (("B", 40), ("B", 50), "ok"),
        (("B", 40), ("B", 39), "loss 0.4"),
        (("B", 50), ("F", 40), "loss 0.4"),
        (("F", 40), ("B", 60), "loss 0.4"),
        (("B", 40), ("B", None), "unknown"),
        (("B", 40), (None, 40), "unknown"),
        (("B", None), ("B", 40), "unknown"),
        (("B", 40), ("A", None), "loss 0.4"),
        (("B", 50), (None, 40), "loss 0.4"),
        (("B", None), ("A", None), "loss 0.4"),
        (("B", 40), (None, None), "unknown"),
        ((None, None), (None, None), "unknown"),
    ],
)
def test_class_and_ambient(told: Told, old, new, expected) -> None:  # type: ignore[no-untyped-def]
    assert told("insulation", heat(*old), heat(*new)) == expected
