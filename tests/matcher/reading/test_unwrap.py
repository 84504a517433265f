"""Texts that a mail program folded are read like the unfolded ones; lists, plates and tables keep their lines."""

import textwrap

import pytest
from hypothesis import given
from hypothesis import strategies as st

from matcher.reading import read_listing
from matcher.reading.unwrap import unwrapped

PROSE = (
    "Took this out of my sister's air handler when she went to gas. Quarlow QB-12, half horse, 115 volts, 60 cycle, "
    "draws 7.6 amps at 1075 rpm, four speeds, and it turns counterclockwise when you look at the end with the leads. "
    "The shaft is half an inch across and five and a half inches long with one flat, the body is 5-5/8 in diameter, "
    "held by a belly band. Wants a 10 mfd 370 volt capacitor. Ran fine for years. Asking $40 plus $15 shipping."
)
SPECS = (
    "QB-12 1/2HP, 115V, 60HZ, 1PH, 7.6A, 1075RPM, 4SPD, CCWLE, OAO, SLEEVE, 48Y, SHAFT 1/2 X 5-1/2 W/ FLAT, BODY "
    "5-5/8 DIA X 5-1/4 LONG, BAND MOUNT, LEADS 30 IN., CLASS B, 40C, 10 MFD 370V RUN CAPACITOR NEEDED, NEW, $61.00, "
    "SHIPPING $14.50, 30 DAY RETURNS LESS 15% RESTOCKING, 1 YEAR WARRANTY"
)


@pytest.mark.parametrize("width", [46, 60, 72, 79])
@pytest.mark.parametrize("text", [PROSE, SPECS], ids=["prose", "specs"])
def test_a_folded_text_is_read_like_the_whole_one(text: str, width: int) -> None:
    folded = "\n".join(textwrap.wrap(text, width, break_long_words=False, break_on_hyphens=False))
    assert "\n" in folded
    assert read_listing(folded).facts.said() == read_listing(text).facts.said()


@pytest.mark.parametrize(
    "text",
    [
        "1/2 hp motor\n115 volts\n1075 rpm four speed\nccw lead end\nshaft 1/2 x 5",
        "- half horse blower motor from a working furnace\n- 115 volts and 1075 rpm with four speeds\n- shaft 1/2 x 5",
        "HP 1/2     VOLTS 115    AMPS 7.6    RPM 1075\nFR 48Y     ENCL OAO     INS B       HZ 60 PH 1\nROT CCWLE",
        "One long line that says all there is to say about the motor for sale\nshort\nshorter\nend",
        "Blower motor half horse from a furnace.\n\nRuns well and was tested today.\n\nPick up only please.",
    ],
    ids=["list", "bullets", "columns", "one long line", "paragraphs"],
)
def test_lines_that_end_early_keep_their_breaks(text: str) -> None:
    assert unwrapped(text) == text


@given(st.text(alphabet="ab 1/.\n-", max_size=400))
def test_every_character_keeps_its_place(text: str) -> None:
    whole = unwrapped(text)
    assert len(whole) == len(text)
    assert whole.replace("\n", " ") == text.replace("\n", " ")
