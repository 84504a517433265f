import pytest

from matcher.trade.numbers import Likeness, compact, likeness, same_brand, same_code


@pytest.mark.parametrize(
    ("written", "compared"),
    [
        ("pl-2031 k", "PL2031K"),
        ("A.1/2-3", "A123"),
        ("OV\u20136618", "OV6618"),
        ("  ", ""),
        ("N/A", ""),
        ("Does not apply", ""),
        ("Unbranded", ""),
    ],
)
def test_compact(written: str, compared: str) -> None:
    assert compact(written) == compared


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ("PL-2031K", "pl 2031k", "equal"),
        ("PL-2031K", "PL-2O31K", "lookalike"),
        ("Q0O", "000", "lookalike"),
        ("1IL", "LLL", "lookalike"),
        ("2Z", "Z2", "lookalike"),
        ("5S", "SS", "lookalike"),
        ("6G", "G6", "lookalike"),
        ("8B", "B8", "lookalike"),
        ("8B", "B0", "different"),
        ("PL-2031", "PL-2031K", "suffix"),
        ("PL-2031KABC", "PL-2031", "suffix"),
        ("PL-2031KABCD", "PL-2031", "different"),
        ("PL-2031", "XPL-2031", "different"),
        ("PL-2031", None, "different"),
        ("N/A", "N/A", "different"),
    ],
)
def test_likeness(one: str, other: str | None, expected: str) -> None:
    assert likeness(one, other) is Likeness(expected)
    assert likeness(other, one) is Likeness(expected)


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ("Plenquist", "PLENQUIST", True),
        ("Plenquist", "Plenquist Motors", False),
        ("Plenquist", None, None),
        ("Plenquist", "Unbranded", None),
        ("Unknown", "unknown", None),
    ],
)
def test_same_brand(one: str, other: str | None, expected: bool | None) -> None:
    assert same_brand(one, other) is expected


def test_same_code_needs_both() -> None:
    assert same_code("R-1", "r1") is True
    assert same_code("R-1", "R-2") is False
    assert same_code("R-1", None) is None
    assert same_code("n/a", "n/a") is None
