"""A person's usual figures: what every new job starts with, kept beside the saved jobs.

The file is one that `--settings` takes as well: TOML with the changed figures alone.
"""

from collections.abc import Mapping
from pathlib import Path

from matcher.errors import UnwritableOutput
from matcher.files import write_whole
from matcher.settings import Settings, read_changes

NAME = "figures.toml"


def usual_path(store: Path) -> Path:
    """Return where the usual figures of a store of jobs lie."""
    return store.with_name(NAME)


def load_usual(path: Path) -> dict[str, object]:
    """Return the changed figures, none while no file is there.

    Raises as `Settings.load` does for a file that can't be read or holds what can't be.
    """
    if not path.exists():
        return {}
    Settings.load(path)
    return dict(read_changes(path))


def keep_usual(path: Path, changes: Mapping[str, object]) -> None:
    """Write the changed figures in the place of those kept before; without any the file goes.

    Raises as `Settings.load` does for figures that can't be, `UnwritableOutput` when the folder refuses.
    """
    Settings.shipped().with_changes(changes)
    try:
        if not any(changes.values()):
            path.unlink(missing_ok=True)
            return
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, _as_toml(changes).encode())
    except OSError as fault:
        raise UnwritableOutput(f"{path}: the usual figures are not kept ({fault.strerror}).") from fault


def _as_toml(changes: Mapping[str, object]) -> str:
    plain = {name: value for name, value in changes.items() if not isinstance(value, Mapping)}
    lines = ["# Usual figures for new jobs; what isn't named stays as shipped."]
    lines += [f"{name} = {str(value).lower()}" for name, value in plain.items()]
    for name, figures in changes.items():
        if isinstance(figures, Mapping) and figures:
            lines += ["", f"[{name}]", *(f"{key} = {figure!r}" for key, figure in figures.items())]
    return "\n".join(lines) + "\n"
