"""Pictures of every page, light and dark, in two sizes: nothing warns, nothing is cut off at the right.

With `SAMESPIN_PICTURES=FOLDER` they are kept there, for the README and for people to look at.
"""

import os
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

import ui.window
from matcher.tables import data_folder
from ui.bench import Bench
from ui.theme import DARK, LIGHT

NAMES = ("old_motor", "listings", "side_by_side", "money", "arrival", "swap_and_proof", "stock")
SIZES = ((1366, 768), (1920, 1080))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    kept = Path(os.environ.get("SAMESPIN_PICTURES", tmp_path))
    kept.mkdir(parents=True, exist_ok=True)
    return kept


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
def test_every_page_has_its_picture(open_bench, settle, folder, monkeypatch, colours):
    monkeypatch.setattr(ui.window, "system_colours", lambda: colours)
    bench: Bench = open_bench(demo=data_folder() / "demo")
    settle(bench)
    for width, height in SIZES:
        bench.window.resize(width, height)
        for stage, name in enumerate(NAMES):
            bench.window.go_to(stage)
            settle(bench)
            QApplication.processEvents()
            image = bench.window.grab().toImage()
            scale = image.devicePixelRatio()
            assert (image.width() / scale, image.height() / scale) == (width, height)
            ground = image.pixelColor(image.width() - 3, image.height() - 3).name()
            assert ground == colours.ground
            theme = "light" if colours is LIGHT else "dark"
            assert image.save(str(folder / f"{name}_{theme}_{width}.png"))


def test_the_program_paints_itself_into_a_picture(qtbot, tmp_path):
    from ui.app import picture

    picture(data_folder() / "demo", tmp_path / "window.png")
    assert (tmp_path / "window.png").read_bytes().startswith(b"\x89PNG")
