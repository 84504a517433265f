"""`samespin sheet`: write the swap sheet of one job."""

import json
import sys
from pathlib import Path

import click

from matcher.command.inputs import LISTINGS, MOTOR, refuse_same_dash


@click.command()
@click.option("--old", required=True, type=MOTOR, help="The old motor; - for standard input.")
@click.option(
    "--new",
    required=True,
    type=LISTINGS,
    help="The listing of the new one; - for standard input.",
)
@click.option("--id", "wanted_id", help="Which listing, when the file holds several.")
@click.option("--html", "as_page", is_flag=True, help="A page that prints, on standard output.")
@click.option("--json", "as_lines", is_flag=True, help="One JSON line.")
def command(old: Path, new: Path, wanted_id: str | None, as_page: bool, as_lines: bool) -> None:
    """Write cautions, tools and steps for swapping OLD for NEW; only the steps that this job needs."""
    from matcher.command.chosen import chosen
    from matcher.old_file import load_wanted
    from matcher.sheet import Swap, as_html, swap_sheet
    from matcher.today import today
    from matcher.verdict import judge

    if as_page and as_lines:
        raise click.UsageError("give --html or --json, not both")
    refuse_same_dash(old, new)
    wanted = load_wanted(old)
    record, had_problems = chosen(new, wanted_id)
    sheet = swap_sheet(Swap.of(wanted, record, judge(wanted, record)))
    if as_lines:
        click.echo(json.dumps(sheet.as_json()))
    elif as_page:
        click.echo(as_html(sheet, day=today().isoformat()), nl=False)
    else:
        click.echo(sheet.as_text(), nl=False)
    sys.exit(1 if had_problems else 0)
