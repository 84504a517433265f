"""What a plate says and nobody understood: strange words stay in sight, labels and filler don't."""

import pytest

from matcher.job import Job
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


def test_a_name_typed_over_the_plate_s_own_is_not_left_over() -> None:
    job = Job(plate_text="VELMARROW VM-1 1/2 HP 230V GLORPEX").with_given("brand", "Velmarrow")
    assert leftover(job.with_given("part_number", "VM-1").old_motor()) == ["GLORPEX"]
