"""What a title says is for sale."""

import pytest

from matcher.reading import read_listing

MOTORS = (
    "Retrofit kit 1/2 HP ECM with band",
    "Retrofit kit for furnace blower",
    "Blower motor kit 1/2 HP",
    "Condenser fan motor w/ bracket",
    "Belly band motor 1/3 HP",
    "Kit: 1/2 HP 115V motor, band, cap",
)
PARTS = (
    "Motor run capacitor 7.5 MFD",
    "Motor mounting bracket 48 frame",
    "Bearing kit for 48 frame",
    "Hard start kit",
    "Fan blade only, no motor",
    "Blower housing less motor",
)


@pytest.mark.parametrize("title", MOTORS)
def test_titles_of_motors(title: str) -> None:
    assert read_listing("Tarrowick TK-4411. Used. $30.", title).facts.item is None


@pytest.mark.parametrize("title", PARTS)
def test_titles_of_parts(title: str) -> None:
    assert read_listing("Good shape, from a furnace. $30.", title).facts.item == "part"
