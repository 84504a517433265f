"""Every ink can be read on every ground, in light and dark (WCAG 2.1, success criterion 1.4.3)."""

import itertools

import pytest

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
