"""`samespin rank`: judge listings as stand-ins for an old motor, best first."""

import json
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Literal

import click

from matcher.command import complain
from matcher.command.answers import as_json, explanation, print_table
from matcher.errors import BadValue
from matcher.money.weigh import Weighed
from matcher.motor import Wanted

INPUT = click.Path(path_type=Path, allow_dash=True)


@click.command()
@click.option(
    "--old",
    "olds",
    required=True,
    multiple=True,
    type=click.Path(path_type=Path, dir_okay=False),
    help='The old motor, JSON or TOML: {"motor": {...}, "site": {...}}. Several: the best pairs are ranked.',
)
@click.option("--top", type=click.IntRange(min=1), help="Only the best N.")
@click.option("--explain", metavar="ID", help="Every finding about one candidate, with its source.")
@click.option(
    "--settings", "settings_file", type=click.Path(path_type=Path), help="Your changes to the tables, TOML."
)
@click.option("--json", "as_lines", is_flag=True, help="A JSON line for each candidate.")
@click.argument("listings", nargs=-1, required=True, type=INPUT)
def command(
    olds: tuple[Path, ...],
    listings: tuple[Path, ...],
    top: int | None,
    explain: str | None,
    settings_file: Path | None,
    as_lines: bool,
) -> None:
    """Judge LISTINGS (text, saved pages, tables, JSON lines; - for standard input), best first."""
    from matcher.command.progress import counted
    from matcher.many import best_pairs
    from matcher.old_file import load_wanted
    from matcher.reading.sources import Problem, records
    from matcher.settings import Settings

    problems: list[Problem] = []

    def report(problem: Problem) -> None:
        problems.append(problem)
        complain(f"{problem.where}: {problem.why}")

    wanted = [load_wanted(path) for path in olds]
    settings = Settings.load(settings_file) if settings_file else Settings.shipped()
    sources: list[Path | Literal["-"]] = ["-" if str(path) == "-" else path for path in listings]
    candidates = list(counted(records(sources, on_problem=report), "listings read"))
    pairs = list(best_pairs(wanted, candidates, settings, top=None if explain else top))
    if explain:
        pairs = [pair for pair in pairs if pair[1].id == explain]
        if not pairs:
            raise BadValue(
                f"no listing has the id {explain!r}; `samespin rank` without --explain shows the ids"
            )
    write(pairs, as_lines=as_lines, explain=bool(explain), several=len(wanted) > 1)
    sys.exit(1 if problems else 0)


def write(pairs: Iterable[tuple[Wanted, Weighed]], *, as_lines: bool, explain: bool, several: bool) -> None:
    """Write ranked pairs the way that was asked for; `several` old motors name theirs in each row."""
    pairs = list(pairs)
    if as_lines:
        for wanted, weighed in pairs:
            line = as_json(weighed)
            click.echo(json.dumps({"old_id": wanted.id, **line} if several else line, ensure_ascii=True))
    elif explain:
        for _, weighed in pairs:
            click.echo("\n".join(explanation(weighed)))
    else:
        print_table(
            [weighed for _, weighed in pairs], old_ids=[old.id for old, _ in pairs] if several else ()
        )
