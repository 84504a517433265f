"""Every ink can be read on every ground, in light and dark (WCAG 2.1, success criterion 1.4.3)."""

import itertools
import subprocess
import sys
from pathlib import Path

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


ROOT = Path(__file__).parent.parent.parent
SIZES = """
import sys
from PySide6.QtWidgets import QApplication
made = QApplication(["samespin"])
font = made.font()
font.setPointSizeF(float(sys.argv[1]))
made.setFont(font)
from ui.app import application
made = application(["samespin"])
from ui.theme import GRID, large
print(made.font().pointSizeF(), large(made.font()).pointSizeF(), GRID)
"""


@pytest.mark.parametrize(
    ("system", "told"), [("9", "10.0 15.0 8"), ("10", "10.0 15.0 8"), ("15", "15.0 22.5 12")]
)
def test_text_and_grid_grow_with_the_systems_text_and_never_below_ten_points(system, told):
    done = subprocess.run(
        [sys.executable, "-c", SIZES, system], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert done.stdout.split() == told.split()
