"""Days as people type them, and that each still means the same when it is read again."""

from datetime import date

import pytest

from matcher.arrival.dates import date_in, lasting
from matcher.errors import BadValue

TODAY = date(2030, 4, 20)


@pytest.mark.parametrize(
    "text", ["2030-04-08", "8 Apr 2030", "Apr 8, 2030", "8 April 2030", "08.04.2030", " April 8  2030 "]
)
def test_dates_as_people_write_them(text: str) -> None:
    assert date_in("delivered", text) == date(2030, 4, 8)


@pytest.mark.parametrize(
    "text", ["4/8/2030", "3/4", "2030-02-30", "soon", "1830-01-01", "8", "31/31", "1/2/3/4"]
)
def test_what_is_no_date_is_refused(text: str) -> None:
    with pytest.raises(BadValue, match="write it as 2030-04-08"):
        date_in("delivered", text, TODAY)


def test_no_date_is_no_fault() -> None:
    assert date_in("delivered", "  ") is None


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("today", date(2030, 4, 20)),
        ("Yesterday", date(2030, 4, 19)),
        ("8 Apr", date(2030, 4, 8)),
        ("April 8", date(2030, 4, 8)),
        ("20.4.", date(2030, 4, 20)),
        ("20.04", date(2030, 4, 20)),
        ("4/18", date(2030, 4, 18)),
        ("18/4", date(2030, 4, 18)),
        ("4/4", date(2030, 4, 4)),
        ("4/18/30", date(2030, 4, 18)),
        ("18/4/2030", date(2030, 4, 18)),
        ("Dec 28", date(2029, 12, 28)),
        ("28 Apr", date(2030, 4, 28)),
    ],
)
def test_a_day_without_its_year_is_the_nearest(text: str, day: date) -> None:
    assert date_in("bought", text, TODAY) == day
    assert date_in("bought", lasting(text, TODAY)) == day


@pytest.mark.parametrize("text", ["", "2030-04-08", "8 Apr 2030", "soon", "3/4"])
def test_what_needs_no_year_or_is_no_day_stays_as_typed(text: str) -> None:
    assert lasting(text, TODAY) == text
