"""The last safe day to send back, on both sides of every weekend."""

from datetime import date

import pytest

from matcher.arrival.deadline import Deadline, deadline
from matcher.errors import BadValue

BOUGHT, DELIVERED = date(2030, 4, 1), date(2030, 4, 8)  # both Mondays


def at(today: date = DELIVERED, **terms: object) -> Deadline | None:
    return deadline(bought=BOUGHT, delivered=DELIVERED, today=today, **terms)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("terms", "send_by"),
    [
        pytest.param(
            {"return_days": 30}, date(2030, 5, 3), id="30 days end Wed 8 May; 5 on the way: Fri 3 May"
        ),
        pytest.param({"return_days": 31}, date(2030, 5, 3), id="a Saturday goes back to its Friday"),
        pytest.param({"return_days": 32}, date(2030, 5, 3), id="and so does a Sunday"),
        pytest.param({"return_days": 33}, date(2030, 5, 6), id="a Monday stays"),
        pytest.param(
            {"return_days": 30, "counted": "sent"}, date(2030, 5, 8), id="only sent within the window"
        ),
        pytest.param({"return_days": 30, "transit_days": 2}, date(2030, 5, 6), id="a near seller"),
        pytest.param({"return_days": 3}, DELIVERED, id="never before it arrived"),
    ],
)
def test_the_last_safe_day(terms: dict[str, object], send_by: date) -> None:
    found = at(**terms)
    assert found is not None
    assert found.send_by == send_by


@pytest.mark.parametrize("days", [0, None])
def test_nothing_goes_back_when_no_returns_or_not_said(days: int | None) -> None:
    assert at(return_days=days) is None


@pytest.mark.parametrize(
    ("today", "words"),
    [
        (date(2030, 5, 1), "Send it back by Fri 3 May 2030: 2 days left."),
        (date(2030, 5, 2), "1 day left."),
        (date(2030, 5, 3), "Send it back today, Fri 3 May 2030, or keep it."),
        (date(2030, 5, 4), "was Fri 3 May 2030"),
    ],
)
def test_what_it_says(today: date, words: str) -> None:
    found = at(today, return_days=30)
    assert found is not None
    assert words in found.says


@pytest.mark.parametrize(
    ("dates", "words"),
    [
        ({"bought": date(2030, 4, 9)}, "before the purchase"),
        ({"today": date(2030, 4, 7)}, "in the future"),
        ({"transit_days": -1}, "can't be"),
        ({"transit_days": 61}, "can't be"),
        ({"return_days": 4000}, "return days: 4000"),
    ],
)
def test_dates_that_cannot_be_are_refused(dates: dict[str, object], words: str) -> None:
    given = {"bought": BOUGHT, "delivered": DELIVERED, "today": DELIVERED, "return_days": 30} | dates
    with pytest.raises(BadValue, match=words):
        deadline(**given)  # type: ignore[arg-type]


def test_a_window_shorter_than_the_way_back_is_said_so() -> None:
    found = at(return_days=3)
    assert found is not None
    assert found.is_tight
    assert "sooner than a parcel travels" in found.says


@pytest.mark.parametrize(("day", "words"), [(1, "send back by Fri 3 May 2030"), (4, "last safe day was Fri")])
def test_a_few_words_for_the_rail(day: int, words: str) -> None:
    found = at(date(2030, 5, day), return_days=30)
    assert found is not None
    assert words in found.short
