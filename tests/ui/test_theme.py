"""Every ink can be read on every ground, in light and dark (WCAG 2.1, success criterion 1.4.3)."""

import itertools

import pytest

import ui.window
from ui.bench import SWAP_PROOF
from ui.caution import Caution
from ui.line import Trouble
from ui.theme import DARK, GROUNDS, INKS, LIGHT, contrast


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("ink", "ground"), list(itertools.product(INKS, GROUNDS)))
def test_contrast_is_at_least_four_and_a_half(colours, ink, ground):
    assert contrast(getattr(colours, ink), getattr(colours, ground)) >= 4.5


@pytest.mark.published
def test_contrast_of_black_and_white_is_21():
    """WCAG 2.1, definition of contrast ratio: from 1 to 21."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#777777") == pytest.approx(1)


def test_cautions_keep_their_margins_when_light_becomes_dark(bench, settle, monkeypatch):
    bench.window.go_to(SWAP_PROOF)
    settle(bench)
    cautions = [*bench.window.findChildren(Caution), bench.window.message]
    before = [one.contentsMargins() for one in cautions]
    sizes = [one.size() for one in cautions]
    for one in cautions:
        one.resize(one.width(), 4)  # as while its page is folded away
    for colours in (DARK, LIGHT):
        monkeypatch.setattr(ui.window, "system_colours", lambda colours=colours: colours)
        bench.window.wear()
    for one, size in zip(cautions, sizes, strict=True):
        one.resize(size)
    assert [one.contentsMargins() for one in cautions] == before


def test_a_trouble_in_sight_takes_on_the_colour_of_the_dark(bench, settle, monkeypatch):
    edit = bench.old_motor.edits["power_hp"]
    edit.trouble.tell("can't be")
    monkeypatch.setattr(ui.window, "system_colours", lambda: DARK)
    bench.window.wear()
    assert isinstance(edit.trouble, Trouble)
    assert edit.trouble.palette().windowText().color().name() == DARK.wont_fit
