"""What is taken over from the last answers must be what fresh ones would say."""

import pytest

from matcher.job import Fallback, Job, Listing
from ui.answers import answer

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
    assert (again.weighed, again.plan, again.worths) == (fresh.weighed, fresh.plan, fresh.worths)
    assert list(again.weighed) == list(fresh.weighed)
