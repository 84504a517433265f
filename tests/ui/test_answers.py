"""What is taken over from the last answers must be what fresh ones would say."""

import pytest

from matcher.errors import UnknownField
from matcher.job import Fallback, Job, Listing
from ui.answers import answer
from ui.pages.money import _bars

PLATE = "1/2 HP 208-230V 60HZ 1PH 1075 RPM 3.4A CCWLE PSC belly band shaft 1/2 x 5 5.6 in dia"
JOB = Job(
    plate_text=PLATE,
    listings=(
        Listing(text=f"{PLATE} used $50 shipping $10"),
        Listing(text="Fan motor 1/2 HP 208-230V 60Hz 1ph 1075 rpm CW band 1/2 shaft PSC $30 $40 shipping"),
    ),
    fallback=Fallback(price=400.0),
)


def silent(_share: float) -> None:
    pass


@pytest.mark.parametrize(
    "changes",
    [
        {"settings_changes": {"weights": {"power": 80.0}, "swap_costs": {"capacitor": 99.0}}},
        {"plate_text": PLATE.replace("CCWLE", "CWLE")},
        {"listings": JOB.listings[1:]},
        {"name": "another name"},
    ],
    ids=["figures", "plate", "listings", "name"],
)
def test_answers_that_build_on_earlier_ones_are_fresh_ones(changes: dict[str, object]) -> None:
    changed = JOB.edited(**changes)
    again, fresh = answer(silent, changed, answer(silent, JOB)), answer(silent, changed)
    assert (again.weighed, again.buying) == (fresh.weighed, fresh.buying)
    assert list(again.weighed) == list(fresh.weighed)


@pytest.mark.parametrize(("exchange", "landed"), [({}, []), ({"EUR": 2.0}, [200.0])])
def test_another_currency_is_drawn_in_the_fallback_s_or_not_at_all(
    exchange: dict[str, float], landed: list[float]
) -> None:
    listing = Listing(text=f"{PLATE} used 90 EUR shipping 10 EUR")
    answers = answer(
        silent, JOB.edited(listings=(listing,), settings_changes={"exchange": exchange} if exchange else {})
    )
    assert answers.buying
    assert [bar.landed for bar in _bars(answers, answers.buying)] == landed
    assert [one.lacks_rate for one in answers.buying.left_out] == ([] if landed else [True])


def test_a_job_with_figures_of_no_table_is_refused_in_one_line() -> None:
    with pytest.raises(UnknownField, match="'wieghts' is no table here; did you mean 'weights'?"):
        answer(silent, JOB.edited(settings_changes={"wieghts": {}}))
