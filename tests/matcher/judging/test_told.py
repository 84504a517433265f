"""What a seller has said that he can't tell, and what is still worth asking him."""

import pytest

from matcher.job import Listing
from matcher.judging.asking import question, still_asked
from matcher.judging.told import Told, says_unknown, says_unread
from matcher.record import Origin


@pytest.mark.parametrize(
    ("text", "unread"),
    [
        ("the label is scratched cant read the rest", True),
        ("Can't read the sticker anymore", True),
        ("Name plate is missing.", True),
        ("tag illegible, sold as is", True),
        ("The label is not scratched, see photo", False),
        ("Label shown. Housing is scratched.", False),
        ("the shell is scratched, 1/2 hp", False),
        ("all data on the label", False),
        ("", False),
    ],
)
def test_a_plate_that_cannot_be_read(text: str, unread: bool) -> None:
    assert says_unread(text) is unread


@pytest.mark.parametrize(
    ("text", "unknown"),
    [
        ("dunno", True),
        ("Don't know, sorry", True),
        ("not sure, 110 or 220", True),
        ("No idea.", True),
        ("I\u2019m sure it is 115", False),
        ("115", False),
        ("unknowned", False),
        ("", False),
    ],
)
def test_an_answer_that_tells_nothing(text: str, unknown: bool) -> None:
    assert says_unknown(text) is unknown


@pytest.mark.parametrize(
    ("field", "told", "asked"),
    [
        ("volts", Told(), "What does the plate say beside VOLTS?"),
        ("volts", Told(plate_unread=True), "Which supply did it run on: 115 V, 230 V or another?"),
        ("insulation_class", Told(plate_unread=True), None),
        ("turn", Told(plate_unread=True), question("turn", "rotation").text),
        ("turn", Told(frozenset({"turn"})), None),
        (
            "old.volts",
            Told(frozenset({"old.volts"}), plate_unread=True),
            question("old.volts", "voltage").text,
        ),
    ],
)
def test_what_is_still_asked(field: str, told: Told, asked: str | None) -> None:
    still = still_asked(question(field, "check"), told)
    assert (still.text if still else None) == asked


def test_a_seller_who_does_not_know_is_kept_with_his_words() -> None:
    listing = Listing(text="motor, tag is gone").told("volts", "not sure, 110 or 220", origin=Origin.ANSWERED)
    assert listing.corrections["volts"].withdrawn
    assert listing.corrections["volts"].note == "not sure, 110 or 220"
    assert listing.told_unknown() == Told(frozenset({"volts"}), plate_unread=True)
    typed = Listing().withdrawn("volts")  # taken away by the user: nobody asked the seller
    assert typed.told_unknown() == Told()
