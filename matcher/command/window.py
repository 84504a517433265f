"""`samespin` or `samespin window`: open the window."""

import sys
from pathlib import Path

import click

from matcher.command import complain
from matcher.command.display import has_display


@click.command()
@click.pass_obj
def command(store: Path | None) -> None:
    """Open the window on the saved jobs."""
    if not has_display():
        complain("there is no display to open a window on; `samespin --help` lists what works without one")
        sys.exit(1)
    from ui.app import main  # late: the engine's commands must not pay for Qt

    sys.exit(main(sys.argv[:1], store=store))
