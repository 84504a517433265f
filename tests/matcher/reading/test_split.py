import pytest

from matcher.reading.split import split_listings

ONE = [
    "Blower motor 1/2 HP 115V $55, tested",
    "Blower motor\n\n1/2 HP 115V, tested. $55\n\nShips in 2 days for $12",
    "Motor for sale\n\nBrand GS-10, 1/2 HP\n\n1. tested\n2. cleaned\n3. oiled",
    "HP: 1/2\n-----\nVolts: 115",
    "Blower motor 1/2 HP 115V $55\n---\nShips by weight, pickup welcome. No returns.",
    "Fan motor 115V $5\n\nSimilar items\n\nFan motor 230V $6\n\nFan motor 460V $7",
    "Fan motor 115V $5\n\nCustomers also bought:\nFan motor 230V $6",
    "Fan motor 115V $5\n----\nRelated items\nFan motor 230V $6",
]
SEVERAL = [
    ("1/2 HP motor $5\n---\n1/3 HP motor $6", ["1/2 HP motor $5", "1/3 HP motor $6"]),
    ("Fan motor 115V $5\r\n=====\r\nFan motor 230V $6\r\n", ["Fan motor 115V $5", "Fan motor 230V $6"]),
    (
        "Lot of 6 QU/900 motors 1/3 HP, $120 for the lot\n---\n3/4hp direct drive, 5/8 shaft. free pickup, 80 obo",
        [
            "Lot of 6 QU/900 motors 1/3 HP, $120 for the lot",
            "3/4hp direct drive, 5/8 shaft. free pickup, 80 obo",
        ],
    ),
    (
        "Fan motor 115V, asking 30\n* * *\nFan motor 230V, 45 firm",
        ["Fan motor 115V, asking 30", "Fan motor 230V, 45 firm"],
    ),
    (
        "Fan motor 115V 30 bucks\n===\nFan motor 230V, price 45",
        ["Fan motor 115V 30 bucks", "Fan motor 230V, price 45"],
    ),
    ("1. motor 1/2 HP $5\n2) motor 1/3 HP $6", ["motor 1/2 HP $5", "motor 1/3 HP $6"]),
    ("Listing 1: motor $5\nlong\n\nLISTING 2: fan $6", ["motor $5\nlong", "fan $6"]),
    (
        "Here is what I found:\n***\nmotor A-11 $5\n***\nfan motor B-22 $6\n***\nThanks!",
        ["motor A-11 $5", "fan motor B-22 $6\n***\nThanks!"],
    ),
    (
        "Motor A\n1/2 HP $55\n\nMotor B 1/3 HP\n$40\n\nMotor C\n\n1/4 HP $15",
        ["Motor A\n1/2 HP $55", "Motor B 1/3 HP\n$40", "Motor C\n\n1/4 HP $15"],
    ),
]


@pytest.mark.parametrize("text", ONE)
def test_one_listing_stays_whole(text: str) -> None:
    assert split_listings(text) == [(0, len(text))]


@pytest.mark.parametrize(("text", "pieces"), SEVERAL)
def test_several_listings_are_parted(text: str, pieces: list[str]) -> None:
    assert [text[start:end] for start, end in split_listings(text)] == pieces


@pytest.mark.parametrize("text", ["", " \n\t\n"])
def test_blanks_hold_no_listing(text: str) -> None:
    assert split_listings(text) == []
