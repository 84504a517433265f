"""The words behind an offer's facts come back as they were, short or not."""

import pytest

from matcher.record import Conflict, Mark, Origin
from matcher.store.provenance import pack, unpack

TITLE, TEXT = "1/2 HP motor", "208-230V, CW and CCW"


@pytest.mark.parametrize(
    "mark",
    [
        Mark(Origin.READ, "title", (0, 6), "1/2 HP"),
        Mark(Origin.READ, "text", (0, 8), "208-230V"),
        Mark(Origin.READ, "text", (0, 8), "other words"),
        Mark(Origin.READ, "text", (90, 95), "gone"),
        Mark(Origin.READ, "", (0, 0), ""),
        Mark(Origin.SEEN, "", (0, 0), "front.png \u202e\0"),
        Mark(Origin.ANSWERED, "text", (0, 8), "208-230V"),
    ],
    ids=lambda mark: f"{mark.origin} {mark.said[:8]!r}",
)
def test_a_mark_comes_back(mark: Mark) -> None:
    conflict = Conflict("rpm", ((1075, 850), 1075), ("a", "b"), (mark, mark))
    packed = pack({"volts": mark}, (conflict,), TITLE, TEXT)
    assert unpack(packed, TITLE, TEXT) == ({"volts": mark}, (conflict,))


def test_nothing_is_kept_as_nothing() -> None:
    assert pack({}, (), TITLE, TEXT) == ""
    assert unpack("", TITLE, TEXT) == ({}, ())


def test_words_in_the_text_are_kept_once() -> None:
    assert (
        pack({"volts": Mark(Origin.READ, "text", (0, 8), "208-230V")}, (), TITLE, TEXT)
        == '{"where":{"volts":["text",0,8]}}'
    )
