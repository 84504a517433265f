"""What every test shares: no display, no network, no touching of the user's own folders."""

import os

import pytest
from hypothesis import settings

from tests import no_network

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
no_network.shut()
settings.register_profile("ci", derandomize=True)  # one submission isn't judged by another's luck
if os.environ.get("CI"):
    settings.load_profile("ci")


@pytest.fixture(autouse=True)
def _own_folders(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep stores, logs and settings of the person who runs the tests out of reach."""
    home = tmp_path_factory.mktemp("home")
    for name in (
        "HOME",
        "XDG_DATA_HOME",
        "XDG_CONFIG_HOME",
        "XDG_STATE_HOME",
        "XDG_CACHE_HOME",
        "LOCALAPPDATA",
    ):
        monkeypatch.setenv(name, str(home))
