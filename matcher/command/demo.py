"""`samespin demo`: the whole job on the shipped example, in a window or printed."""

import sys
import tempfile
from pathlib import Path

import click

from matcher.command.answers import as_json, print_table
from matcher.command.display import has_display
from matcher.command.inputs import Inputs
from matcher.judging.saying import horsepower
from matcher.money.weigh import Weighed, ranked
from matcher.tables import data_folder

PILE = ("pasted.txt", "shelf.csv", "saved_page.html", "notes.jsonl")
"""The example's listings, in the order they were found."""


def example() -> Path:
    """Return the folder of the shipped example job."""
    return data_folder() / "demo"


def example_ranking() -> list[Weighed]:
    """Read and rank the shipped example."""
    from matcher.old_file import load_wanted

    folder = example()
    return ranked(load_wanted(folder / "old.toml"), Inputs([folder / name for name in PILE]))


def print_example(picture: Path) -> None:
    """Print the ranking and draw the window into a file, saying where."""
    import os

    print_table(example_ranking(), title=_title())
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from ui.app import picture as draw  # late: printing must not pay for Qt

    draw(example(), picture)
    click.echo(f"No display here, so this is the window as a picture: {picture}")


def _title() -> str:
    from matcher.old_file import load_wanted

    wanted = load_wanted(example() / "old.toml")
    motor = wanted.motor
    supply = f"on {wanted.site.supply_volts:g} V" if wanted.site.supply_volts else ""
    known = filter(None, (f"{motor.brand} {motor.part_number}", horsepower(motor.power_hp), supply))
    return f"A stand-in for the drying cabinet's {', '.join(known)}"


@click.command()
@click.option("--json", "as_lines", is_flag=True, help="Only the ranking, a JSON line for each candidate.")
@click.option(
    "--picture",
    type=click.Path(dir_okay=False, path_type=Path),
    default=Path(tempfile.gettempdir()) / "samespin-demo.png",
    help="Where the picture of the window goes when there is no display.",
)
@click.pass_obj
def command(store: Path | None, as_lines: bool, picture: Path) -> None:
    """Open the shipped example job; without a display print its ranking and draw the window."""
    import json

    if as_lines:
        for weighed in example_ranking():
            click.echo(json.dumps(as_json(weighed)))
    elif has_display():
        from ui.app import main  # late: the other ways must not pay for Qt

        sys.exit(main(sys.argv[:1], demo=example(), store=store))
    else:
        print_example(picture)
