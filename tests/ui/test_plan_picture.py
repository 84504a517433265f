"""The picture of the plan: to scale while that shows something, broken where the fallback is far dearer."""

from dataclasses import replace

import pytest

from ui.plan_picture import SHOWN, Bar, PlanPicture

CHEAP = Bar("Krellin KR-2", "fits", 1, 60.0, 20.0, 0.9)
DEAR = Bar("Ossenby OB-7", "ask", 2, 120.0, 120.0, 0.5)
WIDE = 700.0


@pytest.fixture
def picture(qtbot) -> PlanPicture:
    made = PlanPicture()
    qtbot.addWidget(made)
    return made


@pytest.mark.parametrize(("fallback", "broken"), [(250.0, False), (1180.0, True), (20_000.0, True)])
def test_the_bars_fill_the_picture_however_dear_the_quote_is(picture, fallback, broken):
    picture.show_plan([CHEAP, DEAR], fallback)
    scale, line = picture._scale(WIDE)
    assert picture.is_broken is broken
    assert DEAR.landed * scale > 0.4 * WIDE
    assert DEAR.landed * scale < line < WIDE
    assert broken or line == pytest.approx(fallback * scale)


def test_a_candidate_dearer_than_the_quote_reaches_beyond_its_line(picture):
    picture.show_plan([CHEAP, DEAR], 100.0)
    scale, line = picture._scale(WIDE)
    assert CHEAP.landed * scale < line < DEAR.landed * scale < WIDE


def test_it_paints_at_every_width_and_counts_what_it_leaves_out(picture):
    picture.show_plan([CHEAP] * (SHOWN + 3), 1180.0)
    assert picture._more == "3 more in the plan"
    for wide in (120, 400, 1600):
        picture.resize(wide, picture.sizeHint().height())
        assert not picture.grab().isNull()


def test_a_presumed_shipping_cost_is_marked_in_words_and_bars(picture):
    picture.show_plan([CHEAP, replace(DEAR, presumed=True)], 250.0)
    told = picture.accessibleDescription()
    assert "Krellin KR-2: 60 if it works, 20 if not" in told
    assert "Ossenby OB-7: ~120 if it works, ~120 if not" in told
    picture.resize(900, picture.sizeHint().height())
    assert not picture.grab().isNull()


def test_what_is_not_in_the_picture_agrees_with_the_plan(picture):
    left_out = [replace(DEAR, step=0)] * 4
    picture.show_plan([CHEAP] * (SHOWN + 2) + left_out, 250.0)
    assert picture._more == "2 more in the plan, 4 not worth trying"
    picture.show_plan([CHEAP] * SHOWN + left_out, 250.0)
    assert picture._more == "4 not worth trying"
    picture.show_plan([CHEAP], 250.0)
    assert picture._more == ""
