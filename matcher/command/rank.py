"""`samespin rank`: judge listings as stand-ins for an old motor, best first."""

import json
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path

import click

from matcher.command.answers import as_json, explanation, print_table
from matcher.command.inputs import LISTINGS, MOTOR, Inputs, refuse_same_dash
from matcher.errors import BadValue
from matcher.money.weigh import Weighed
from matcher.motor import Wanted
from matcher.record import Record
from matcher.settings import Settings


@dataclass(frozen=True)
class Ways:
    """How the answers are wanted."""

    top: int | None
    explain: str | None
    fallback: float | None
    currency: str
    plan: bool
    margin: bool
    sensitivity: bool
    as_lines: bool

    def check(self, olds: Sequence[Path]) -> None:
        """Refuse what can't be had together, as wrong usage."""
        if self.plan and self.fallback is None:
            raise click.UsageError("--plan needs --fallback: what is paid if no listing works")
        if self.fallback is not None and (len(olds) > 1 or self.margin):
            raise click.UsageError("--fallback plans one job; give one --old, without --margin")
        if self.sensitivity and (len(olds) > 1 or self.margin or self.plan):
            raise click.UsageError("--sensitivity is about one ranking; give one --old alone")


@click.command()
@click.option(
    "--old",
    "olds",
    required=True,
    multiple=True,
    type=MOTOR,
    help='The old motor, JSON or TOML: {"motor": {...}, "site": {...}}; - for standard input. '
    "Several: the best pairs are ranked.",
)
@click.option("--top", type=click.IntRange(min=1), help="Only the best N.")
@click.option("--explain", metavar="ID", help="Every finding about one candidate, with its source.")
@click.option(
    "--fallback", type=click.FloatRange(0, 1e9), help="A quote, or a new part's price: adds the plan."
)
@click.option("--currency", default="USD", help="The fallback's currency, three letters.")
@click.option("--plan", is_flag=True, help="Only the plan for --fallback; with --json one JSON object.")
@click.option("--margin", is_flag=True, help="For a trader: which lots serve which old motors.")
@click.option("--sensitivity", is_flag=True, help="How far figures may move before the order changes.")
@click.option(
    "--settings", "settings_file", type=click.Path(path_type=Path), help="Your changes to the tables, TOML."
)
@click.option("--json", "as_lines", is_flag=True, help="A JSON line for each candidate.")
@click.argument("listings", nargs=-1, required=True, type=LISTINGS)
def command(
    olds: tuple[Path, ...], listings: tuple[Path, ...], settings_file: Path | None, **ways: object
) -> None:
    """Judge LISTINGS (text, saved pages, tables, JSON lines; - for standard input), best first."""
    from matcher.command.progress import counted
    from matcher.old_file import load_wanted

    asked = Ways(**ways)  # type: ignore[arg-type]
    asked.check(olds)
    refuse_same_dash(*olds, *listings)
    wanted = [load_wanted(path) for path in olds]
    settings = Settings.load(settings_file) if settings_file else Settings.shipped()
    inputs = Inputs(listings)
    candidates = counted(inputs, "listings read")
    if asked.margin:
        _trade(wanted, candidates, settings, as_lines=asked.as_lines)
    else:
        _rank(wanted, candidates, settings, asked)
    sys.exit(inputs.status)


def _rank(wanted: Sequence[Wanted], candidates: Iterator[Record], settings: Settings, asked: Ways) -> None:
    from matcher.many import best_pairs

    every = asked.explain is not None or asked.fallback is not None or asked.sensitivity
    pairs = list(best_pairs(wanted, candidates, settings, top=None if every else asked.top))
    if asked.sensitivity:
        _sensitivity([weighed for _, weighed in pairs], settings, asked)
        return
    if not asked.plan:
        shown = _explained(pairs, asked.explain) if asked.explain else pairs[: asked.top]
        write(shown, as_lines=asked.as_lines, explain=bool(asked.explain), several=len(wanted) > 1)
    if asked.fallback is not None and (asked.plan or not asked.as_lines):
        _plan([weighed for _, weighed in pairs], settings, asked)


def _explained(pairs: Sequence[tuple[Wanted, Weighed]], wanted_id: str) -> list[tuple[Wanted, Weighed]]:
    found = [pair for pair in pairs if pair[1].id == wanted_id]
    if not found:
        raise BadValue(
            f"no listing has the id {wanted_id!r}; `samespin rank` without --explain shows the ids"
        )
    return found


def _plan(candidates: Sequence[Weighed], settings: Settings, asked: Ways) -> None:
    from matcher.command.plan_words import plan_json, plan_lines
    from matcher.job import Fallback
    from matcher.money.buying import buying

    fallback = Fallback.of(asked.fallback or 0.0, asked.currency)
    plan = buying(candidates, fallback, settings)
    if asked.as_lines:
        click.echo(json.dumps(plan_json(plan)))
    else:
        click.echo("\n".join(plan_lines(plan)))


def _sensitivity(candidates: Sequence[Weighed], settings: Settings, asked: Ways) -> None:
    from matcher.command.plan_words import room_lines
    from matcher.money.sensitivity import room_of_chances, room_of_weights

    rooms = room_of_weights(candidates, settings)
    if asked.fallback is not None:
        rooms += room_of_chances(candidates, asked.fallback, settings, asked.currency.strip().upper())
    if asked.as_lines:
        click.echo(json.dumps([asdict(room) for room in rooms]))
    else:
        click.echo("\n".join(room_lines(rooms)))


def _trade(
    wanted: Sequence[Wanted], candidates: Iterator[Record], settings: Settings, *, as_lines: bool
) -> None:
    from matcher.command.plan_words import lots_lines, served_json
    from matcher.many.lots import lots_for

    if all(one.pays is None for one in wanted):
        raise BadValue("--margin needs what an owner would pay: write pays = 240 above [motor] in its file")
    lots = lots_for(wanted, candidates, settings)
    lines = (json.dumps(served_json(one)) for one in lots.served) if as_lines else lots_lines(lots)
    for line in lines:
        click.echo(line)


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
