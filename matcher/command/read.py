"""`samespin read`: what facts stand in listings and plates, and in which words."""

import json
import sys
from collections.abc import Iterable
from pathlib import Path

import click

from matcher.command.inputs import LISTINGS, Inputs
from matcher.motor import OFFER_FIELDS
from matcher.record import Record


@click.command()
@click.option("--plate", is_flag=True, help="The texts are nameplates, as typed or scanned.")
@click.option("--json", "as_lines", is_flag=True, help="A JSON line for each record.")
@click.option("--csv", "as_table", is_flag=True, help="A table for a spreadsheet, a row for each record.")
@click.argument("files", nargs=-1, required=True, type=LISTINGS)
def command(files: tuple[Path, ...], plate: bool, as_lines: bool, as_table: bool) -> None:
    """Read FILES (text, saved pages, tables, JSON lines; - for standard input) and say their facts."""
    from matcher.command.progress import counted

    if as_lines and as_table:
        raise click.UsageError("give --json or --csv, not both")
    found = Inputs(files, plate=plate)
    if as_lines:
        for record in counted(found, "records read"):
            click.echo(json.dumps(as_json(record), ensure_ascii=True))
    elif as_table:
        from matcher.spreadsheet import table_lines

        for line in table_lines(counted(found, "records read")):
            click.echo(line)
    else:
        print_records(found)
    sys.exit(found.status)


def as_json(record: Record) -> dict[str, object]:
    """Return one record in the shape that the contract fixes."""
    return {
        "id": record.id,
        "facts": record.facts.said(),
        "where": {
            field: {"from": mark.source, "span": list(mark.span), "said": mark.said}
            for field in OFFER_FIELDS
            if (mark := record.where.get(field))
        },
        "conflicts": [
            {"field": conflict.field, "values": list(conflict.values), "said": list(conflict.said)}
            for conflict in record.conflicts
        ],
    }


def print_records(records: Iterable[Record]) -> None:
    """Print each record as a small table: the fact, its value, the words behind it."""
    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    from matcher.spreadsheet import words_of

    console = Console(width=None)
    for record in records:
        table = Table(title=Text(record.id), title_justify="left", expand=False)
        table.add_column("fact", no_wrap=True)
        table.add_column("value", overflow="fold")
        table.add_column("in the words", overflow="fold")
        for field, value in record.facts.said().items():
            mark = record.where.get(field)
            # Text, not markup: a listing's words must not be taken for styling.
            table.add_row(field, Text(words_of(value)), Text(" ".join(mark.said.split()) if mark else ""))
        for conflict in record.conflicts:
            values = " or ".join(words_of(value) for value in conflict.values)
            said = " / ".join(" ".join(words.split()) for words in conflict.said)
            table.add_row(f"{conflict.field} ?", Text(f"contradicts itself: {values}"), Text(said))
        if not record.where and not record.conflicts and not record.facts.said():
            table.add_row("-", "nothing that could be read", "")
        console.print(table)
