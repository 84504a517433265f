"""What a plate says and nobody understood: strange words stay in sight, labels and filler don't."""

import pytest

from matcher.leftover import LONGEST, MANY, leftover
from matcher.reading import read_plate


@pytest.mark.parametrize(
    ("plate", "left"),
    [
        pytest.param("1/2 HP 208-230V 1075 RPM FROBNITZ", ["FROBNITZ"], id="a word nobody knows"),
        pytest.param(
            "1/2 HP 230V C.WXLE SERIAL 88123", ["C.WXLE", "88123"], id="a misread turn and a figure"
        ),
        pytest.param("1/2 HP 230V heavy duty motor, made for the furnace", [], id="ordinary words"),
        pytest.param("HP 1/2 VOLTS 230 ENCL OAO INS CL B", [], id="known labels"),
        pytest.param("1/2 HP 230V XY ZK --- ::", [], id="short codes and signs"),
    ],
)
def test_strange_words_are_left_over(plate: str, left: list[str]) -> None:
    assert leftover(read_plate(plate)) == left


def test_a_flood_of_strange_words_stays_short() -> None:
    found = leftover(read_plate(" ".join(["zzqx" * LONGEST] * 50)))
    assert len(found) == MANY
